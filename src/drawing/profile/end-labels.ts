import { reachAt } from "../../../shared/reaches.ts";
import type { SizedLine } from "../../../shared/sizing-types.ts";
import { nearestSample } from "./picked-samples.ts";
import type { ProfileFrame } from "./profile-frame.ts";
import { hasOneLimit } from "./profile-labels.ts";

/** What a line is called at its right end; `y` is the middle of its words, pixels. */
export interface EndLabel {
  readonly kind: "crest" | "water" | "limit";
  readonly text: string;
  readonly y: number;
}

/** Least distance between two of them, pixels. */
const APART_PX = 16;
const EDGE_PX = 9;

/**
 * The names of the lines beside their right ends, in order of height and none over another. A line with several
 * height limits has them named along it instead.
 * @param waterWords what the water is called, e.g. "Water at 31.0"
 */
export function endLabels(line: SizedLine, frame: ProfileFrame, waterWords: string): EndLabel[] {
  const { walk } = line;
  const index = nearestSample(walk.chainageM, frame.stretch.toM);
  if (index < 0) return [];
  const { plot, y } = frame;
  const crestM = walk.crestM[index]!;
  const { limitM } = reachAt(line, walk.chainageM[index]!);
  const labels: EndLabel[] = [
    { kind: "crest", text: "Top of levee", y: y(crestM) },
    { kind: "water", text: waterWords, y: y(walk.waterM[index]!) },
  ];
  if (hasOneLimit(line))
    labels.push({ kind: "limit", text: "Height limit", y: y(crestM - limitM) });
  return apart(
    labels.sort((a, b) => a.y - b.y),
    plot.top + EDGE_PX,
    plot.bottom - EDGE_PX,
  );
}

/** Labels in their order, moved down off the one above; those that leave no room at the foot push that one up. */
export function apart<Label extends { readonly y: number }>(
  labels: readonly Label[],
  topPx: number,
  bottomPx: number,
  apartPx = APART_PX,
): Label[] {
  const ys: number[] = [];
  for (const { y } of labels) ys.push(Math.max(y, topPx, (ys.at(-1) ?? -Infinity) + apartPx));
  for (let i = ys.length - 1; i >= 0; i--) {
    ys[i] = Math.min(ys[i]!, (ys[i + 1] ?? bottomPx + apartPx) - apartPx);
  }
  return labels.map((label, i) => ({ ...label, y: ys[i]! }));
}
