import {
  choicesFor,
  isSameValue,
  type MarkChoice,
  type MarkMeaning,
} from "../../shared/ground-marks.ts";
import type { TerrainFile } from "../../shared/messages.ts";
import type { Plan } from "../../shared/plan.ts";
import { Misuse } from "./verb.ts";

/** Options that say what heights of the raster are. */
export const MARK_OPTIONS = { "--no-data": "many", "--keep-value": "many" } as const;

export const MARK_HELP = `  --no-data VALUE    heights of the raster, in its own unit, that mark missing data and that it does not declare
  --keep-value VALUE heights of the raster that are ground although no other height comes near them`;

/**
 * What the command line says heights are, and where it says nothing, the plan for these very files.
 * @throws Misuse for a value that is no number, or is said to be both
 */
export function marksFrom(
  options: ReadonlyMap<string, readonly string[]>,
  plan: Plan,
  files: readonly TerrainFile[],
): MarkChoice[] {
  const said = [
    ...valuesOf(options, "--no-data", "hole"),
    ...valuesOf(options, "--keep-value", "ground"),
  ];
  for (const { value, is } of said) {
    const isBoth = said.some((each) => each.is !== is && isSameValue(each.value, value));
    if (isBoth) throw new Misuse(`${value} cannot be both --no-data and --keep-value.`);
  }
  const refs = files.map(({ name, blob }) => ({ name, bytes: blob.size }));
  const kept = choicesFor(plan.ground.marks, refs);
  return [...said, ...kept.filter((each) => !said.some((it) => isSameValue(it.value, each.value)))];
}

function valuesOf(
  options: ReadonlyMap<string, readonly string[]>,
  name: string,
  is: MarkMeaning,
): MarkChoice[] {
  return (options.get(name) ?? []).map((word) => {
    const value = word.trim() === "" ? Number.NaN : Number(word);
    if (Number.isFinite(value)) return { value, is };
    throw new Misuse(`${name} is a height of the raster, such as -99; came ${word}.`);
  });
}
