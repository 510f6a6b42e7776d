import * as v from "valibot";
import { CLOSURES } from "./closures/closure-schema.ts";
import type {
  Alignment,
  Flow,
  Gauge,
  LonLat,
  NoGo,
  ProgressMark,
  ReachSection,
  Structure,
  WaterSource,
} from "./plan.ts";
import type { LonLatComplaint } from "./plan-complaints.ts";
import { fields, oneOf, quantity, setting, text, yesOrNo } from "./plan-makers.ts";
import { reachSectionsComplaint } from "./plan-reach-sections.ts";
import { cameOf, MAX_NAME, MAX_NOTE } from "./plan-text.ts";
import {
  breaksWords,
  builtBackwardWords,
  cornerCountWords,
  differentCornersWords,
  FLOW_AT_ONE_PLACE,
  lineKindWords,
  lineTooLongWords,
  lonLatWords,
  noListWords,
  pinsWords,
  sameCornersWords,
  wholeSecondsWords,
} from "./words/refusals/plan-values.ts";
import { reachSectionsWords } from "./words/refusals/reach-sections.ts";

type Schema<T> = v.GenericSchema<unknown, T>;

/** Version of the plan file that this program writes. */
export const PLAN_VERSION = 1;
/** Most corners one outline or alignment may have. */
export const MAX_CORNERS = 2000;
/** Most entries of each list of the plan. */
export const MAX_COUNT = {
  structures: 200,
  alignments: 50,
  noGo: 200,
  sources: 50,
  culverts: 200,
  drains: 200,
  possibleCulverts: 200,
  roads: 20,
  workPlaces: 50,
  terrain: 5000,
  progress: 5000,
} as const;
const MAX_BREAKS = 500;
/** Longest alignment, metres: the plan plane holds its accuracy within 9 km of the site. */
const MAX_LINE_M = 20_000;
const METRES_PER_DEGREE = 111_320;

/** What is wrong with a coordinate pair, with the likely cause; null when nothing is. */
export function lonLatComplaint(value: unknown): LonLatComplaint | null {
  return isLonLat(value) ? null : noLonLat(value);
}

function noLonLat(value: unknown): LonLatComplaint {
  const said = { is: "no-lon-lat", came: cameOf(value) } as const;
  if (!Array.isArray(value)) return { ...said, likely: null };
  const [first, second] = value as unknown[];
  if (isLonLat([second, first])) return { ...said, likely: "swapped" };
  const far = [first, second].some((n) => typeof n === "number" && Math.abs(n) > 360);
  return { ...said, likely: far ? "grid" : null };
}

function isLonLat(value: unknown): value is LonLat {
  if (!Array.isArray(value) || value.length !== 2) return false;
  const [lon, lat] = value as unknown[];
  return (
    typeof lon === "number" &&
    typeof lat === "number" &&
    Math.abs(lon) <= 180 &&
    Math.abs(lat) <= 90
  );
}

/** One place. */
export const lonLat = v.custom<LonLat>(isLonLat, ({ input }) => lonLatWords(noLonLat(input)));

/** A list of places along an outline or a line. */
export function corners(words: string, least: number, closes: boolean) {
  return v.pipe(
    v.array(lonLat, ({ input }) => noListWords(words, input)),
    v.check(
      (list) => list.length >= least && list.length <= MAX_CORNERS,
      ({ input }) => cornerCountWords(words, [least, MAX_CORNERS], input.length),
    ),
    v.check(
      (list) => repeatedAt(list, closes) < 0,
      ({ input }) => {
        const at = repeatedAt(input, closes);
        return sameCornersWords(at + 1, ((at + 1) % input.length) + 1);
      },
    ),
    v.check(
      (list) => differing(list, least).length >= least,
      ({ input }) => differentCornersWords(least, differing(input, least).length),
    ),
    v.check(
      (list) => roughLengthM(list) <= MAX_LINE_M,
      ({ input }) => lineTooLongWords(words, MAX_LINE_M, roughLengthM(input)),
    ),
  );
}

function repeatedAt(list: readonly LonLat[], closes: boolean): number {
  const last = closes ? list.length : list.length - 1;
  for (let i = 0; i < last; i++) {
    const next = list[(i + 1) % list.length] as LonLat;
    if (list[i]?.[0] === next[0] && list[i]?.[1] === next[1]) return i;
  }
  return -1;
}

function differing(list: readonly LonLat[], enough: number): LonLat[] {
  const found: LonLat[] = [];
  for (const at of list) {
    if (found.length >= enough) break;
    if (!found.some((each) => each[0] === at[0] && each[1] === at[1])) found.push(at);
  }
  return found;
}

function roughLengthM(list: readonly LonLat[]): number {
  let degrees = 0;
  for (let i = 1; i < list.length; i++) {
    const [lonA, latA] = list[i - 1] as LonLat;
    const [lonB, latB] = list[i] as LonLat;
    const turn = Math.abs(lonB - lonA);
    const across = Math.min(turn, 360 - turn) * Math.cos(((latA + latB) * Math.PI) / 360);
    degrees += Math.hypot(across, latB - latA);
  }
  return degrees * METRES_PER_DEGREE;
}

export const id = text("an identifier", 1, 80);
export const name = text("a name", 1, MAX_NAME);

export const TITLE = text("the title", 1, MAX_NAME);
export const CHOSEN = v.nullable(id);

export const STRUCTURE = fields("a building", {
  id,
  name,
  outline: corners("corners of the outline", 3, true),
  floorM: v.nullable(quantity("the floor elevation (floorM)", -500, 9000, "m")),
  protect: v.optional(yesOrNo("whether it is to be protected (protect)")),
}) as Schema<Structure>;

const breaks = v.custom<number[]>(isRising, ({ input }) => breaksWords(MAX_BREAKS, input));

function isRising(value: unknown): boolean {
  if (!Array.isArray(value) || value.length > MAX_BREAKS) return false;
  return value.every(
    (n, i) =>
      typeof n === "number" && n > (i === 0 ? 0 : (value[i - 1] as number)) && n <= MAX_LINE_M,
  );
}

const pins = v.optional(v.custom<number[]>(isPins, ({ input }) => pinsWords(input)));

function isPins(value: unknown): boolean {
  if (!Array.isArray(value) || value.length > MAX_CORNERS) return false;
  return value.every(
    (n, i) =>
      Number.isInteger(n) && n > (i === 0 ? -1 : (value[i - 1] as number)) && n < MAX_CORNERS,
  );
}

const reachSections = v.optional(
  v.custom<ReachSection[]>(
    (value) => reachSectionsComplaint(value) === null,
    ({ input }) => reachSectionsWords(reachSectionsComplaint(input)!),
  ),
);

const setbackM = v.optional(setting("practice.setbackM", " of the line"));

const ALIGNMENT_SHARED = {
  id,
  name,
  reachBreaksM: breaks,
  pinned: pins,
  reachSections,
  setbackM,
  closures: CLOSURES,
};

export const ALIGNMENT = v.variant(
  "kind",
  [
    fields("a ring", {
      ...ALIGNMENT_SHARED,
      kind: v.literal("ring"),
      corners: corners("corners of the ring", 3, true),
    }),
    fields("a line", {
      ...ALIGNMENT_SHARED,
      kind: v.literal("line"),
      corners: corners("corners of the line", 2, false),
    }),
  ],
  ({ input }) => lineKindWords(input),
) as Schema<Alignment>;

export const NO_GO = fields("a no-go area", {
  id,
  name,
  outline: corners("corners of the area", 3, true),
}) as Schema<NoGo>;

export const SOURCE = fields("a source", { id, name, at: lonLat }) as Schema<WaterSource>;

/** How far a stretch can be built, in order. */
export const BUILD_STATES = ["not-begun", "begun", "to-height", "poly-on", "checked"] as const;

/** Latest moment of a mark: the end of the year 9999. */
const LATEST_S = 253_402_300_799;

export const PROGRESS_MARK = v.pipe(
  fields("what is built", {
    lineId: id,
    fromM: quantity("the start of what is built (fromM)", 0, MAX_LINE_M, "m"),
    toM: quantity("the end of what is built (toM)", 0, MAX_LINE_M, "m"),
    state: oneOf("how far it is built (state)", BUILD_STATES),
    atS: v.pipe(
      quantity("when it was marked (atS)", 0, LATEST_S, "s"),
      v.check(
        (atS) => Number.isInteger(atS),
        ({ input }) => wholeSecondsWords(input),
      ),
    ),
    planNumber: text("the plan number", 1, 16),
    by: text("who marked it (by)", 0, MAX_NAME),
    clearedBy: text("who cleared it (clearedBy)", 0, MAX_NAME),
    note: text("the note", 0, MAX_NOTE),
    photoId: text("the photo's identifier (photoId)", 0, 80),
  }),
  v.check(
    ({ fromM, toM }) => fromM < toM,
    ({ input: { fromM, toM } }) => builtBackwardWords(fromM, toM),
  ),
) as Schema<ProgressMark>;

export const GAUGE = v.nullable(
  fields("the gauge", { name, at: v.nullable(lonLat) }),
) as Schema<Gauge | null>;

export const FLOW = v.nullable(
  v.pipe(
    fields("the flow arrow", { from: lonLat, to: lonLat }),
    v.check((flow) => String(flow.from) !== String(flow.to), FLOW_AT_ONE_PLACE),
  ),
) as Schema<Flow | null>;

const anyRecord = v.record(v.string(), v.unknown());

export const CARRIED = v.optional(
  v.strictObject({
    features: v.array(v.unknown()),
    byFeature: v.record(v.string(), v.object({ properties: anyRecord, members: anyRecord })),
    members: anyRecord,
    settings: anyRecord,
  }),
);
