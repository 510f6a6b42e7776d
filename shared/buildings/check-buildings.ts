import { asFailure, Refusal } from "../failure.ts";
import type { Engine } from "../messages.ts";
import type { Plan } from "../plan.ts";
import { checkGroups, expectedGroups } from "./check-groups.ts";
import {
  type BuildingsCheck,
  type BuildingsOptions,
  type BuildingsQuestion,
  type BuildingWater,
  type LineTask,
  MOST_ON_ONE_LINE,
} from "./check-types.ts";
import { inPool } from "./in-pool.ts";
import { type NearBuildings, nearBuildings } from "./near-buildings.ts";
import type { Building, CheckedBuilding } from "./types.ts";
import { unsearched } from "./unsearched.ts";

/** What a check needs of an engine: one engine, or a pool that gives each task to whoever is free. */
export type BuildingsEngine = Pick<Engine, "traceBuildings" | "checkBuilding" | "checkGroup">;

/** A check under way, for those who do a part of it. */
export interface Check {
  readonly engine: BuildingsEngine;
  /** Tasks given out at the same time. */
  readonly atOnce: number;
  readonly buildings: readonly Building[];
  readonly waters: readonly BuildingWater[];
  readonly near: NearBuildings;
  /** The task of a line round some of the buildings, by their indices. */
  readonly taskFor: (indices: readonly number[]) => LineTask;
  readonly options: BuildingsOptions;
  readonly progress: TaskProgress;
}

/** How far the tasks after the trace are. */
interface TaskProgress {
  /** Says how many tasks are ahead, as far as is known. */
  readonly expect: (tasks: number) => void;
  readonly did: (doing: string) => void;
}

const TRACE_SHARE = 0.1;
/** Obstacles this far from a building cannot touch a line round it, meters. */
const OBSTACLES_M = 80;

/**
 * Checks many buildings: the water is traced once, then each flooded one is a task of its own, then neighbors are
 * tried in one ring. What is found depends neither on the order nor on how many tasks run at once. A building that
 * cannot be checked says why; the others go on.
 * @param atOnce tasks given out at the same time: how many workers the engine has
 * @throws Refusal `cancelled`, `buildings/no-water`, and those of opening the ground
 */
export async function checkBuildings(
  engine: BuildingsEngine,
  atOnce: number,
  question: BuildingsQuestion,
  options: BuildingsOptions = {},
): Promise<BuildingsCheck> {
  const buildings = [...question.buildings].sort((a, b) => (a.id < b.id ? -1 : 1));
  const levelsM = [...new Set(question.levelsM ?? [])].sort((a, b) => a - b);
  const plan = barePlan(question.plan);
  const { onProgress, signal } = options;
  const traced = await engine.traceBuildings(
    { plan, buildings, levelsM },
    {
      ...(signal && { signal }),
      onProgress: (share, doing) => onProgress?.(share * TRACE_SHARE, doing),
    },
  );
  const near = nearBuildings(buildings);
  const { mostOnOneLine = MOST_ON_ONE_LINE } = question;
  const taskFor = (indices: readonly number[]): LineTask => ({
    ...{ plan, levelsM, mostOnOneLine },
    near: outlinesNear(near, buildings, indices),
  });
  const { waters } = traced;
  const progress = taskProgress(options);
  const check: Check = { engine, atOnce, buildings, waters, near, taskFor, options, progress };
  const checked = await checkEach(check, levelsM.at(-1) ?? Number.NEGATIVE_INFINITY);
  const { groups, tried } = await checkGroups(check, checked);
  const byId = new Map(checked.map((each) => [each.id, each]));
  const inOrder = question.buildings.map(({ id }) => byId.get(id)!);
  return { buildings: inOrder, groups, groupsTried: tried, trace: traced.trace };
}

function taskProgress({ onProgress }: BuildingsOptions): TaskProgress {
  let [done, ahead, share] = [0, 0, TRACE_SHARE];
  return {
    expect(tasks) {
      ahead = tasks;
    },
    did(doing) {
      done++;
      ahead = Math.max(0, ahead - 1);
      const now = TRACE_SHARE + ((1 - TRACE_SHARE) * done) / (done + ahead);
      share = Math.max(share, now);
      onProgress?.(share, doing);
    },
  };
}

/** A plan as a task needs it: without lines and what is built of them. */
function barePlan(plan: Plan): Plan {
  const { progress: _, carried: __, ...rest } = plan;
  return { ...rest, alignments: [], chosenId: null };
}

function outlinesNear(
  near: NearBuildings,
  buildings: readonly Building[],
  indices: readonly number[],
): LineTask["near"] {
  const others = new Set(indices.flatMap((index) => near.within(index, OBSTACLES_M)));
  return [...others]
    .filter((index) => !indices.includes(index))
    .sort((a, b) => a - b)
    .flatMap((index) => buildings[index]!.parts);
}

async function checkEach(check: Check, highestM: number): Promise<CheckedBuilding[]> {
  const { engine, atOnce, buildings, waters, taskFor, options, progress } = check;
  const known = new Map(options.known?.map((each) => [each.id, each]));
  const checked: CheckedBuilding[] = [];
  const report = (index: number, found: CheckedBuilding) => {
    checked[index] = found;
    options.onChecked?.(found);
  };
  const searched: number[] = [];
  for (const [index, building] of buildings.entries()) {
    const water = waters[index]!;
    const before = known.get(building.id);
    if (before) report(index, before);
    else if (isSearched(water, highestM)) searched.push(index);
    else report(index, unsearched(building, water));
  }
  progress.expect(searched.length + expectedGroups(check));
  await inPool(atOnce, searched, async (index) => {
    const [building, water] = [buildings[index]!, waters[index]!];
    const request = { ...taskFor([index]), building, water };
    const { signal } = options;
    const found = await engine
      .checkBuilding(request, signal && { signal })
      .catch(failedAs(unsearched(building, water)));
    report(index, found);
    progress.did("Looking for rings");
  });
  return checked;
}

function isSearched({ state, sillM }: BuildingWater, highestM: number): boolean {
  return state === "flooded" || (state === "dry" && sillM !== null && sillM < highestM);
}

/** What is said of a building whose task fails; a cancelled check ends. */
function failedAs(bare: CheckedBuilding): (thrown: unknown) => CheckedBuilding {
  return (thrown) => {
    if (thrown instanceof Refusal && thrown.code === "cancelled") throw thrown;
    return { ...bare, failed: asFailure(thrown).code };
  };
}
