import { computed, type ReadonlySignal } from "@preact/signals";
import type { ChoiceQuestion, FoundChoice } from "../../../shared/buildings/choice-types.ts";
import { type Crew, crewList } from "../../../shared/buildings/crew-list.ts";
import type { BuildingRow } from "../../../shared/buildings/rows.ts";
import { isFlooded } from "../../../shared/buildings/shown-states.ts";
import { sortRows } from "../../../shared/buildings/sort-rows.ts";
import { numberOf } from "../../../shared/plan-number.ts";
import { plan } from "../../document/store.ts";
import { choiceShown } from "./choosing.ts";
import { wholeTimed } from "./crew.ts";
import { lowBehindNow, rowsNow } from "./shown.ts";

/** What the printed list of the rings to build is made of. */
export interface RingList {
  readonly choice: FoundChoice;
  readonly of: ChoiceQuestion;
  /** Chosen lines by their numbers. */
  readonly chosen: readonly BuildingRow[];
  /** None where nobody typed how many people there are. */
  readonly crews: readonly Crew[];
  /** Hours from the start by which each chosen line must be closed, where that is known. */
  readonly closeByH: ReadonlyMap<string, number>;
  /** Buildings that flood, or may, and are in no chosen line. */
  readonly notRinged: readonly BuildingRow[];
  /** Names of those that no water reaches over the ground and that lie lower than it. */
  readonly lowBehind: readonly string[];
  /** Another number once plan, stock or choice change. */
  readonly number: string;
}

/** Null until all are checked and chosen with the stock as it is now. */
export const ringList: ReadonlySignal<RingList | null> = computed(() => {
  const shown = choiceShown.value;
  if (!shown || shown.isStale || !wholeTimed.value) return null;
  const { choice, of } = shown;
  const rows = rowsNow.value;
  const chosen = rows
    .filter(({ mark, line }) => mark !== null && line !== null)
    .sort((a, b) => a.mark! - b.mark!);
  const closeByH = closingOf(of);
  const { workForce } = of;
  const lines = chosen.map(({ id, line }) => ({
    ...{ id, personHours: line!.personHours },
    closeByH: closeByH.get(id) ?? null,
  }));
  const others = rows.filter(
    ({ state, failed }) =>
      state !== "chosen" && (isFlooded(state) || state === "no-data" || failed !== null),
  );
  return {
    ...{ choice, of, chosen, closeByH },
    crews: workForce
      ? crewList(lines, { ...workForce, atWork: workForce.people * workForce.atWorkShare })
      : [],
    lowBehind: lowBehindNow.value,
    notRinged: sortRows(others, { by: "first-wet", descending: false }),
    number: numberOf({
      ...{ water: plan.value.water, practice: plan.value.practice, section: plan.value.section },
      ...{ time: plan.value.time, stock: of.stock, workForce },
      lines: chosen.map(({ id, line }) => ({ id, line })),
      not: others.map(({ id, state }) => [id, state]),
      low: lowBehindNow.value,
    }),
  };
});

function closingOf({ candidates, workForce }: ChoiceQuestion): ReadonlyMap<string, number> {
  const untilH = workForce?.untilH ?? Number.POSITIVE_INFINITY;
  return new Map(
    candidates
      .map(({ id, closedByH }) => [id, Math.min(closedByH ?? Infinity, untilH)] as const)
      .filter(([, hour]) => Number.isFinite(hour)),
  );
}
