import { textWidth } from "../text-width.ts";
import { PROFILE_TYPE_PX, type ProfileFrame } from "./profile-frame.ts";

const GAP_PX = 3;

/** A station written in the ground: its tick, and the middle of its words. */
interface StationLabel {
  readonly px: number;
  readonly x: number;
  readonly label: string;
}

/** The stations that can be written inside the plot; one that would touch the one before it is left out. */
export function stationLabels({ plot, xTicks }: Pick<ProfileFrame, "plot" | "xTicks">) {
  const shown: StationLabel[] = [];
  let freeFrom = Number.NEGATIVE_INFINITY;
  for (const { px, label } of xTicks) {
    const half = textWidth(label, PROFILE_TYPE_PX) / 2 + GAP_PX;
    const x = Math.min(plot.right - half, Math.max(plot.left + half, px));
    if (x - half < freeFrom) continue;
    freeFrom = x + half;
    shown.push({ px, x, label });
  }
  return shown;
}

/** Where the middle of words must be for them to stay between two places, as near to where it is wanted as it can. */
export function middleWithin(
  wanted: number,
  widthPx: number,
  [left, right]: readonly [number, number],
) {
  return Math.max(left + widthPx / 2, Math.min(right - widthPx / 2, wanted));
}
