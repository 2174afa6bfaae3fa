declare module 'gltf-validator' {
  interface Report {
    readonly issues: { readonly numErrors: number; readonly numWarnings: number }
    readonly info: { readonly totalTriangleCount: number }
  }
  export function validateBytes(bytes: Uint8Array): Promise<Report>
}
