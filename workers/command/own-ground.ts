import type { Failure } from "../../shared/failure.ts";
import { asFailure } from "../../shared/failure.ts";
import { leftBehind, planOnGround } from "../../shared/ground-settings.ts";
import type { Engine, TerrainFile } from "../../shared/messages.ts";
import type { Plan, VerticalUnit } from "../../shared/plan.ts";
import { waterElevationAtGauge } from "../../shared/stage.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { unitChoice } from "../../shared/words/unit-choice.ts";
import { sayNotes } from "./say-notes.ts";

/** The plan as it stands on the rasters named: what it says of other elevation data is left out, with a note. */
export function onTheseFiles(
  plan: Plan,
  files: readonly TerrainFile[],
  say: (message: string) => void,
  system: UnitSystem,
): Plan {
  const named = files.map(({ name, blob }) => ({ name, bytes: blob.size }));
  const { plan: onIt, left } = planOnGround(plan, named);
  const note = left && leftBehind(left, null, false);
  if (note) sayNotes([note], system, say);
  return onIt;
}

const OPTIONS: readonly (readonly [VerticalUnit, string])[] = [
  ["foot", "ft"],
  ["us-survey-foot", "us-ft"],
  ["metre", "m"],
];

/** Where a raster states no vertical unit, says what each would make of its heights; then fails as the opening did. */
export function tellUnits(
  engine: Engine,
  files: readonly TerrainFile[],
  { water }: Plan,
  say: (message: string) => void,
): (thrown: unknown) => Promise<never> {
  return async (thrown) => {
    const { code }: Failure = asFailure(thrown);
    const range = code === "ground/unit-unknown" ? await engine.heightRange({ files }) : null;
    for (const [unit, option] of range ? OPTIONS : []) {
      say(
        `--vertical-unit ${option}: ${unitChoice(range!, unit, waterElevationAtGauge(water)).words}`,
      );
    }
    throw thrown;
  };
}
