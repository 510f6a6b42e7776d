import type { HowGood, SearchNote } from "../search-types.ts";
import type { Totals } from "../sizing-types.ts";
import { formatLength, type UnitSystem } from "../units.ts";
import { butMustFix } from "./must-fix.ts";
import type { Units } from "./units.ts";

/** A note on what a search found, as a sentence. */
export function searchNoteWords(note: SearchNote, units: Units): string {
  switch (note.kind) {
    case "cut-short":
      return "The search was cut short: a cheaper line may exist in this window.";
    case "improve-cut-short":
      return "The search was cut short: started again it may find more.";
    case "over-limit":
      return "No line in this window stays within the height limit and costs less than going over it where marked.";
    case "groups-not-compared":
      return `With more than ${note.most} buildings not every way of grouping them is compared: neighbors are joined as long as that saves.`;
    case "toe-too-close":
      return `Ground falling toward a building brings the toe ${units.length(note.byM)} closer to it than the setback.`;
    case "no-data":
      return `On ${units.distance(note.lengthM)} there is no elevation data under the base; that is not counted.`;
    case "not-judged":
      return "How far it may be from the best possible is not known: there was no time to find out.";
    case "nothing-to-build":
      return "Nothing has to be built: all ground around is above the top of levee.";
    case "part-on-high-ground":
      return "Part of the line runs over ground above the top of levee, where nothing is built.";
    case "separate-rings":
      return `${note.count} separate rings need less than one around all of the buildings.`;
    case "rules-broken":
      return note.wasBrokenBefore
        ? "It still does not stay clear of everything it should: a short move does not mend that."
        : "It does not stay clear of everything it should.";
  }
}

/** How far a found line may be from the best in its window. */
export function howGoodWords({ kind, gapShare }: HowGood): string {
  const cheaper = gapShare === Number.POSITIVE_INFINITY ? 1 : gapShare / (1 + gapShare);
  if (kind === "estimate") {
    return `Estimate, not a proof: the best ring that keeps the rules within this window needs ${percent(cheaper)} fewer bags than this one.`;
  }
  return `Proven: no ring that keeps the rules within this window needs over ${atMost(cheaper)} fewer bags than this one.`;
}

function percent(share: number): string {
  return share < 0.01 ? "less than 1 %" : `about ${Math.round(share * 100)} %`;
}

function atMost(share: number): string {
  return `${Math.max(1, Math.ceil(share * 100))} %`;
}

/** What is added to an offer of fewer bags: `, but 40 ft of it are over the height limit`; empty where nothing is. */
export function butOverLimit(
  { lengthOverLimitM }: Pick<Totals, "lengthOverLimitM">,
  system: UnitSystem,
): string {
  if (lengthOverLimitM <= 0) return "";
  return `, but ${formatLength(lengthOverLimitM, system, 0)} of it are over the height limit`;
}

/** That a wider search saves nothing. */
export function noSavingWords(reachM: number, mustFix: number, system: UnitSystem): string {
  return `A bigger cordon, up to ${formatLength(reachM, system, 0)} away, saves no bags against the line found${butMustFix(mustFix)}.`;
}
