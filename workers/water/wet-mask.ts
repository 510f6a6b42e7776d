import {
  BEHIND_LINE,
  DRY,
  HOLE_REACHED,
  LOW,
  WATER,
  type WetMask,
} from "../../shared/water-types.ts";
import type { WaterGrid } from "./water-grid.ts";

/** Most cells of a picture of the water. */
const MOST_CELLS = 4_194_304;
/** Of several cells under one of the picture, the one that shows. */
const ORDER = [DRY, LOW, HOLE_REACHED, BEHIND_LINE, WATER];
const RANK = Uint8Array.from(ORDER.keys(), (code) => ORDER.indexOf(code));

/**
 * A picture of the water, in larger cells when there are too many: connected water shows before all else.
 * @param withLevee codes with the chosen line built, to tell what it keeps dry; null without one
 */
export function wetMask(grid: WaterGrid, codes: Uint8Array, withLevee: Uint8Array | null): WetMask {
  const { columns, rows, width, place } = grid;
  const step = Math.ceil(Math.sqrt((columns * rows) / MOST_CELLS));
  const across = Math.ceil(columns / step);
  const down = Math.ceil(rows / step);
  const shown = new Uint8Array(across * down);
  for (let row = 0; row < rows; row++) {
    const to = Math.floor(row / step) * across;
    const from = (row + 1) * width + 1;
    for (let column = 0; column < columns; column++) {
      const code = codeOf(codes[from + column]!, withLevee ? withLevee[from + column]! : WATER);
      const at = to + (step === 1 ? column : Math.floor(column / step));
      if (RANK[code]! > RANK[shown[at]!]!) shown[at] = code;
    }
  }
  const corner = (column: number, row: number) =>
    place.toLonLat(column * step - 0.5, row * step - 0.5);
  const corners = [corner(0, 0), corner(across, 0), corner(across, down), corner(0, down)] as const;
  return { columns: across, rows: down, codes: shown, corners };
}

/** The picture of a ground, blank where a part of it has a picture of its own. */
export function withoutPart(mask: WetMask, grid: WaterGrid, part: WaterGrid): WetMask {
  const step = Math.ceil(grid.columns / mask.columns);
  const cellOf = (column: number, row: number) =>
    grid.place.toCell(...part.place.toLonLat(column, row)).map((at) => (at + 0.5) / step - 0.5);
  const [left, top] = cellOf(-0.5, -0.5) as [number, number];
  const [right, bottom] = cellOf(part.columns - 0.5, part.rows - 0.5) as [number, number];
  const codes = mask.codes.slice();
  const from = Math.max(0, Math.ceil(left));
  const to = Math.min(mask.columns, Math.floor(right) + 1);
  for (let row = Math.max(0, Math.ceil(top)); row <= Math.min(mask.rows - 1, bottom); row++) {
    codes.fill(DRY, row * mask.columns + from, row * mask.columns + Math.max(from, to));
  }
  return { ...mask, codes };
}

function codeOf(without: number, withLevee: number): number {
  const kept = without === WATER && withLevee !== WATER;
  return kept ? BEHIND_LINE : without;
}
