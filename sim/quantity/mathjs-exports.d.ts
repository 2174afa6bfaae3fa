/** Exported by mathjs 15.2 and missing from its own types. */
declare module 'mathjs' {
  export const createUnitClass: FactoryFunction<UnitCtor>
  export const subtractScalarDependencies: FactoryFunctionMap
}

export {}
