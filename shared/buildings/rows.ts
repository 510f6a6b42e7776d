import type { ShownState, Sweep } from "./shown-states.ts";
import type { Building, CheckedBuilding, CheckedGroup, Choice, Priority } from "./types.ts";

/** A row of the table of buildings: a building, or the ring round a group of them. SI; times are seconds UTC. */
export interface BuildingRow {
  /** Of the building, or of the group. */
  readonly id: string;
  /** Ids of the buildings inside. */
  readonly members: readonly string[];
  /** Of the first member. */
  readonly name: string;
  readonly state: ShownState;
  /** Number on the map and in the table of a chosen line; null where it is not chosen. */
  readonly mark: number | null;
  readonly floorM: number | null;
  readonly depthM: number | null;
  readonly firstWetAtS: number | null;
  readonly latestStartAtS: number | null;
  readonly line: CheckedBuilding["line"];
  readonly priority: Priority;
  /** Bags that its members' own rings need more; null where it is no group, or not every member has one. */
  readonly savesBags: number | null;
  /** Code of the refusal for which it was not checked. */
  readonly failed: string | null;
}

/** What a person says of each building; later than what the check was made with. */
export type Said = ReadonlyMap<string, Pick<Building, "name" | "floorM" | "priority">>;

interface Shown {
  readonly sweep: Sweep;
  readonly states: ReadonlyMap<string, ShownState>;
  readonly choice: Pick<Choice, "chosen"> | null;
  readonly said: Said;
}

/**
 * The rows of all checked buildings, a chosen group as one row. Chosen lines are numbered by their latest start, the
 * earliest first, those without one last and by bags.
 */
export function buildingRows({ sweep, states, choice, said }: Shown): readonly BuildingRow[] {
  const chosen = new Set(choice?.chosen);
  const groups = sweep.groups.filter(({ id }) => chosen.has(id));
  const inGroup = new Set(groups.flatMap(({ members }) => members));
  const rows = [
    ...groups.map((group) => groupRow(group, sweep, said)),
    ...[...sweep.checked.values()]
      .filter(({ id }) => !inGroup.has(id))
      .map((each) => singleRow(each, states.get(each.id) ?? each.state, said)),
  ];
  const ordered = rows.filter(({ state }) => state === "chosen").sort(byStart);
  const marks = new Map(ordered.map(({ id }, index) => [id, index + 1]));
  return rows.map((row) => ({ ...row, mark: marks.get(row.id) ?? null }));
}

/** Bags that the members' own rings need more than the group's; null where not every member has one of its own. */
function groupSavesBags(group: CheckedGroup, { checked }: Sweep): number | null {
  const own = group.members.map((id) => checked.get(id)?.line?.bags ?? null);
  if (own.some((bags) => bags === null)) return null;
  return own.reduce<number>((sum, bags) => sum + bags!, 0) - group.line.bags;
}

function singleRow(each: CheckedBuilding, state: ShownState, said: Said): BuildingRow {
  const { id, depthM, firstWetAtS, latestStartAtS, line, failed } = each;
  const { name, floorM, priority } = said.get(id) ?? each;
  return {
    ...{ id, members: [id], name, state, mark: null, floorM, depthM, firstWetAtS },
    ...{ latestStartAtS, line, priority, savesBags: null, failed },
  };
}

function groupRow(group: CheckedGroup, sweep: Sweep, said: Said): BuildingRow {
  const members = group.members.flatMap((id) => sweep.checked.get(id) ?? []);
  const of = members.map((each) => said.get(each.id) ?? each);
  const isFirst = of.some(({ priority }) => priority === "first");
  const named = isFirst ? of.find(({ priority }) => priority === "first") : of[0];
  return {
    id: group.id,
    members: group.members,
    name: named?.name ?? group.id,
    state: "chosen",
    mark: null,
    floorM: least(of.map(({ floorM }) => floorM)),
    depthM: greatest(members.map(({ depthM }) => depthM)),
    firstWetAtS: group.firstWetAtS,
    latestStartAtS: group.latestStartAtS,
    line: group.line,
    priority: isFirst ? "first" : "",
    savesBags: groupSavesBags(group, sweep),
    failed: null,
  };
}

function byStart(a: BuildingRow, b: BuildingRow): number {
  const at = ({ latestStartAtS }: BuildingRow) => latestStartAtS ?? Number.POSITIVE_INFINITY;
  const later = at(a) - at(b);
  return (later || 0) !== 0 ? later : (b.line?.bags ?? 0) - (a.line?.bags ?? 0);
}

function least(values: readonly (number | null)[]): number | null {
  const known = values.filter((value) => value !== null);
  return known.length === 0 ? null : Math.min(...known);
}

function greatest(values: readonly (number | null)[]): number | null {
  const known = values.filter((value) => value !== null);
  return known.length === 0 ? null : Math.max(...known);
}
