import { middleOf } from "../geo-box.ts";
import { letterOf } from "../line-letter.ts";
import type { Alignment, Plan } from "../plan.ts";
import { buildingsOf } from "../plan-footprints.ts";
import { naming, numbered } from "../plan-names.ts";
import { cleanLabel } from "../plan-text.ts";
import type { PlacedShape, PlacedShapes } from "./place-shapes.ts";

/** Columns of the plan file itself. */
const OWN_COLUMNS = { name: "name", floor: "floorM", floorUnit: "metre" } as const;
const ROLES: readonly unknown[] = ["structure", "no-go", "alignment"];

/** Whether a file says of each shape what it is, by the roles that a plan file has. */
export function saysUses({ outlines, paths }: PlacedShapes): boolean {
  return [...outlines, ...paths].every(({ columns }) => ROLES.includes(columns.role));
}

/** A plan with outlines as no-go areas more. */
export function withNoGo(plan: Plan, outlines: readonly PlacedShape[]): Plan {
  const names = naming("no-go-", numbered("No-go area "));
  for (const { id, name } of plan.noGo) names.state(id, name);
  for (const shape of outlines) names.state(null, nameIn(shape));
  const added = outlines.map((shape) => ({
    id: names.giveId(null),
    name: names.giveName(nameIn(shape)),
    outline: shape.corners,
  }));
  return { ...plan, noGo: [...plan.noGo, ...added] };
}

/** A plan with paths as lines tied in and outlines as rings more, the first of them chosen. */
export function withLines(plan: Plan, { outlines, paths }: Omit<PlacedShapes, "notes">): Plan {
  const names = naming("line-", letterOf);
  for (const { id, name } of plan.alignments) names.state(id, name);
  for (const shape of [...paths, ...outlines]) names.state(null, nameIn(shape));
  const line = (kind: Alignment["kind"]) => (shape: PlacedShape) => ({
    ...{ id: names.giveId(null), name: names.giveName(nameIn(shape)), kind },
    ...{ corners: shape.corners, reachBreaksM: [] },
  });
  const added = [...paths.map(line("line")), ...outlines.map(line("ring"))];
  const chosenId = added[0]?.id ?? plan.chosenId;
  return { ...plan, alignments: [...plan.alignments, ...added], chosenId };
}

/** A plan with shapes more, each as its role says. */
export function withSaid(plan: Plan, { outlines, paths }: PlacedShapes): Plan {
  const of = (role: string) => outlines.filter(({ columns }) => columns.role === role);
  const buildings = of("structure").map((each) => ({ ...each, middle: middleOf(each.corners) }));
  const structures = buildingsOf(buildings, plan.structures, OWN_COLUMNS);
  const more = { ...plan, structures: [...plan.structures, ...structures] };
  return withLines(withNoGo(more, of("no-go")), { outlines: of("alignment"), paths });
}

function nameIn({ columns: { name } }: PlacedShape): string | null {
  return typeof name === "string" ? cleanLabel(name) : null;
}
