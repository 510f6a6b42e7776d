import type { BagCurve } from "../buildings/choice-types.ts";
import { formatCount, formatVolume, type UnitSystem } from "../units.ts";
import { listed } from "./list.ts";

export const CURVE = {
  line: "Line:",
  dashed: "Dashed:",
  bags: "bags",
  dip: "dip: one marked First",
  today: (buildings: number) => `${formatCount(buildings)} today`,
} as const;

/** Over the line at the top: `26 can be ringed at all`. */
export function curveTopWords(buildings: number): string {
  return `${formatCount(buildings)} can be ringed at all`;
}

/** Of the line: from how many bags on more of them ring no more. */
export function curveLineWords({ today }: Pick<BagCurve, "today">): string {
  const most = today.at(-1)?.buildings ?? 0;
  const lastOther = today.findLastIndex(({ buildings }) => buildings !== most);
  const from = today[lastOther + 1]?.bags ?? 0;
  const end = today.at(-1)?.bags ?? 0;
  const what = "today's people and sand.";
  return from < end ? `${what} More than ${formatCount(from)} bags ring no more buildings.` : what;
}

/** Of the dashed line: what today's bags need beside them. */
export function curveMatchWords(
  { toMatch }: Pick<BagCurve, "toMatch">,
  bags: number | null,
  system: UnitSystem,
): string {
  const what = "people and sand to match";
  if (!toMatch || bags === null) return `${what}.`;
  const needs = [
    ...(toMatch.people === null ? [] : [`${formatCount(toMatch.people)} people`]),
    formatVolume(toMatch.sandM3, system),
  ];
  return `${what}: ${listed(needs)} at ${formatCount(bags)} bags.`;
}
