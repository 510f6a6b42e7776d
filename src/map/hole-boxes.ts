import { signal } from "@preact/signals";
import type { TileRequest } from "../../shared/messages.ts";

/** Degrees: west, south, east, north. */
type Box = readonly [number, number, number, number];

/** Where the pictures drawn so far of the elevation data that is open show missing data. */
export const holeBoxes = signal<readonly Box[]>([]);

const boxes = new Map<string, Box>();
let turnNow = -1;

/** Notes where a picture of missing data, RGBA of a square tile, shows any. */
export function noteHoles({ turn = 0, z, x, y }: TileRequest, rgba: Uint8ClampedArray): void {
  if (turn < turnNow) return;
  if (turn > turnNow) boxes.clear();
  const isOther = turn > turnNow && holeBoxes.peek().length > 0;
  turnNow = turn;
  const seen = paintedBox(rgba);
  if (!seen && !isOther) return;
  if (seen) boxes.set(`${z}/${x}/${y}`, boxOf(seen, { z, x, y }));
  holeBoxes.value = [...boxes.values()];
}

/** Columns and rows, 0..1 of a square picture, between which it is painted; null where it is not. */
function paintedBox(rgba: Uint8ClampedArray): Box | null {
  const side = Math.sqrt(rgba.length / 4);
  let [left, top, right, bottom] = [side, side, -1, -1];
  for (let i = 3; i < rgba.length; i += 4) {
    if (rgba[i] === 0) continue;
    const at = (i - 3) / 4;
    const [column, row] = [at % side, Math.floor(at / side)];
    left = Math.min(left, column);
    right = Math.max(right, column);
    top = Math.min(top, row);
    bottom = Math.max(bottom, row);
  }
  return right < 0 ? null : [left / side, top / side, (right + 1) / side, (bottom + 1) / side];
}

/** A part of a web mercator tile in degrees. */
function boxOf([left, top, right, bottom]: Box, { z, x, y }: TileRequest): Box {
  const lonAt = (across: number) => ((x + across) / 2 ** z) * 360 - 180;
  const latAt = (down: number) =>
    (Math.atan(Math.sinh(Math.PI * (1 - (2 * (y + down)) / 2 ** z))) * 180) / Math.PI;
  return [lonAt(left), latAt(bottom), lonAt(right), latAt(top)];
}
