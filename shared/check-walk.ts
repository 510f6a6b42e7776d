import { runChecks } from "./checks.ts";
import { cutWalk } from "./cut-walk.ts";
import { accuracyOf } from "./ground-accuracy.ts";
import { lineHolding } from "./holding/line-holding.ts";
import { levelDoubt, withoutVerdict } from "./level-doubt.ts";
import { withWaterHigher } from "./sections/built-reach.ts";
import type { Totals } from "./sizing-types.ts";
import { lineTime } from "./time/line-time.ts";
import { totalsOf } from "./totals.ts";
import type { LineOnGround, WalkedLine } from "./walk-line.ts";

/** Totals of a walked line where all ground is higher by so much, meters. */
export function totalsWithGround(
  { plan, ground }: Pick<LineOnGround, "plan" | "ground">,
  { built, samples, waterSide }: WalkedLine,
  shiftM: number,
): Totals {
  const shifted = built.map((reach) => withWaterHigher(reach, -shiftM));
  const cuts = cutWalk(samples, ground, shifted, waterSide, shiftM);
  return totalsOf(samples, cuts, plan, waterSide).whole;
}

/**
 * What is found of a walked line: how it holds, whether there is time, and every check.
 * @param parts what takes long and can be left out; it is null then, and what hangs on it is not checked
 */
export function checkWalk(
  on: LineOnGround,
  walked: WalkedLine,
  parts: { readonly holding: boolean; readonly time: boolean },
) {
  const { plan, alignment, plane, ground } = on;
  const { line, breaksM, samples, surveyed, waterSide, cuts, whole } = walked;
  const holding = parts.holding
    ? lineHolding({ plan, line, plane, samples, cuts, ground, waterSide })
    : null;
  const totalsAt = (riseM: number) => (riseM === 0 ? whole : totalsWithGround(on, walked, -riseM));
  const groundAccuracy = accuracyOf(plan.ground, ground.longCellM ?? ground.cellM);
  const doubt = levelDoubt(plan, samples, cuts, whole.builtLengthM > 0);
  const worked = parts.time
    ? lineTime({
        ...{ plan, samples, cuts, totalsAt, at: plane.origin, closed: line.closed },
        closures: alignment.closures ?? [],
      })
    : null;
  const time = worked && doubt ? withoutVerdict(worked) : worked;
  const checks = runChecks({
    ...{ plan, line, plane, samples, cuts, waterSide, breaksM, totals: whole },
    setbackM: alignment.setbackM ?? plan.practice.setbackM,
    cellM: ground.longCellM ?? ground.cellM,
    ...{ levelDoubt: doubt, holding, time, surveyed, accuracyM: groundAccuracy.rmseM },
  });
  return { checks, groundAccuracy, levelDoubt: doubt, holding, time };
}
