import { severityRank } from "../../shared/severity.ts";
import type { Check, SizedLine } from "../../shared/sizing-types.ts";
import { nearestChainage, spotAt } from "../drawing/line/along.ts";

/** Marks closer than this on the screen are drawn as one, CSS pixels. */
const TOGETHER_PX = 24;

/** A mark stands this far from the line, or from the toe, on the land side, so that it covers neither, CSS pixels. */
const FROM_LINE_PX = 27;
const FROM_TOE_PX = 17;
/** Checks further from the line than this have a place of their own, metres. */
const OFF_LINE_M = 3;

/** Checks that share one mark, the gravest first. */
export interface CheckGroup {
  readonly at: readonly [number, number];
  /** How far the mark stands from the place, CSS pixels to the right and down. */
  readonly offset: readonly [number, number];
  readonly checks: readonly Check[];
  /** Stays the same while the same checks share the mark. */
  readonly key: string;
}

/**
 * Groups the checks of a line that have a place by what can be told apart on the screen.
 * @param place longitude and latitude to CSS pixels
 * @param metresPerPx ground covered by one CSS pixel, metres
 * @param waterSide left (+1) or right (-1) of chainage
 */
export function groupChecks(
  line: SizedLine,
  place: (at: readonly [number, number]) => { readonly x: number; readonly y: number },
  metresPerPx: number,
  waterSide: 1 | -1,
): CheckGroup[] {
  const groups: { x: number; y: number; at: readonly [number, number]; checks: Check[] }[] = [];
  const placed = line.checks.filter((check) => check.at !== null);
  const gravest = [...placed].sort((a, b) => severityRank(a) - severityRank(b));
  for (const check of gravest) {
    const { x, y } = place(check.at!);
    const near = groups.find((group) => Math.hypot(group.x - x, group.y - y) < TOGETHER_PX);
    if (near) near.checks.push(check);
    else groups.push({ x, y, at: check.at!, checks: [check] });
  }
  const used = new Map<string, number>();
  return groups.map(({ at, checks: together }) => {
    const name = together.map((check) => check.id).join("+");
    const count = used.get(name) ?? 0;
    used.set(name, count + 1);
    return {
      at,
      offset: landward(line, at, metresPerPx, waterSide),
      checks: together,
      key: `${name}#${count}`,
    };
  });
}

function landward(
  line: SizedLine,
  at: readonly [number, number],
  metresPerPx: number,
  waterSide: 1 | -1,
): readonly [number, number] {
  const nearest = nearestChainage(line.walk, at);
  const spot = nearest && nearest.awayM < OFF_LINE_M ? spotAt(line.walk, nearest.chainageM) : null;
  if (!spot) return [0, 0];
  const side = -waterSide;
  const toeM = side > 0 ? spot.toeLeftM : spot.toeRightM;
  const awayPx = side * Math.max(FROM_LINE_PX, FROM_TOE_PX + toeM / metresPerPx);
  return [spot.left[0] * awayPx, -spot.left[1] * awayPx];
}
