import { planOfLine } from "../../../shared/buildings/line-plan.ts";
import type { BuildingRow } from "../../../shared/buildings/rows.ts";
import type { Building } from "../../../shared/buildings/types.ts";
import type { Plan } from "../../../shared/plan.ts";
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
  return { ...planOfLine(now, members, line, crypto.randomUUID()), title: rowName(row) };
}
