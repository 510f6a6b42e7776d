import { apartBy, gapTo } from "../shared/apart.ts";
import { crossSection } from "../shared/cross-section.ts";
import { refusal } from "../shared/failure.ts";
import type { GroundSampler } from "../shared/ground.ts";
import { loadPart } from "../shared/load-part.ts";
import type { Engine } from "../shared/messages.ts";
import type { Alignment, Plan } from "../shared/plan.ts";
import type { PlanPlane } from "../shared/plan-plane.ts";
import { planSite, type Site } from "../shared/site.ts";
import { sizeLine } from "../shared/size-line.ts";
import type { LineOnGround } from "../shared/walk-line.ts";
import type { OverviewShelf } from "./raster/built-overview.ts";
import { correctedTerrain } from "./raster/corrected.ts";
import { heightRange } from "./raster/height-range.ts";
import { statedReference } from "./raster/reference-beside.ts";
import { openTerrain, type Terrain } from "./raster/terrain.ts";
import { stopIfCancelled } from "./stop-if-cancelled.ts";
import { contours } from "./tiles/contours.ts";
import { heightTile } from "./tiles/height-tile.ts";
import { holeTile } from "./tiles/hole-tile.ts";
import { traceWater } from "./water/trace-water.ts";

const simulation = () =>
  loadPart(
    "the simulation of the ground",
    () => import("../shared/ground-uncertainty/simulate-ground.ts"),
  );
const search = () => loadPart("the search for a line", () => import("./lines/search.ts"));

const choice = () => loadPart("the choice of buildings", () => import("./choice/choice.ts"));

const sweep = () => loadPart("the check of many buildings", () => import("./sweep/sweep.ts"));

/** Ground read beyond the outermost corner, metres: bases, toes and the drawn cross-section. */
const GROUND_MARGIN_M = 80;

const NO_GROUND: GroundSampler = { heightAt: () => Number.NaN, cellM: 1 };

/**
 * The engine over the rooms of `workers/`: the same object serves the browser's worker, the terminal
 * program and the tests. It holds one opened terrain. Every user error is thrown as a `Refusal`.
 * @param shelf where overviews made of large rasters are kept between visits
 */
export function makeEngine(shelf: OverviewShelf | null = null): Engine {
  let terrain: Terrain | null = null;
  let opening = 0;
  let openedTurn = 0;

  const opened = (): Terrain => {
    if (terrain) return terrain;
    throw refusal("ground/none");
  };

  /** @throws Refusal `plan/elsewhere` when none of the plan lies on the terrain that is open */
  const refuseElsewhere = async (plan: Plan): Promise<void> => {
    const gap = terrain && gapTo(plan, terrain.summary.bounds);
    if (gap) throw refusal("plan/elsewhere", { apart: await apartBy(gap) });
  };

  /** @throws Refusal `ground/mark-unknown` while a value of the terrain may be missing data or ground */
  const refuseUnsettled = (): void => {
    const mark = terrain?.summary.marksAsked[0];
    if (mark) throw refusal("ground/mark-unknown", { mark });
  };

  const refuseUncountable = async (plan: Plan): Promise<void> => {
    await refuseElsewhere(plan);
    refuseUnsettled();
  };

  /** The terrain that is open, as the plan corrects it. */
  const correctedFor = (plan: Plan): Terrain => correctedTerrain(opened(), plan.ground.correctionM);

  /** The same, where it and the plan have a place in common. */
  const openedFor = async (plan: Plan): Promise<Terrain> => {
    await refuseUncountable(plan);
    return correctedFor(plan);
  };

  const sampler = async (plan: Plan, { plane, box }: Site): Promise<GroundSampler> =>
    terrain ? correctedFor(plan).samplerFor(plane, box) : NO_GROUND;

  const lineOnGround = async (plan: Plan, id: string): Promise<LineOnGround> => {
    const alignment = plan.alignments.find((each) => each.id === id);
    if (!alignment) {
      throw refusal("plan/no-such-line", { id });
    }
    await refuseUncountable(plan);
    const site = planSite(plan, GROUND_MARGIN_M);
    return { plan, alignment, plane: site.plane, ground: await sampler(plan, site) };
  };

  return {
    async openTerrain(request, options) {
      const turn = ++opening;
      const marks = { choices: request.marks ?? [], asked: request.marksAsked ?? [] };
      const { files, verticalUnit } = request;
      const next = await openTerrain(files, verticalUnit, options, shelf, marks);
      if (turn < openedTurn) throw refusal("cancelled", { overtaken: true });
      openedTurn = turn;
      terrain = next;
      return next.summary;
    },

    heightRange: async ({ files }) => heightRange(files),

    async size({ plan, ids, live }, options) {
      const wanted = plan.alignments.filter((each) => !ids || ids.includes(each.id));
      if (wanted.length === 0) return { lines: [] };
      await refuseUncountable(plan);
      const site = planSite(plan, GROUND_MARGIN_M);
      const ground = await sampler(plan, site);
      stopIfCancelled(options);
      const size = (alignment: Alignment) =>
        sizeOne(plan, alignment, site.plane, ground, live ?? false);
      return { lines: wanted.map(size) };
    },

    async crossSection({ plan, id, chainageM, marginM }) {
      return crossSection({ ...(await lineOnGround(plan, id)), chainageM, marginM });
    },

    async simulateGround({ plan, id }, options) {
      const on = await lineOnGround(plan, id);
      const { simulateGround } = await simulation();
      stopIfCancelled(options);
      return simulateGround(on);
    },

    heightTile: async (request, options) => heightTile(opened(), request, options),
    holeTile: async (request, options) => holeTile(opened(), request, options),
    contours: async (request, options) => contours(opened(), request, options),

    async probe({ at }) {
      const heightM = await opened().probe(at);
      return { groundM: Number.isNaN(heightM) ? null : heightM };
    },

    toGrid: async ({ places }) => opened().toGrid(places),

    async lonLatOf({ grid, reference }) {
      const lonLatAt = reference ? (await statedReference(reference)).toLonLat : opened().lonLatAt;
      const lonLat = new Float64Array(grid.length);
      for (let i = 0; i < grid.length; i += 2) lonLat.set(lonLatAt(grid[i]!, grid[i + 1]!), i);
      return { lonLat };
    },

    traceWater: async (request, options) =>
      traceWater(await openedFor(request.plan), request, options),
    async findRing(request, options) {
      const terrain = await openedFor(request.plan);
      return (await search()).findLines(terrain, request, options);
    },
    async improveLine(request, options) {
      const terrain = await openedFor(request.plan);
      return (await search()).improve(terrain, request, options);
    },
    async sidewaysCost(request, options) {
      const terrain = await openedFor(request.plan);
      return (await search()).sideways(terrain, request, options);
    },
    async chooseLines({ question, ...effort }, options) {
      return (await choice()).choose(question, effort, options);
    },
    async moreBuys({ question, more, ...effort }, options) {
      return (await choice()).moreBuys(question, more, effort, options);
    },
    async bagCurve({ question, bags, ...effort }, options) {
      return (await choice()).bagCurve(question, bags, effort, options);
    },
    async traceBuildings(request, options) {
      refuseUnsettled();
      return (await sweep()).traceBuildings(correctedFor(request.plan), request, options);
    },
    async checkBuilding(request, options) {
      refuseUnsettled();
      return (await sweep()).checkBuilding(correctedFor(request.plan), request, options);
    },
    async checkGroup(request, options) {
      refuseUnsettled();
      return (await sweep()).checkGroup(correctedFor(request.plan), request, options);
    },
  };
}

function sizeOne(
  plan: Plan,
  alignment: Alignment,
  plane: PlanPlane,
  ground: GroundSampler,
  live: boolean,
) {
  return sizeLine({ plan, alignment, plane, ground, live });
}
