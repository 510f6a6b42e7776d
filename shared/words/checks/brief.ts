import type { CheckFinding } from "../../checks/findings.ts";
import { formatCount } from "../../units.ts";
import { crewInputWords } from "../crew.ts";
import { leveeTypeName } from "../levee-types.ts";
import type { Units } from "../units.ts";
import type { FindingOf } from "./text.ts";

/** A finding in one line beside its place. */
export interface Brief {
  /** The number, or what is wrong in a few words. */
  readonly what: string;
  /** One thing to do, in two or three words. */
  readonly act: string;
}

type BriefOf<F> = (finding: F, units: Units) => Brief;

/** Kinds of finding in one line; a kind without one is said in full. */
export const BRIEFS: { readonly [K in CheckFinding["kind"]]?: BriefOf<FindingOf<K>> } = {
  "over-limit": ({ heightM, limitM }, u) => ({
    what: `${u.lengthOver(heightM, limitM)}, limit ${u.length(limitM)}`,
    act: "move line",
  }),
  "type-limit": ({ heightM, limitM }, u) => ({
    what: `${u.lengthOver(heightM, limitM)}, limit ${u.length(limitM)}`,
    act: "other type",
  }),
  "bond-trench": ({ overM, lengthM }, u) => ({
    what: `over ${u.figure(overM)} on ${u.distance(lengthM)}`,
    act: "bond trench",
  }),
  "raise-over-limit": ({ raiseM, raisedHeightM }, u) => ({
    what: `raised ${u.length(raiseM)}: ${u.length(raisedHeightM)}`,
    act: "higher ground",
  }),
  "raise-too-narrow": ({ raiseM, carriesM }, u) => ({
    what: `base carries ${u.length(carriesM)} of a ${u.length(raiseM)} raise`,
    act: "wider base",
  }),
  freeboard: ({ freeboardM }, u) => ({
    what: `freeboard ${u.length(freeboardM)}`,
    act: "raise it",
  }),
  datum: () => ({ what: "datum not stated", act: "state it" }),
  "fall-direction": () => ({ what: "river fall without direction", act: "draw it" }),
  "heavy-bag": ({ filledMassKg }, u) => ({
    what: `bag of ${u.mass(filledMassKg)}`,
    act: "fill less",
  }),
  "bag-density": () => ({ what: "bag weight fits no sand", act: "weigh a bag" }),
  "narrow-base": ({ baseRatio }) => ({ what: `base ${baseRatio} × height`, act: "set 3" }),
  "incomplete-totals": ({ lengthNoDataM }, u) => ({
    what: `totals lack ${u.distance(lengthNoDataM)}`,
    act: "open data",
  }),
  carpentry: () => ({ what: "carpentry not in the hours", act: "plan a crew" }),
  "no-ground": ({ lengthM }, u) => ({
    what: `no elevation data, ${u.distance(lengthM)}`,
    act: "open data",
  }),
  "open-toe": () => ({ what: "ground too steep for the base", act: "move back" }),
  "cross-slope": ({ fallM }, u) => ({
    what: `cross slope ${u.length(fallM)}`,
    act: "flatter ground",
  }),
  "narrow-low": ({ widthM, depthM }, u) => ({
    what: `low place ${u.length(widthM)} wide, ${u.length(depthM)} deep`,
    act: "look there",
  }),
  "narrow-lows": ({ count }) => ({ what: `${count} more low places`, act: "look there" }),
  "ground-reading": ({ differenceM }, u) => ({
    what: `ground read ${u.length(Math.abs(differenceM))} ${differenceM > 0 ? "higher" : "lower"}`,
    act: "read again",
  }),
  "coarse-raster": ({ cellM }, u) => ({ what: `cells of ${u.length(cellM)}`, act: "survey" }),
  "close-bank": ({ aboveM }, u) => ({
    what: `ground only ${u.length(aboveM)} above top`,
    act: "survey",
  }),
  "close-end": ({ aboveM }, u) => ({
    what: `end only ${u.length(aboveM)} above top`,
    act: "survey",
  }),
  "tie-in": ({ endM, belowTopM }, u) => ({
    what: `end at ${u.station(endM)} ${u.length(belowTopM)} low`,
    act: "lead it on",
  }),
  "crosses-itself": ({ firstM, secondM }, u) => ({
    what: `meets itself, ${u.station(firstM)}, ${u.station(secondM)}`,
    act: "move corners",
  }),
  "overlaps-building": ({ building }) => ({ what: `base over "${building}"`, act: "move line" }),
  setback: ({ building, roomM }, u) => ({
    what: `${u.length(roomM)} to "${building}"`,
    act: "move outward",
  }),
  "kept-setback": ({ madeWithM }, u) => ({
    what: `made with setback ${u.length(madeWithM)}`,
    act: "see Line",
  }),
  "no-go": ({ area }) => ({ what: `enters "${area}"`, act: "lead around" }),
  "over-footprint": ({ building }) => ({ what: `over "${building}"`, act: "lead around" }),
  "no-building": () => ({ what: "no building drawn", act: "draw it" }),
  "ring-cuts": ({ building }) => ({ what: `cuts "${building}"`, act: "lead around" }),
  "left-outside": ({ building }) => ({ what: `"${building}" outside`, act: "clear it" }),
  outside: ({ building }) => ({ what: `"${building}" outside`, act: "enclose it" }),
  "inside-unprotected": ({ building }) => ({ what: `encloses "${building}"`, act: "leave out" }),
  "bases-overlap": ({ otherM, lengthM }, u) => ({
    what: `base over base near ${u.station(otherM)}, ${u.distance(lengthM)}`,
    act: "lead apart",
  }),
  "types-meet": () => ({ what: "two levee types meet", act: "lap them" }),
  "type-cautions": ({ typeId }) => ({ what: leveeTypeName(typeId), act: "read cautions" }),
  "bracing-not-calculated": ({ lengthM }, u) => ({
    what: `bracing, ${u.distance(lengthM)}, not calculated`,
    act: "ask engineer",
  }),
  sliding: ({ factor, required }) => ({
    what: `sliding ${factor.low.toFixed(1)} of ${required}`,
    act: "widen base",
  }),
  overturning: ({ factor, required }) => ({
    what: `overturning ${factor.toFixed(1)} of ${required}`,
    act: "widen base",
  }),
  "exit-gradient": ({ gradient }) => ({
    what: `exit gradient up to ${gradient.high.toFixed(1)}`,
    act: "watch for boils",
  }),
  creep: ({ lane, laneRequired }) => ({
    what:
      laneRequired === null
        ? "seepage path not judged"
        : `seepage path ${lane.toFixed(1)} of ${laneRequired}`,
    act: "lengthen it",
  }),
  pumps: ({ capacityM3PerS, working, spare }, u) => ({
    what: `pumps for ${u.flowUpTo(capacityM3PerS)}`,
    act: `bring ${working} + ${spare}`,
  }),
  "pump-failure": ({ excessM3PerS }, u) => ({
    what: `one pump fails: ${u.flowUpTo(excessM3PerS)} more`,
    act: "start spare",
  }),
  "inside-holes": () => ({ what: "gaps in data inside", act: "survey" }),
  "crew-not-entered": ({ missing }) => ({
    what: "time not known",
    act: `enter ${crewInputWords(missing)}`,
  }),
  "leave-not-set": () => ({ what: "leave stage not set", act: "set it now" }),
  "leave-above-sized": ({ aboveM }, u) => ({
    what: `leave stage ${u.length(aboveM)} over the water`,
    act: "set it lower",
  }),
  "no-forecast": () => ({ what: "no forecast over time", act: "enter it" }),
  "forecast-over": () => ({ what: "forecast is over", act: "enter a new one" }),
  "over-a-year": () => ({ what: "over a year of work", act: "more people" }),
  "ends-after-forecast": () => ({ what: "forecast ends before the work", act: "longer forecast" }),
  late: ({ by }) => ({ what: LATE[by], act: "more people" }),
  "forecast-crest": ({ riseM }, u) => ({
    what: `forecast crest ${u.length(riseM)} higher`,
    act: "size for it",
  }),
  "forecast-below-ground": ({ belowM }, u) => ({
    what: `forecast crest ${u.length(belowM)} lower`,
    act: "check gauge",
  }),
  "high-forecast": ({ overTopM }, u) => ({
    what: `high forecast ${u.length(overTopM)} over the top`,
    act: "decide",
  }),
  "forecast-zero": ({ gaugeZeroM }) =>
    gaugeZeroM === null
      ? { what: "forecast by stage, no gauge zero", act: "enter zero" }
      : { what: "forecast by stage, water by elevation", act: "check zero" },
  "water-gets-in": ({ place }, u) => ({
    what: `water gets in near ${u.station(place.chainageM)}`,
    act: "lead around",
  }),
  "hole-decides": () => ({ what: "gap in data decides", act: "survey" }),
  "hole-may-be-lower": () => ({ what: "gap in data may be low", act: "survey" }),
  overtops: ({ stageM, elevationM }, u) => ({
    what: `overtops above ${stageM === null ? u.elevation(elevationM) : `stage ${u.length(stageM)}`}`,
    act: "leave before",
  }),
  "building-wet": ({ building }) => ({ what: `"${building}" will flood`, act: "clear it" }),
  "if-it-fails": ({ building, depthM }, u) => ({
    what: `if it fails, ${u.length(depthM)} at "${building}"`,
    act: "leave in time",
  }),
  "culvert-open": ({ culvert }) => ({ what: `open culvert "${culvert}"`, act: "plug it" }),
  "culvert-plugged": ({ culvert }) => ({ what: `plug in "${culvert}"`, act: "watch it" }),
  "culvert-above": ({ culvert, aboveM }, u) => ({
    what: `culvert "${culvert}" ${u.length(aboveM)} over the top`,
    act: "plug it",
  }),
  "drain-open": ({ drain }) => ({ what: `open drain "${drain}"`, act: "plug it" }),
  "drain-not-known": ({ drain }) => ({ what: `where "${drain}" leads`, act: "find out" }),
  "drain-plugged": ({ drain }) => ({ what: `plug in "${drain}"`, act: "watch it" }),
  "let-in-by-pipe": ({ pipes }) => ({
    what: `water comes through "${pipes[0]?.name ?? ""}"`,
    act: "plug it",
  }),
  "reached-by-pipe": ({ reaches, pipes }) => ({
    what: `"${reaches[0] ?? ""}" wet only by "${pipes[0]?.name ?? ""}"`,
    act: "plug it",
  }),
  "culverts-possible": ({ count }) => ({
    what: count === 1 ? "1 possible culvert" : `${count} possible culverts`,
    act: "answer under Water",
  }),
  "culvert-to-look-for": ({ place }) => ({ what: `"${place}"`, act: "look in the field" }),
  "reached-if-culvert": ({ reaches }) => ({
    what: `"${reaches[0] ?? ""}" floods if there is a culvert`,
    act: "look there",
  }),
  "let-in-if-culvert": ({ isWet, elevationM, stageM }, u) => ({
    what: isWet
      ? "water gets in if there is a culvert"
      : `in above ${stageM === null ? u.elevation(elevationM) : `stage ${u.length(stageM)}`} if there is a culvert`,
    act: "look there",
  }),
  closure: ({ bags }) => ({ what: `left open, ${formatCount(bags)} bags`, act: "close in time" }),
  "closure-late": () => ({ what: "left open, closed too late", act: "close earlier" }),
  "closure-not-known": () => ({ what: "left open, not known", act: "enter it" }),
  "road-floods": ({ road, fromStart, leavesBefore }) =>
    fromStart
      ? { what: `road "${road}" under water at the forecast's start`, act: "find another way" }
      : {
          what: `road "${road}" floods${leavesBefore === false ? " before people leave" : ""}`,
          act: leavesBefore ? "leave before" : "leave earlier",
        },
  "road-not-known": ({ road }) => ({ what: `road "${road}" not known`, act: "find out" }),
  "source-inside": ({ source }) => ({ what: `source "${source}" inside`, act: "move mark" }),
  "crosses-water": ({ lengthM }, u) => ({
    what: `crosses water, ${u.distance(lengthM)}`,
    act: "lead around",
  }),
  "not-reached": ({ building, marginM }, u) => ({
    what: `"${building}" ${u.length(marginM)} above reach`,
    act: "check culverts",
  }),
  "building-off-data": ({ building }) => ({ what: `"${building}" off the data`, act: "open data" }),
  "source-above-water": ({ source }) => ({
    what: `source "${source}" above the water`,
    act: "move mark",
  }),
  "source-off-data": ({ source }) => ({
    what: `source "${source}" off the data`,
    act: "move mark",
  }),
  "no-water": () => ({ what: "no ground under water", act: "check stage" }),
  "low-unconnected": ({ areaM2 }, u) => ({
    what: `${u.area(areaM2)} low, not joined`,
    act: "close culverts",
  }),
  "hole-reached": () => ({ what: "water crosses gaps in data", act: "survey" }),
  "coarse-trace": ({ cellM }, u) => ({
    what: `water in cells of ${u.length(cellM)}`,
    act: "cut the data",
  }),
};

const LATE = {
  likely: "late",
  "slow-pace": "late at slow pace",
  "high-forecast": "late if the river runs high",
} as const;
