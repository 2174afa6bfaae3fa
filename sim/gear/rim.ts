/** Rim under the teeth in modules, and the part of its radius that the bore may take (common practice). */
const RIM_MODULES = 1.4
const WIDEST_BORE = 0.8

/** Inside of the rim [mm] under teeth with a root of this radius. */
export const rimRadius = (root: number, m: number): number => Math.max(root - RIM_MODULES * m, root / 2)

/** Largest diameter of the bore [mm] that leaves rim and hub under teeth with a root of this radius. */
export const widestBore = (root: number, m: number): number => 2 * WIDEST_BORE * rimRadius(root, m)
