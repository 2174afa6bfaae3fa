/** The part of the 3MF Consortium's reader that the tests use; the package has no types of its own. */
declare module '@3mfconsortium/lib3mf' {
  /** Memory of the reader's, to be let go by hand. */
  export interface Handle {
    delete(): void
  }
  interface Vertex extends Handle {
    get_Coordinates0(): number
    get_Coordinates1(): number
    get_Coordinates2(): number
  }
  interface Triangle extends Handle {
    get_Indices0(): number
    get_Indices1(): number
    get_Indices2(): number
  }
  export interface MeshObject extends Handle {
    GetName(): string
    GetVertexCount(): number
    GetTriangleCount(): number
    GetVertex(index: number): Vertex
    GetTriangle(index: number): Triangle
    IsManifoldAndOriented(): boolean
    IsValid(): boolean
  }
  interface MeshObjects extends Handle {
    MoveNext(): boolean
    GetCurrentMeshObject(): MeshObject
  }
  interface Transform extends Handle {
    get_Fields_3_0(): number
    get_Fields_3_1(): number
    get_Fields_3_2(): number
  }
  interface BuildItem extends Handle {
    GetObjectResourceID(): number
    GetObjectTransform(): Transform
  }
  interface BuildItems extends Handle {
    MoveNext(): boolean
    GetCurrent(): BuildItem
  }
  interface Reader extends Handle {
    SetStrictModeActive(strict: boolean): void
    ReadFromFile(path: string): void
    GetWarningCount(): number
  }
  interface Model extends Handle {
    QueryReader(kind: 'stl' | '3mf'): Reader
    GetUnit(): unknown
    GetMeshObjects(): MeshObjects
    GetBuildItems(): BuildItems
  }
  interface Library {
    readonly FS: { writeFile(path: string, bytes: Uint8Array): void }
    readonly eModelUnit: { readonly MilliMeter: unknown }
    readonly CWrapper: new () => Handle & { CreateModel(): Model }
  }
  export default function load(): Promise<Library>
}
