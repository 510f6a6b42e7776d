import { planForNext } from "../next-plan.ts";
import type { Alignment, Plan, Structure } from "../plan.ts";
import { naming, numbered } from "../plan-names.ts";
import type { Building, FoundShape } from "./types.ts";

/**
 * A plan of the buildings inside a line, with that line alone: water, forecast, crew, levee type and no-go areas are
 * those of the plan in which they were checked.
 */
export function planOfLine(
  now: Plan,
  members: readonly Pick<Building, "name" | "parts" | "floorM">[],
  { kind, coordinates }: FoundShape,
  id: string,
): Plan {
  const line: Alignment = { id, name: "A", kind, corners: coordinates, reachBreaksM: [] };
  const { noGo } = now;
  const structures = structuresOf(members);
  return { ...planForNext(now), noGo, structures, alignments: [line], chosenId: id };
}

/** Buildings as a plan has them, one for each part. */
function structuresOf(
  members: readonly Pick<Building, "name" | "parts" | "floorM">[],
): Structure[] {
  const names = naming("structure-", numbered("Building "));
  for (const { name } of members) names.state(null, name);
  return members.flatMap(({ name, parts, floorM }) =>
    parts.map((outline) => ({
      ...{ id: names.giveId(null), name: names.giveName(name), outline, floorM },
    })),
  );
}
