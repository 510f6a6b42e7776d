import { computed, effect, type ReadonlySignal, signal, untracked } from "@preact/signals";
import type { Sweep } from "../../../shared/buildings/shown-states.ts";
import type { Building, CheckedBuilding, CheckedGroup } from "../../../shared/buildings/types.ts";
import { asFailure, type Failure } from "../../../shared/failure.ts";
import { readKeptCheck } from "../../document/kept-buildings.ts";
import { checkBuildings } from "../../engine.ts";
import { BUILDINGS } from "../parts.ts";
import { type Question, questionOf } from "../question.ts";
import { uncounted } from "../uncounted.ts";
import { checkKey } from "./check-key.ts";
import { answerKeeper } from "./keep-answers.ts";
import { levelsToCount } from "./levels.ts";
import { listed, listedFrom } from "./listed.ts";
import { buildingsOpen } from "./open.ts";
import { stock } from "./stock.ts";

type Asked = Question<{
  readonly from: object;
  readonly levels: string;
  readonly mostOnOneLine: number;
}>;

/** One check of all listed buildings. */
interface Checking {
  readonly of: Asked;
  readonly phase: "checking" | "stopped" | "done" | "failed";
  readonly total: number;
  /** Share done, 0..1. */
  readonly share: number;
  readonly startedAtMs: number;
  readonly sweep: Sweep;
  readonly failure: Failure | null;
}

/** The plan must rest so long before its buildings are checked anew, milliseconds. */
const SETTLE_MS = 600;
/** What comes in is shown so often, milliseconds; less often the more there is to draw. */
const SHOWN_EVERY_MS = 300;
const EACH_SHOWN_MS = 0.1;
/** Before so much is done nobody can say how long it takes. */
const LEAST_SHARE = 0.03;
const LEAST_MS = 2000;

const running = signal<Checking | null>(null);
/** The last check that was done to its end; it stays while a new one of the same buildings runs. */
const finished = signal<Checking | null>(null);
let abort: AbortController | null = null;

/** What is to be checked now; null without ground, water or buildings. */
const toCheck: ReadonlySignal<Asked | null> = questionOf(BUILDINGS, () => {
  const from = listedFrom.value;
  if (!from || uncounted.value) return null;
  return {
    from,
    levels: JSON.stringify(levelsToCount.value),
    mostOnOneLine: stock.value.mostOnOneLine,
  };
});

/** The check that runs or ran last; null before the first. */
export const checkingNow: ReadonlySignal<Checking | null> = running;

/** What the check found, as far as it is shown: of a first check what is there, of a later one all at its end. */
export const sweepShown: ReadonlySignal<Sweep | null> = computed(
  () => (finished.value ?? running.value)?.sweep ?? null,
);

/** Whether what is shown is of the plan and the buildings as they are now. */
export const checkIsCurrent: ReadonlySignal<boolean> = computed(() => {
  const shown = finished.value ?? running.value;
  return shown !== null && shown.of === toCheck.value;
});

/** What is known of all listed buildings as they are now; null until all are checked. */
export const sweepWhole: ReadonlySignal<Sweep | null> = computed(() =>
  finished.value && finished.value.of === toCheck.value ? finished.value.sweep : null,
);

/** Seconds that the check that runs will take on; null before anyone can say. */
export function secondsLeft(now: Checking): number | null {
  const passedMs = performance.now() - now.startedAtMs;
  if (now.share < LEAST_SHARE || passedMs < LEAST_MS) return null;
  return ((passedMs / now.share) * (1 - now.share)) / 1000;
}

/** Stops the check; what is checked stays. */
export function stopChecking(): void {
  abort?.abort();
  abort = null;
  const now = running.peek();
  if (now?.phase === "checking") running.value = { ...now, phase: "stopped" };
}

/** Checks the buildings that a stopped check did not come to. */
export function goOnChecking(): void {
  const now = running.peek();
  if (now && now.phase !== "checking") void check(now.of, now.sweep);
}

/** Keeps the buildings checked while their view is open: anew once plan, ground or buildings have changed and rest. */
export function keepChecked(): () => void {
  let rest: ReturnType<typeof setTimeout> | undefined;
  const stop = effect(() => {
    const question = toCheck.value;
    const isOpen = buildingsOpen.value;
    clearTimeout(rest);
    untracked(() => {
      const now = running.peek();
      if (now && now.of !== question) stopChecking();
      if (now && now.of.from !== question?.from) {
        running.value = null;
        finished.value = null;
      }
      if (!isOpen || !question || running.peek()?.of === question) return;
      const wait = finished.peek() ? SETTLE_MS : 0;
      rest = setTimeout(() => void check(question, null), wait);
    });
  });
  return () => {
    clearTimeout(rest);
    stop();
    stopChecking();
  };
}

/** @param before what the page knows; null where what this device has kept of the same check counts */
async function check(of: Asked, before: Sweep | null): Promise<void> {
  const buildings: readonly Building[] = listed.peek()?.buildings ?? [];
  const own = new AbortController();
  abort?.abort();
  abort = own;
  const key = await checkKey(of.plan, buildings, of);
  const kept = before || key === null ? null : await readKeptCheck(key);
  if (own.signal.aborted) return;
  const checked = new Map<string, CheckedBuilding>(
    before?.checked ?? kept?.buildings.map((each) => [each.id, each]),
  );
  if (kept?.groups && buildings.every(({ id }) => checked.has(id))) {
    running.value = finishedAs(of, { checked, groups: kept.groups });
    finished.value = running.peek();
    return;
  }
  const keeper = key === null ? null : answerKeeper(key, new Map(checked));
  const groups: CheckedGroup[] = [];
  let share = 0;
  let shownAtMs = 0;
  const everyMs = Math.max(SHOWN_EVERY_MS, buildings.length * EACH_SHOWN_MS);
  const begun: Checking = {
    ...{ of, phase: "checking", total: buildings.length, share, failure: null },
    startedAtMs: performance.now(),
    sweep: { checked: new Map(checked), groups: [] },
  };
  running.value = begun;
  const publish = (phase: Checking["phase"], failure: Failure | null = null) => {
    const sweep = { checked: new Map(checked), groups: [...groups] };
    running.value = { ...begun, phase, share, sweep, failure };
  };
  const came = () => {
    const nowMs = performance.now();
    if (own.signal.aborted || nowMs - shownAtMs < everyMs) return;
    shownAtMs = nowMs;
    publish("checking");
  };
  try {
    const question = {
      ...{ plan: of.plan, buildings, mostOnOneLine: of.mostOnOneLine },
      levelsM: JSON.parse(of.levels) as number[],
    };
    const answer = await checkBuildings(question, {
      signal: own.signal,
      known: [...checked.values()],
      onChecked: (each) => {
        checked.set(each.id, each);
        keeper?.add(each);
        came();
      },
      onGroup: (group) => {
        groups.push(group);
        came();
      },
      onProgress: (done) => {
        share = done;
        came();
      },
    });
    if (own.signal.aborted) return;
    const sweep: Sweep = {
      checked: new Map(answer.buildings.map((each) => [each.id, each])),
      groups: answer.groups,
    };
    keeper?.end(answer.groups);
    running.value = finishedAs(of, sweep);
    finished.value = running.peek();
  } catch (thrown) {
    keeper?.write();
    const failure = asFailure(thrown);
    if (own.signal.aborted || failure.code === "cancelled") return;
    publish("failed", failure);
  }
}

function finishedAs(of: Asked, sweep: Sweep): Checking {
  return {
    ...{ of, phase: "done", total: sweep.checked.size, share: 1, sweep, failure: null },
    startedAtMs: performance.now(),
  };
}
