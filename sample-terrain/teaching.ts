/** Side of the two teaching grids, cells of 1 m. */
export const TEACHING_SIZE_M = 256;
/** Lower left corner in EPSG:26915, metres; here the grid's scale is 1 to 2 parts in a million. */
export const TEACHING_CORNER: readonly [number, number] = [319872, 4760000];

/** Ground of the tilted plane: 100 m at the west edge, rising 1 in 100 to the east. */
export function tiltedGroundM(east: number): number {
  return 100 + 0.01 * east;
}

/** Ground of the step: 100 m in the west half, 100.6 m in the east half. */
export function steppedGroundM(east: number): number {
  return east < TEACHING_SIZE_M / 2 ? 100 : 100.6;
}

/** Heights at cell centres, rows from the north; each column has one height. */
export function teachingGrid(groundM: (east: number) => number): Float32Array {
  const cells = TEACHING_SIZE_M * TEACHING_SIZE_M;
  return Float32Array.from({ length: cells }, (_, cell) => groundM((cell % TEACHING_SIZE_M) + 0.5));
}
