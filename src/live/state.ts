import { computed, type ReadonlySignal, signal } from "@preact/signals";
import type { Failure } from "../../shared/failure.ts";
import { accuracyOf, type GroundAccuracy } from "../../shared/ground-accuracy.ts";
import type { LoneValue } from "../../shared/ground-marks.ts";
import type { GroundSummary, HeightRange } from "../../shared/messages.ts";
import type { LonLat, Plan } from "../../shared/plan.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import type { UnitSystem } from "../../shared/units.ts";
import type { WaterTrace } from "../../shared/water-types.ts";
import { plan } from "../document/store.ts";

/** What the pointer does on the map. `move` edits corners of the chosen alternative. */
export type Tool =
  | "move"
  | "draw-ring"
  | "draw-line"
  | "draw-structure"
  | "draw-no-go"
  | "draw-flow"
  | "place-gauge"
  | "place-source";

export interface Notice {
  readonly id: number;
  readonly tone: "error" | "info";
  readonly failure: Failure;
  /** What the person can do about it right here. */
  readonly act?: NoticeAct | undefined;
}

export interface NoticeAct {
  readonly label: string;
  readonly run: () => void;
}

/** Ground as opened; null before the first raster. */
export const ground = signal<GroundSummary | null>(null);
/** The files of `ground`, side-cars too. */
export const openFiles = signal<readonly File[]>([]);
/** A height that may mark missing data, met while `ground` was read; null when there was none. */
export const markMet = signal<LoneValue | null>(null);
/** How good the heights of the ground are taken to be; before any is open, as for lidar. */
export const accuracyNow: ReadonlySignal<GroundAccuracy> = computed(() => {
  const { cellXM = 0, cellYM = 0 } = ground.value ?? {};
  return accuracyOf(plan.value.ground, Math.max(cellXM, cellYM));
});
/** Latest whole result per alternative id. */
export const sized = signal<ReadonlyMap<string, SizedLine>>(new Map());
export const sizingFailure = signal<Failure | null>(null);
/** The water as it was followed last, and for which plan; `waterNow` says whether that still holds. */
export const traced = signal<{ readonly trace: WaterTrace; readonly of: Plan } | null>(null);
/** Why the water could not be followed for the plan as it is. */
export const tracingFailure = signal<Failure | null>(null);
/** What the engine is doing for longer than 300 ms. */
export const busy = signal<{
  readonly doing: string;
  readonly share: number;
  readonly cancel: () => void;
} | null>(null);
export const tool = signal<Tool>("move");
/** Show every alternative on the map, or the chosen one alone. */
export const showAll = signal(true);
/** Marked station on the chosen alternative, as a chainage; kept inside the line by whoever draws it. */
export const markedM = signal<number | null>(null);
/** A check whose stretch the person points at. */
export const pointedCheck = signal<{
  readonly fromM: number;
  readonly toM: number;
  readonly at: LonLat | null;
} | null>(null);
/** Files waiting for the person to say in which unit their heights are, and what their heights are as stored. */
export const unitQuestion = signal<{
  readonly files: readonly File[];
  readonly failure: Failure;
  readonly range: HeightRange | null;
} | null>(null);
export const notices = signal<readonly Notice[]>([]);
/** Which full-screen sheet is open for print; null for the working screen. */
export const sheetsOpen = signal(false);

function remembered<T extends string>(key: string, allowed: readonly T[], fallback: T) {
  let start = fallback;
  try {
    const kept = localStorage.getItem(key) as T | null;
    if (kept && allowed.includes(kept)) start = kept;
  } catch {
    // Storage may be closed to the page; the choice then lasts as long as the tab.
  }
  const value = signal<T>(start);
  value.subscribe((next) => {
    try {
      localStorage.setItem(key, next);
    } catch {
      // As above.
    }
  });
  return value;
}

export const unitSystem = remembered<UnitSystem>("drystead.units", ["us", "metric"], "us");
export const theme = remembered<"light" | "dark">("drystead.theme", ["light", "dark"], "light");

export const chosenId: ReadonlySignal<string | null> = computed(
  () => plan.value.chosenId ?? plan.value.alignments[0]?.id ?? null,
);
export const chosenLine: ReadonlySignal<SizedLine | null> = computed(() => {
  const id = chosenId.value;
  return id === null ? null : (sized.value.get(id) ?? null);
});

let nextNotice = 1;
/** Says something to the person without taking anything away; dismissed by the person. */
export function tell(tone: Notice["tone"], failure: Failure, act?: NoticeAct): void {
  notices.value = [...notices.value.slice(-3), { id: nextNotice++, tone, failure, act }];
}

/** Takes away the notices with this code: what they say is over. */
export function withdraw(code: string): void {
  notices.value = notices.value.filter((notice) => notice.failure.code !== code);
}

export function dismiss(id: number): void {
  notices.value = notices.value.filter((notice) => notice.id !== id);
}
