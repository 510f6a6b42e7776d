import type { BuildingRow } from "../../../shared/buildings/rows.ts";
import type { Building } from "../../../shared/buildings/types.ts";
import { planForNext } from "../../../shared/next-plan.ts";
import type { Alignment, Plan } from "../../../shared/plan.ts";
import { naming, numbered } from "../../../shared/plan-names.ts";
import { rowName } from "../../../shared/words/buildings-table.ts";
import { tell } from "../../document/notices.ts";
import { plan, replacePlan } from "../../document/store.ts";
import { listed } from "./listed.ts";
import { leaveBuildings, lineInPlan } from "./open.ts";

/** Opens the line of a row as an ordinary plan, one step that can be undone, and leaves the view. */
export function openInPlan(row: BuildingRow): void {
  const members = (listed.peek()?.buildings ?? []).filter(({ id }) => row.members.includes(id));
  const next = planOfRow(plan.peek(), row, members);
  if (!next) return;
  const outcome = replacePlan(next, `Open ${next.title}`);
  if (!outcome.ok) {
    tell("error", outcome.failure);
    return;
  }
  lineInPlan.value = { id: row.id, opened: plan.peek() };
  leaveBuildings();
}

/** A plan of the buildings inside a line, with that line alone; null for a row without one. */
function planOfRow(now: Plan, row: BuildingRow, members: readonly Building[]): Plan | null {
  const { line } = row;
  if (!line) return null;
  const names = naming("structure-", numbered("Building "));
  for (const { name } of members) names.state(null, name);
  const structures = members.flatMap(({ name, parts, floorM }) =>
    parts.map((outline) => ({
      ...{ id: names.giveId(null), name: names.giveName(name), outline, floorM },
    })),
  );
  const ring: Alignment = {
    ...{ id: crypto.randomUUID(), name: "A", kind: line.kind },
    ...{ corners: line.coordinates, reachBreaksM: [] },
  };
  const { noGo } = now;
  return {
    ...planForNext(now),
    ...{ title: rowName(row), noGo, structures, alignments: [ring], chosenId: ring.id },
  };
}
