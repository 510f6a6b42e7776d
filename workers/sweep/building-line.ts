import { bagOrder } from "../../shared/bag-order.ts";
import type { LineTask } from "../../shared/buildings/check-types.ts";
import { planOfLine } from "../../shared/buildings/line-plan.ts";
import type {
  AtStage,
  Building,
  CheckedLine,
  FoundShape,
  MustFix,
  RingFigures,
} from "../../shared/buildings/types.ts";
import { checkWalk } from "../../shared/check-walk.ts";
import { isComplete, listedOnce } from "../../shared/completeness.ts";
import { timeOf } from "../../shared/defaults.ts";
import { Refusal } from "../../shared/failure.ts";
import type { GroundSampler } from "../../shared/ground.ts";
import type { CallOptions } from "../../shared/messages.ts";
import type { Alignment, LonLat, Plan, Structure } from "../../shared/plan.ts";
import { planSite } from "../../shared/site.ts";
import type { Totals } from "../../shared/sizing-types.ts";
import { waterElevationAtGauge } from "../../shared/stage.ts";
import { firstAbove, hydrographOf } from "../../shared/time/hydrograph.ts";
import { walkLine } from "../../shared/walk-line.ts";
import { shapeOfFound } from "../lines/found-line.ts";
import { ringTogether } from "../lines/ring-together.ts";
import { searchSetup } from "../lines/search-setup.ts";
import type { Terrain } from "../raster/terrain.ts";
import { inTurns } from "../search/in-turns.ts";
import type { FoundRing, RingToBeat } from "../search/types.ts";
import { FAR_REACH_M, NEAR_REACH_M } from "./surroundings.ts";

/** What one line is to be looked for around. */
export interface LineAim {
  readonly members: readonly Building[];
  /** Outlines of the river as surveyed near it. */
  readonly river: readonly (readonly LonLat[])[];
  /** Water at the gauge that it is looked for at, meters. */
  readonly levelM: number;
  /** As in `CheckGroupRequest`. */
  readonly mostBags: number | null;
}

/** A found line, sized as it is sized in a plan of its own. */
export interface BuildingLine {
  readonly shape: FoundShape;
  /** The whole ring, where the line is the one part of it that must be built; else the line itself. */
  readonly ring: readonly LonLat[];
  readonly atM: number;
  readonly walked: WalkedShape;
  readonly found: FoundRing;
}

type WalkedShape = Awaited<ReturnType<typeof walkShape>>;

/** Ground read beyond the line, meters: as the ordinary sizing reads it. */
const GROUND_MARGIN_M = 80;
/** Of the line in a plan of its own. */
const LINE_ID = "found";
/** The search is given all the time it takes: what it finds must not depend on how fast the machine is. */
const NO_CLOCK = { timeCapMs: 1, now: () => 0 };
/** Room for lengths and roundings that a volume from bags leaves out. */
const MARGIN = 1.05;

/** Where a line is looked for. */
interface Within {
  readonly reachM: number;
  readonly beat?: RingToBeat | undefined;
}

const NEAR: Within = { reachM: NEAR_REACH_M };
/** What says that there is no room within reach, and that there may be farther off. */
const NOT_HERE = [
  ...["site/all-no-go", "site/water-in-the-way", "site/window-too-small", "site/no-ring"],
  ...["site/edge-of-data", "site/no-ground"],
];

/**
 * The best line round some outlines: near them, and farther off where there is none or none under the height limit.
 * @throws Refusal `site/...` where there is none
 */
export async function buildingLine(
  terrain: Terrain,
  task: LineTask,
  aim: LineAim,
  options?: CallOptions,
): Promise<BuildingLine> {
  const near = await lineWithin(terrain, task, aim, NEAR, options).catch(unlessNone);
  if (near && !isOver(near) && isComplete(near.walked.whole)) return near;
  try {
    const beat = near ? toBeat(near, aim) : undefined;
    const far = await lineWithin(terrain, task, aim, { reachM: FAR_REACH_M, beat }, options);
    return near && overM(near) <= overM(far) ? near : far;
  } catch (thrown) {
    if (near) return near;
    throw thrown;
  }
}

/** What a line farther off must beat: a line under the limit takes no less than its bags, by the near one's measure. */
function toBeat({ found, walked }: BuildingLine, { mostBags }: LineAim): RingToBeat | undefined {
  const { bags, volumeM3 } = walked.whole;
  if (mostBags === null || !isComplete(walked.whole)) return undefined;
  return { ring: found, mostM3: (MARGIN * mostBags * volumeM3) / bags };
}

function unlessNone(thrown: unknown): null {
  if (thrown instanceof Refusal && NOT_HERE.includes(thrown.code)) return null;
  throw thrown;
}

function overM({ walked }: BuildingLine): number {
  return walked.whole.lengthOverLimitM;
}

function isOver(line: BuildingLine): boolean {
  return overM(line) > 0;
}

async function lineWithin(
  terrain: Terrain,
  { plan, near }: LineTask,
  { members, river, levelM }: LineAim,
  { reachM, beat }: Within,
  options?: CallOptions,
): Promise<BuildingLine> {
  const outlines = members.flatMap(({ parts }) => parts);
  const aims = outlines.map((outline, k): Structure => ({ ...structure(outline), id: `aim-${k}` }));
  const others = near.map((outline, k): Structure => ({ ...structure(outline), id: `near-${k}` }));
  const structures = [...aims, ...others, ...plan.structures];
  const sized = planAt(plan, levelM);
  const setting = await searchSetup(
    { ...terrain, samplerFor: terrain.ownSampler },
    { ...sized, structures },
    { structureIds: aims.map(({ id }) => id), window: { reachM } },
    { river },
  );
  const clock = { ...NO_CLOCK, ...(beat && { beat }) };
  const { rings } = await inTurns(ringTogether(setting.request, clock), options);
  const found = rings[0]!;
  const { kind, corners, ring } = shapeOfFound(setting, found);
  const shape = { kind, coordinates: corners };
  const walked = await walkShape(terrain, planOfLine(sized, members, shape, LINE_ID));
  return { shape, ring, atM: levelM, walked, found };
}

function structure(outline: readonly LonLat[]): Omit<Structure, "id"> {
  return { name: "", outline, floorM: null };
}

/** A plan with other water at the gauge; the plan itself at its own. */
function planAt(plan: Plan, levelM: number): Plan {
  if (levelM === waterElevationAtGauge(plan.water)) return plan;
  return { ...plan, water: { ...plan.water, by: "elevation", elevationM: levelM } };
}

/** The line of a plan of its own walked, on ground read for it alone: as the ordinary sizing does it there. */
async function walkShape(terrain: Terrain, plan: Plan, known: GroundSampler | null = null) {
  const [alignment] = plan.alignments;
  const { plane, box } = planSite(plan, GROUND_MARGIN_M);
  const ground = known ?? (await terrain.ownSampler(plane, box));
  const on = { plan, alignment: alignment!, plane, ground };
  const walk = walkLine(on);
  const { whole, samples, cuts, surface } = walk;
  let wetM = Number.POSITIVE_INFINITY;
  for (let i = 0; i < samples.count; i++) {
    const riseM = cuts.lowestGroundM[i]! - samples.waterM[i]!;
    if (riseM < wetM) wetM = riseM;
  }
  const [first] = plan.structures[0]!.outline;
  return {
    ...{ on, walk, whole },
    /** Lowest ground under the base over the water at the gauge, meters. */
    lowestM: waterElevationAtGauge(plan.water) + wetM,
    waterM: surface(...plane.toPlane(first!)),
  };
}

/** A found line with its figures, and what its check finds that must be fixed; of time nothing without a forecast. */
export function checkedLine({ shape, walked }: BuildingLine): CheckedLine {
  const time = timeOf(walked.on.plan).forecast !== null;
  const { checks } = checkWalk(walked.on, walked.walk, { holding: true, time });
  const mustFix = listedOnce(checks)
    .filter(({ severity }) => severity === "stop")
    .map(({ id, fromM, toM, finding }): MustFix => ({ id, fromM, toM, finding }));
  return { ...shape, ...figuresOf(walked.whole), mustFix };
}

/** Whether a checked line is over the height limit of what it is built of. */
export function isOverLimit({ mustFix }: CheckedLine): boolean {
  return mustFix.some(({ finding: { kind } }) => kind === "over-limit" || kind === "type-limit");
}

/** What a line takes. */
function figuresOf(totals: Totals): RingFigures {
  const { sandM3, sheetM2, jobPersonHours, greatestHeightM, lengthM, lengthOverLimitM } = totals;
  return {
    bags: bagOrder(totals).total,
    leveeBags: totals.bags,
    ...{ sandM3, sheetM2, personHours: jobPersonHours },
    ...{ greatestHeightM, lengthM, lengthOverLimitM },
  };
}

/**
 * A found line at other levels, lowest first. A line that is tied in is a ring that runs on over high ground: above
 * the level it was found at it is counted as that whole ring, since its ends would be under water.
 */
export async function atStages(
  terrain: Terrain,
  { shape, ring, atM, walked }: BuildingLine,
  levelsM: readonly number[],
): Promise<AtStage[]> {
  const stages: AtStage[] = [];
  for (const levelM of levelsM) {
    const plan = planAt(walked.on.plan, levelM);
    const isHigher = shape.kind === "line" && levelM > atM;
    const { whole, waterM } =
      levelM === atM
        ? walked
        : await walkShape(
            terrain,
            isHigher ? asRing(plan, ring) : plan,
            isHigher ? null : walked.on.ground,
          );
    stages.push({ atGaugeM: levelM, waterM, ...figuresOf(whole) });
  }
  return stages;
}

function asRing(plan: Plan, corners: readonly LonLat[]): Plan {
  const alignments = plan.alignments.map((each): Alignment => ({ ...each, kind: "ring", corners }));
  return { ...plan, alignments };
}

/**
 * When a line must be closed, seconds since 1970 UTC: before the likely forecast comes within the plan's margin of its
 * lowest ground; water that does not come to the surroundings before `aroundM` does not come to the line either.
 * Null where the forecast does not say.
 */
export function closedBy(
  { plan }: LineTask,
  { walked }: BuildingLine,
  aroundM: number | null,
): number | null {
  const time = timeOf(plan);
  const hydrograph = time.forecast && hydrographOf(plan, time.forecast, "likely");
  const wetM = Math.max(walked.lowestM, aroundM ?? Number.NEGATIVE_INFINITY) - time.marginM;
  const atS = hydrograph && firstAbove(hydrograph, hydrograph.atS[0]!)(wetM);
  return atS === null ? null : Math.floor(atS);
}
