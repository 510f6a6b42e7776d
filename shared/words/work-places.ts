import { bagOrder } from "../bag-order.ts";
import type { Exported } from "../exports/exported.ts";
import type { WorkPlace } from "../plan.ts";
import { formatCount, formatStation } from "../units.ts";

/** What each kind of work place is called, what it is, and how its absence is named. */
export const WORK_PLACES: Readonly<
  Record<
    WorkPlace["kind"],
    { readonly tool: string; readonly tip: string; readonly missing: string }
  >
> = {
  pile: {
    tool: "Bag pile",
    tip: "Sand and bags are piled and filled here.",
    missing: "sand and bag pile",
  },
  "truck-way": {
    tool: "Truck way in",
    tip: "Trucks come in this way and unload at the arrow.",
    missing: "truck way in",
  },
  pumps: { tool: "Pumps", tip: "Pumps are set up here.", missing: "pumps and hose" },
};

export const WORK_PLACES_TITLE = "Work places";
/** Where there is none. */
export const WORK_PLACES_HINT =
  "Where sand and bags are piled, pumps are set up and trucks come in: shown on the Build page.";

/** What is written at a work place on the printed plan, line for line. */
export function workPlaceWords(
  { kind, name }: WorkPlace,
  { line, plan, system }: Pick<Exported, "line" | "plan" | "system">,
  near: { readonly chainageM: number } | null,
): readonly string[] {
  const isOnly = (plan.workPlaces ?? []).filter((each) => each.kind === kind).length === 1;
  if (kind === "truck-way") return /truck/i.test(name) ? [name] : [name, "trucks in"];
  if (kind === "pile") {
    return isOnly ? [name, `${formatCount(bagOrder(line.totals).total)} bags to order`] : [name];
  }
  const proposed = line.holding?.pumping.proposed;
  const pumps =
    proposed && isOnly
      ? [
          `${proposed.working} ${proposed.working === 1 ? "pump" : "pumps"} + ${proposed.spare} spare`,
        ]
      : [];
  const hose = near ? [`hose out near ${formatStation(near.chainageM, system, 0)}`] : [];
  return [name, ...pumps, ...hose];
}

/** What is drawn by hand because the plan has no place for it; null where it has all. */
export function notPlacedWords(
  workPlaces: readonly WorkPlace[],
  hasBenchmark: boolean,
): string | null {
  const kinds = Object.keys(WORK_PLACES) as WorkPlace["kind"][];
  const missing = [
    ...(hasBenchmark ? [] : ["benchmark"]),
    ...kinds
      .filter((kind) => workPlaces.every((each) => each.kind !== kind))
      .map((kind) => WORK_PLACES[kind].missing),
  ];
  if (missing.length === 0) return null;
  return `Not placed on this plan: ${missing.join(", ")}. Mark ${missing.length === 1 ? "it" : "them"} by hand.`;
}
