import { Refusal } from "../../shared/failure.ts";
import type { CallOptions } from "../../shared/messages.ts";
import type {
  FoundCordon,
  FoundLine,
  HowGood,
  SiteRingRequest,
  SiteRingResponse,
} from "../../shared/siting-types.ts";
import type { Terrain } from "../raster/terrain.ts";
import { biggerCordons } from "../search/bigger-cordons.ts";
import { howGood } from "../search/how-good.ts";
import { inTurns } from "../search/in-turns.ts";
import { siteSteps } from "../search/site-ring.ts";
import type { SearchStep } from "../search/types.ts";
import { foundLine } from "./found-line.ts";
import { ringTogether, type Search } from "./ring-together.ts";
import { type SiteSetting, siteSetting } from "./site-setting.ts";

const CAP_MS = 2000;
const MOST_CAP_MS = 8000;

/**
 * The line that needs the least round the plan's structures, as the plan can hold it.
 * @throws Refusal `site/...` when no ring is possible, `cancelled`
 */
export async function findLines(
  terrain: Terrain,
  request: SiteRingRequest,
  options?: CallOptions,
): Promise<SiteRingResponse> {
  const setting = await siteSetting(terrain, request.plan, request, widest(request.reachesM));
  if (options?.signal?.aborted) {
    throw new Refusal("cancelled", "The work was cancelled.", "Start it again when you want it.");
  }
  return inTurns(findSteps(setting, request), options);
}

function widest(reachesM: readonly number[] = []): number {
  return Math.max(0, ...reachesM);
}

function* findSteps(
  setting: SiteSetting,
  ask: SiteRingRequest,
): Generator<SearchStep, SiteRingResponse> {
  const { judge, reachesM = [] } = ask;
  const { request } = setting;
  const startedAt = performance.now();
  const isLast = !judge && reachesM.length === 0;
  const search = yield* within(searchSteps(setting, ask), 0, isLast ? 1 : 0.4);
  const searchMs = performance.now() - startedAt;
  const lines: FoundLine[] = [];
  for (const ring of search.rings) {
    const good = judge ? yield* within(howGood(request, ring, judge), 0.4, 0.7) : null;
    lines.push(foundLine(setting, ring, good && judged(good)));
  }
  const cordons = yield* within(cordonSteps(setting, reachesM), judge ? 0.7 : 0.4, 1);
  const { cutShort } = search;
  return { lines, cordons, cutShort, notes: [...search.notes, ...more(lines)], searchMs };
}

/**
 * First one ring round all structures, then whatever grouping takes less: should time run out before all
 * groupings have been looked at, the answer is never worse than that one ring.
 */
function* searchSteps(
  { request, structures }: SiteSetting,
  ask: SiteRingRequest,
): Generator<SearchStep, Search> {
  const { length } = structures;
  const timeCapMs = ask.timeCapMs ?? Math.min(MOST_CAP_MS, CAP_MS * length);
  if (length === 1 || ask.together) return yield* ringTogether(request, { timeCapMs });
  const one = yield* within(attempt(ringTogether(request, { timeCapMs })), 0, 0.3);
  const all = yield* within(siteSteps(request, { timeCapMs }), 0.3, 1);
  const [ring] = one?.rings ?? [];
  if (!one || !ring || all.priceM3 < ring.priceM3) return all;
  return { ...one, notes: all.notes };
}

/** What steps give; null where they are refused. */
function* attempt<T>(steps: Generator<SearchStep, T>): Generator<SearchStep, T | null> {
  try {
    return yield* steps;
  } catch (thrown) {
    if (thrown instanceof Refusal) return null;
    throw thrown;
  }
}

function judged({ kind, gapShare, wording }: HowGood): HowGood {
  return { kind, gapShare, wording };
}

function* cordonSteps(
  setting: SiteSetting,
  reachesM: readonly number[],
): Generator<SearchStep, FoundCordon[]> {
  if (reachesM.length === 0) return [];
  const found = yield* biggerCordons(setting.request, {}, reachesM);
  let line: FoundLine | null = null;
  return found.map(({ reachM, ring, sameAsBefore, cutShort }): FoundCordon => {
    if (ring && !sameAsBefore) line = foundLine(setting, ring);
    return { reachM, line, sameAsBefore, cutShort };
  });
}

/** The same steps as a part of a longer work. */
function* within<T>(
  steps: Generator<SearchStep, T>,
  from: number,
  to: number,
): Generator<SearchStep, T> {
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return step.value;
    yield { ...step.value, share: from + (to - from) * step.value.share };
  }
}

function more(lines: readonly FoundLine[]): string[] {
  const notes: string[] = [];
  if (lines.some(({ totals }) => totals.builtLengthM === 0)) {
    notes.push("Nothing has to be built: ground all round stands above the crest.");
  }
  if (lines.some(({ pieces }) => pieces.length > 0)) {
    notes.push("Part of the way round runs over ground above the crest, where nothing is built.");
  }
  if (lines.length > 1) {
    notes.push(`${lines.length} separate rings need less than one round all of the structures.`);
  }
  return notes;
}
