import type { SizedLine } from "../../shared/sizing-types.ts";
import { nextSampleM, nextStationM } from "../drawing/profile/profile-reading.ts";

/** Where a key moves the mark to from `hereM`, metres of chainage; null for a key that does not move it. */
export function keyTarget(
  { key, shiftKey }: Pick<KeyboardEvent, "key" | "shiftKey">,
  line: SizedLine,
  hereM: number,
): number | null {
  const step = shiftKey ? nextStationM : nextSampleM;
  switch (key) {
    case "ArrowRight":
    case "ArrowUp":
      return step(line, hereM, 1);
    case "ArrowLeft":
    case "ArrowDown":
      return step(line, hereM, -1);
    case "PageUp":
      return nextStationM(line, hereM, 1);
    case "PageDown":
      return nextStationM(line, hereM, -1);
    case "Home":
      return 0;
    case "End":
      return line.totals.lengthM;
    default:
      return null;
  }
}
