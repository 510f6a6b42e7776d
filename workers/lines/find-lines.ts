import type { CallOptions } from "../../shared/messages.ts";
import type {
  FindRingRequest,
  FindRingResponse,
  FoundCordon,
  FoundLine,
  HowGood,
  SearchNote,
} from "../../shared/search-types.ts";
import type { Terrain } from "../raster/terrain.ts";
import { biggerCordons, CORDONS_CAP_MS } from "../search/bigger-cordons.ts";
import { howGood, JUDGING_CAP_MS } from "../search/how-good.ts";
import { inTurns } from "../search/in-turns.ts";
import { partOf } from "../search/progress.ts";
import { ringSteps } from "../search/search-ring.ts";
import type { BestPossible, SearchRequest, SearchStep } from "../search/types.ts";
import { stopIfCancelled } from "../stop-if-cancelled.ts";
import { foundLine } from "./found-line.ts";
import { ringTogether, type Search } from "./ring-together.ts";
import { type SearchSetup, searchSetup } from "./search-setup.ts";

const CAP_MS = 2000;
const MOST_CAP_MS = 8000;
/** Of a stated cap, the time that judging and other reaches may take each where that is more than usual. */
const FURTHER_SHARE = 0.25;
/** How far one ring may use more than its share of the time for judging. */
const FAIR = 2;

/**
 * The line that needs the least round the plan's structures, as the plan can hold it.
 * @throws Refusal `site/...` when no ring is possible, `cancelled`
 */
export async function findLines(
  terrain: Terrain,
  request: FindRingRequest,
  options?: CallOptions,
): Promise<FindRingResponse> {
  const widestM = widest(request.reachesM);
  const setting = await searchSetup(terrain, request.plan, request, { widestM });
  stopIfCancelled(options);
  return inTurns(findSteps(setting, request), options);
}

function widest(reachesM: readonly number[] = []): number {
  return Math.max(0, ...reachesM);
}

function* findSteps(
  setting: SearchSetup,
  ask: FindRingRequest,
): Generator<SearchStep, FindRingResponse> {
  const { judge, reachesM = [] } = ask;
  const { request } = setting;
  const isLast = !judge && reachesM.length === 0;
  const search = yield* partOf(searchSteps(setting, ask), 0, isLast ? 1 : 0.4);
  const furtherMs = FURTHER_SHARE * (ask.timeCapMs ?? 0);
  const lines: FoundLine[] = [];
  const goods = judge
    ? yield* partOf(judgedSteps(request, search, judge, furtherMs), 0.4, 0.7)
    : [];
  for (const [k, ring] of search.rings.entries()) {
    lines.push(foundLine(setting, ring, goods[k] ?? null));
    yield { share: judge ? 0.7 : 0.4, doing: "Sizing what was found" };
  }
  const cordons = yield* partOf(cordonSteps(setting, reachesM, furtherMs), judge ? 0.7 : 0.4, 1);
  const { cutShort } = search;
  return { lines, cordons, cutShort, notes: [...search.notes, ...more(lines, judge)] };
}

function* searchSteps(
  { request, structures }: SearchSetup,
  ask: FindRingRequest,
): Generator<SearchStep, Search> {
  const { length } = structures;
  const timeCapMs = ask.timeCapMs ?? Math.min(MOST_CAP_MS, CAP_MS * length);
  if (length === 1 || ask.together) return yield* ringTogether(request, { timeCapMs });
  return yield* ringSteps(request, { timeCapMs });
}

/**
 * How good each ring is, the time for one shared out among them. A search that was cut short is never given
 * a proof: what it did not look at is not known.
 */
function* judgedSteps(
  request: SearchRequest,
  { rings, cutShort }: Search,
  judge: HowGood["kind"],
  leastMs: number,
): Generator<SearchStep, (HowGood | null)[]> {
  const wanted = cutShort ? "estimate" : judge;
  const endsAt = performance.now() + Math.max(leastMs, JUDGING_CAP_MS[wanted]);
  const goods: (HowGood | null)[] = [];
  for (const [k, ring] of rings.entries()) {
    const leftMs = Math.max(0, endsAt - performance.now());
    const timeCapMs = Math.min(leftMs, (FAIR * leftMs) / (rings.length - k));
    const steps = howGood(request, ring, wanted, { timeCapMs });
    const good = yield* partOf(steps, k / rings.length, (k + 1) / rings.length);
    goods.push(good && judged(good));
  }
  return goods;
}

function judged({ kind, gapShare }: BestPossible): HowGood {
  return { kind, gapShare };
}

function* cordonSteps(
  setting: SearchSetup,
  reachesM: readonly number[],
  leastMs: number,
): Generator<SearchStep, FoundCordon[]> {
  if (reachesM.length === 0) return [];
  const timeCapMs = Math.max(leastMs, CORDONS_CAP_MS);
  const found = yield* biggerCordons(setting.request, { timeCapMs }, reachesM);
  let line: FoundLine | null = null;
  return found.map(({ reachM, ring, sameAsBefore, cutShort }): FoundCordon => {
    if (ring && !sameAsBefore) line = foundLine(setting, ring);
    return { reachM, line, sameAsBefore, cutShort };
  });
}

function more(lines: readonly FoundLine[], judge: FindRingRequest["judge"]): SearchNote[] {
  const notes: SearchNote[] = [];
  if (judge && lines.some(({ howGood: good }) => good === null)) {
    notes.push({ kind: "not-judged" });
  }
  if (lines.some(({ totals }) => totals.builtLengthM === 0)) {
    notes.push({ kind: "nothing-to-build" });
  }
  if (lines.some(({ pieces }) => pieces.length > 0)) {
    notes.push({ kind: "part-on-high-ground" });
  }
  if (lines.length > 1) {
    notes.push({ kind: "separate-rings", count: lines.length });
  }
  return notes;
}
