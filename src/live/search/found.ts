import { computed, type ReadonlySignal, signal } from "@preact/signals";
import { withCorners } from "../../../shared/pins.ts";
import type { Alignment, LonLat, Plan } from "../../../shared/plan.ts";
import type {
  FindRingResponse,
  FoundLine,
  RingOptions,
  SearchNote,
} from "../../../shared/search-types.ts";
import { plan } from "../../document/store.ts";
import { ground } from "../ground.ts";
import { type Parts, partsOf, SEARCH, sameParts } from "../parts.ts";

/** What the last search put into the plan. */
export interface Found {
  /** The alternatives it became. */
  readonly ids: readonly string[];
  /** The alternative that was chosen before: what it is compared with; null when there was none. */
  readonly againstId: string | null;
  readonly ringOptions: RingOptions;
  readonly inputs: Inputs;
  /** The plan before the step that put it there; null once it was followed up otherwise. */
  readonly before: Plan | null;
  readonly lines: readonly FoundLine[];
  readonly cutShort: boolean;
  readonly notes: readonly SearchNote[];
  /** How good it is, other groupings and bigger cordons, once that is known. */
  readonly further: FindRingResponse | null;
  /** True when a proof of how good it is was looked for, found or not. */
  readonly proofSought?: boolean;
}

/** What a search depends on, by identity: parts of the plan, and the ground. */
export type Inputs = Parts;

/** The last search's result; stays when its alternatives are gone, see {@link foundNow}. */
export const found = signal<Found | null>(null);

/** The last search's result while all its alternatives are in the plan. */
export const foundNow: ReadonlySignal<Found | null> = computed(() => {
  const last = found.value;
  const ids = new Set(plan.value.alignments.map(({ id }) => id));
  return last?.ids.every((id) => ids.has(id)) ? last : null;
});

/** True when the plan has changed since in a way that a new search may answer differently. */
export const isOutdated: ReadonlySignal<boolean> = computed(() => {
  const last = found.value;
  return last !== null && !sameParts(last.inputs, inputsOf(plan.value));
});

export function inputsOf(of: Plan): Inputs {
  return [ground.value, ...partsOf(of, SEARCH)];
}

const foundFor = new WeakMap<readonly LonLat[], Inputs>();

/** Remembers for which plan corners were found. They are the same list for as long as nobody edits them. */
export function rememberFound(corners: readonly LonLat[], inputs: Inputs): void {
  foundFor.set(corners, inputs);
}

/** For which plan an alternative's corners were found; null when they were drawn or edited. */
export function foundForOf({ corners }: Alignment): Inputs | null {
  return foundFor.get(corners) ?? null;
}

/** An alternative with a found line in its place; its reaches stay where they were meant, its pins go. */
export function asFound(alternative: Alignment, { kind, corners, setbackM }: FoundLine): Alignment {
  const { id, name } = alternative;
  if (kind !== alternative.kind) return { id, name, kind, corners, reachBreaksM: [], setbackM };
  const { pinned: _, ...moved } = withCorners(alternative, corners);
  return { ...moved, setbackM };
}
