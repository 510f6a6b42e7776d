import { type Shape, signedDistance } from "./shape.ts";

/**
 * Distance to a shape less its clearance, on a fine lattice round it, worked out where asked for. Bilinear
 * values are within spacing^2 / (8 distance) of the exact ones: 3 mm at 8 ft and 0.25 m.
 */
export interface ClearanceField {
  readonly shape: Shape;
  readonly clearM: number;
  readonly x0M: number;
  readonly y0M: number;
  readonly columns: number;
  readonly rows: number;
  readonly spacingM: number;
  /** Metres; Infinity where not yet worked out. */
  readonly spareM: Float32Array;
  readonly blockDone: Uint8Array;
  readonly blockColumns: number;
  /** Outside the lattice the spare clearance is more than this, metres. */
  readonly beyondM: number;
}

const FIELD_BLOCK_SHIFT = 3;
const SPACING_M = 0.25;
const BEYOND_M = 4;
const MOST_NODES = 1_000_000;
/** Below this clearance the lattice is too coarse. */
const LEAST_CLEAR_M = 0.5;

/** The field of a shape; null where the shape is too large or its clearance too small for one. */
export function clearanceField(shape: Shape, clearM: number): ClearanceField | null {
  if (clearM < LEAST_CLEAR_M) return null;
  const reach = clearM + BEYOND_M;
  const columns = Math.ceil((shape.maxX - shape.minX + 2 * reach) / SPACING_M) + 2;
  const rows = Math.ceil((shape.maxY - shape.minY + 2 * reach) / SPACING_M) + 2;
  if (columns * rows > MOST_NODES) return null;
  const blockColumns = (columns >> FIELD_BLOCK_SHIFT) + 1;
  return {
    shape,
    clearM,
    x0M: shape.minX - reach,
    y0M: shape.minY - reach,
    columns,
    rows,
    spacingM: SPACING_M,
    spareM: new Float32Array(columns * rows).fill(Infinity),
    blockDone: new Uint8Array(blockColumns * ((rows >> FIELD_BLOCK_SHIFT) + 1)),
    blockColumns,
    beyondM: BEYOND_M,
  };
}

/** Spare clearance at a point, metres: negative where it is too close. `beyondM` outside the lattice. */
export function spareAt(field: ClearanceField, x: number, y: number): number {
  const u = (x - field.x0M) / field.spacingM;
  const v = (y - field.y0M) / field.spacingM;
  const i = u | 0;
  const j = v | 0;
  if (!(u >= 0 && v >= 0 && i < field.columns - 1 && j < field.rows - 1)) return field.beyondM;
  const block = (j >> FIELD_BLOCK_SHIFT) * field.blockColumns + (i >> FIELD_BLOCK_SHIFT);
  if (field.blockDone[block] === 0) fillBlock(field, block);
  const at = j * field.columns + i;
  const { spareM, columns } = field;
  const fx = u - i;
  const south = spareM[at]! + fx * (spareM[at + 1]! - spareM[at]!);
  const north = spareM[at + columns]! + fx * (spareM[at + columns + 1]! - spareM[at + columns]!);
  return south + (v - j) * (north - south);
}

function fillBlock(field: ClearanceField, block: number): void {
  const size = 1 << FIELD_BLOCK_SHIFT;
  const i0 = (block % field.blockColumns) * size;
  const j0 = Math.floor(block / field.blockColumns) * size;
  const { columns, rows, spareM, spacingM, shape, clearM } = field;
  for (let j = j0; j <= Math.min(j0 + size, rows - 1); j++) {
    for (let i = i0; i <= Math.min(i0 + size, columns - 1); i++) {
      const at = j * columns + i;
      if (spareM[at]! < Infinity) continue;
      spareM[at] =
        signedDistance(shape, field.x0M + i * spacingM, field.y0M + j * spacingM) - clearM;
    }
  }
  field.blockDone[block] = 1;
}
