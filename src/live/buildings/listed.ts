import { batch, computed, effect, type ReadonlySignal, signal, untracked } from "@preact/signals";
import {
  buildingsFromShapes,
  doubtfulCounts,
  usualIdColumn,
} from "../../../shared/buildings/from-shapes.ts";
import type { FoundBuildings, LeftOutKind } from "../../../shared/buildings/from-shapes-types.ts";
import { layOutShapes } from "../../../shared/buildings/lay-out-shapes.ts";
import type { Building, Priority } from "../../../shared/buildings/types.ts";
import { type Failure, failureOf } from "../../../shared/failure.ts";
import type { Structure } from "../../../shared/plan.ts";
import type { FootprintColumns } from "../../../shared/plan-footprints.ts";
import { failureWords } from "../../../shared/words/failure.ts";
import { BRING_BACK, footprintNotes } from "../../../shared/words/footprint-notes.ts";
import { forgetLists, keepList, keptList } from "../../document/kept-buildings.ts";
import { tell, withdraw } from "../../document/notices.ts";
import { plan } from "../../document/store.ts";
import { type FootprintLayer, footprintColumns, footprintLayer, isPicking } from "../footprints.ts";
import { ground } from "../ground.ts";
import { importFootprints } from "../import-shapes.ts";
import { unitSystem } from "../screen.ts";
import { groundKey } from "./check-key.ts";
import { buildingsOpen, lineInPlan } from "./open.ts";

/** The buildings that are looked at, and where they are from. */
interface Listed {
  /** Name of the file; null where they are those of the plan. */
  readonly file: string | null;
  readonly buildings: readonly Building[];
}

const PRIORITY = /priorit/i;
const columnPicked = signal<{ readonly of: object; readonly column: string | null } | null>(null);

/** Column of the layer that says each building's priority: as picked, else one that is called so; null = none does. */
export const priorityColumn: ReadonlySignal<string | null> = computed(() => {
  const layer = footprintLayer.value;
  const picked = columnPicked.value;
  if (!layer) return null;
  if (picked?.of === layer) return picked.column;
  return layer.columns.all.find((name) => PRIORITY.test(name)) ?? null;
});

export function pickPriorityColumn(column: string | null): void {
  const of = footprintLayer.peek();
  if (of) columnPicked.value = { of, column };
}

const idColumnPicked = signal<{ readonly of: object; readonly column: string | null } | null>(null);

/** Column of the layer that says each building's id: as picked, else one that is called so; null = the features' own. */
export const idColumn: ReadonlySignal<string | null> = computed(() => {
  const layer = footprintLayer.value;
  const picked = idColumnPicked.value;
  if (!layer) return null;
  return picked?.of === layer ? picked.column : usualIdColumn(layer.columns.all);
});

/** Takes the ids from another column. Priorities that are set in the table stay with their buildings. */
export function pickIdColumn(column: string | null): void {
  const of = footprintLayer.peek();
  if (!of) return;
  const before = found.peek()?.buildings ?? [];
  const set = prioritySet.peek();
  batch(() => {
    idColumnPicked.value = { of, column };
    const after = found.peek()?.buildings ?? [];
    const moved = before.flatMap(({ id }, i): [string, Priority][] => {
      const [priority, now] = [set.get(id), after[i]];
      return priority === undefined || !now ? [] : [[now.id, priority]];
    });
    prioritySet.value = new Map(moved);
  });
}

const NOTHING: ReadonlySet<LeftOutKind> = new Set();
const takenInOf = signal<{ readonly of: object; readonly kinds: ReadonlySet<LeftOutKind> } | null>(
  null,
);

/** Kinds of outlines of the layer that would be left out, and are not, because the person took them in. */
export const takenIn: ReadonlySignal<ReadonlySet<LeftOutKind>> = computed(() => {
  const now = takenInOf.value;
  return now && now.of === footprintLayer.value ? now.kinds : NOTHING;
});

/** Takes in all that would be left out for one reason, or leaves it out again. */
export function takeIn(kind: LeftOutKind, isTaken: boolean): void {
  const of = footprintLayer.peek();
  if (!of) return;
  const kinds = new Set(takenIn.peek());
  if (isTaken) kinds.add(kind);
  else kinds.delete(kind);
  takenInOf.value = { of, kinds };
}

/** Priorities set in the table, over those of the file, by building. */
const prioritySet = signal<ReadonlyMap<string, Priority>>(new Map());

/** Buildings of the plan when the person chose to check these. */
const ofPlan = signal<readonly Structure[] | null>(null);

/** Outlines of the layer's file; they stay the same objects when only the columns change. */
const laidOut = computed(() => {
  const layer = footprintLayer.value;
  return layer && layOutShapes(layer.whole.file, layer.whole.places);
});

/** The buildings of the layer, and what is told of them; null without a layer. */
const found: ReadonlySignal<FoundBuildings | null> = computed(() => {
  const layer = footprintLayer.value;
  const shapes = laidOut.value;
  if (!layer || !shapes) return null;
  const columns = {
    ...footprintColumns.value,
    ...{ id: idColumn.value, priority: priorityColumn.value },
  };
  return buildingsFromShapes(shapes, columns, ground.value, takenIn.value);
});

/** How many outlines are left out, or taken in all the same, for each reason. */
export const listedDoubtful: ReadonlySignal<ReadonlyMap<LeftOutKind, number>> = computed(
  () => new Map(found.value && doubtfulCounts(found.value)),
);

/** What is to be said of the file: what is left out of it, and what is in doubt. */
export const listedNotes: ReadonlySignal<readonly string[]> = computed(() => {
  const layer = footprintLayer.value;
  if (!layer || !found.value) return [];
  const system = unitSystem.value;
  const { referenceNotes } = layer.whole.file;
  // a list that an earlier version kept has them as sentences
  const said = referenceNotes.map((note: Failure | string) =>
    typeof note === "string" ? note : failureWords(note, system).message,
  );
  return [...said, ...footprintNotes(found.value, system)];
});

/** Outlines and the rest as the file has them. */
const asImported: ReadonlySignal<Listed | null> = computed(() => {
  const layer = footprintLayer.value;
  if (layer && found.value) return { file: layer.name, buildings: found.value.buildings };
  const structures = ofPlan.value;
  return structures && { file: null, buildings: structures.map(buildingOf) };
});

/** The buildings with the priorities that are set in the table; null where there are none to look at. */
export const listed: ReadonlySignal<Listed | null> = computed(() => {
  const now = asImported.value;
  const set = prioritySet.value;
  if (!now || set.size === 0) return now;
  const buildings = now.buildings.map((each) => {
    const priority = set.get(each.id);
    return priority === undefined ? each : { ...each, priority };
  });
  return { ...now, buildings };
});

export function setPriority(id: string, priority: Priority): void {
  prioritySet.value = new Map(prioritySet.peek()).set(id, priority);
}

function buildingOf({ id, name, outline, floorM }: Structure): Building {
  return { id, name, parts: [outline], floorM, weight: 1, priority: "" };
}

/** Imports footprints for this view: none is picked into the plan. What is wrong stands in `footprintFailure`. */
export async function importCountyFootprints(file: File): Promise<void> {
  const before = footprintLayer.peek();
  await importFootprints(file);
  isPicking.value = false;
  if (footprintLayer.peek() !== before) prioritySet.value = new Map();
}

interface KeptList {
  readonly layer: FootprintLayer;
  readonly columns: FootprintColumns;
  readonly priorityColumn: string | null;
  /** Not in lists that an earlier version kept. */
  readonly idColumn?: string | null;
  /** The same. */
  readonly takenIn?: ReadonlySet<LeftOutKind>;
  readonly priorities: ReadonlyMap<string, Priority>;
}

let isKept = false;

/**
 * Keeps the imported buildings, with what is said of them, on this device with the elevation data that are open, and
 * brings them back to the map when those are opened again: a search keeps off them. Lists what there is to look at once
 * the view is open, again when elevation data come after it.
 */
export function keepListed(): void {
  if (isKept) return;
  isKept = true;
  effect(() => {
    const isGroundOpen = ground.value !== null;
    if (buildingsOpen.value) untracked(() => void listBuildings(isGroundOpen));
    else if (isGroundOpen && !footprintLayer.peek()) void takeKeptList(groundKey());
  });
  effect(() => {
    const layer = footprintLayer.value;
    if (!layer || !ground.value) return;
    void keepList(groundKey(), keptNow(layer)).catch(() => {});
  });
}

function keptNow(layer: FootprintLayer): KeptList {
  return {
    ...{ layer, columns: footprintColumns.value, priorityColumn: priorityColumn.value },
    ...{ idColumn: idColumn.value, takenIn: takenIn.value, priorities: prioritySet.value },
  };
}

/** Takes the imported footprints off the page and off this device; a notice offers to bring them back. */
export function removeFootprints(): void {
  const layer = footprintLayer.peek();
  if (!layer) return;
  const kept = keptNow(layer);
  batch(() => {
    footprintLayer.value = null;
    isPicking.value = false;
    prioritySet.value = new Map();
  });
  void forgetLists().catch(() => {});
  const { name, footprints } = layer;
  tell("info", failureOf("footprints/removed", { name, count: footprints.length }), {
    label: BRING_BACK,
    run: () => {
      withdraw("footprints/removed");
      show(kept);
    },
  });
}

/** Takes the buildings that were imported on the same elevation data before the page was loaded again. */
async function takeKeptList(key: string): Promise<void> {
  const kept = await keptList<KeptList>(key);
  if (kept && !footprintLayer.peek() && key === groundKey()) show(kept);
}

function show(kept: KeptList): void {
  const of = kept.layer;
  batch(() => {
    footprintColumns.value = kept.columns;
    if (kept.idColumn !== undefined) idColumnPicked.value = { of, column: kept.idColumn };
    if (kept.takenIn) takenInOf.value = { of, kinds: kept.takenIn };
    prioritySet.value = kept.priorities;
    footprintLayer.value = of;
    pickPriorityColumn(kept.priorityColumn);
  });
}

/** The elevation data for which this device was asked for a list that it kept. */
let lookedFor: string | null = null;

/**
 * Takes the buildings of the plan where no footprints are imported and none are kept, but for a plan that was opened
 * from the list. Nothing else is listed while kept ones are looked for: a check of it would drop their answers.
 */
async function listBuildings(isGroundOpen: boolean): Promise<void> {
  isPicking.value = false;
  if (footprintLayer.peek() || lineInPlan.peek()) return;
  const key = groundKey();
  if (isGroundOpen && lookedFor !== key) {
    ofPlan.value = null;
    await takeKeptList(key);
    if (key !== groundKey() || footprintLayer.peek()) return;
    lookedFor = key;
  }
  const { structures } = plan.peek();
  ofPlan.value = structures.length > 0 ? structures : null;
}

/**
 * What the outlines and their ids are from: another object once other buildings are listed, or some are taken in, or
 * the same have other ids, because answers are found by id; null without any.
 */
export const listedFrom: ReadonlySignal<object | null> = computed(() => {
  const [layer, column, structures] = [footprintLayer.value, idColumn.value, ofPlan.value];
  const kinds = takenIn.value;
  return layer ? { layer, column, kinds } : structures;
});
