import { refusal } from "../../shared/failure.ts";
import type { GroundSampler } from "../../shared/ground.ts";
import type { Alignment, LonLat, Plan, Structure } from "../../shared/plan.ts";
import type { PlanPlane } from "../../shared/plan-plane.ts";
import { isProtected } from "../../shared/protected.ts";
import {
  DEFAULT_KEY_IN_M,
  DEFAULT_MAX_CORNERS,
  type FindWindow,
  type RingOptions,
} from "../../shared/search-types.ts";
import { boxAround, holdsBox, type PlaneBox, planSite } from "../../shared/site.ts";
import { waterSurface } from "../../shared/stage.ts";
import type { Terrain } from "../raster/terrain.ts";
import { type SearchGround, searchGround } from "../search/search-ground.ts";
import { grown, windowBox } from "../search/search-terms.ts";
import { sectionModel } from "../search/section-model.ts";
import type { Outline, Point, SearchRequest, SearchWindow } from "../search/types.ts";
import { waterOutlines } from "./water-outlines.ts";

/** A plan as the search needs it, on its plan plane. */
export interface SearchSetup {
  readonly plan: Plan;
  readonly plane: PlanPlane;
  /** The ground itself, for the ordinary sizing. */
  readonly sampler: GroundSampler;
  readonly structures: readonly Structure[];
  readonly request: SearchRequest;
}

/** Ground read beyond the search window, metres: bases, toes and key-in lengths. */
const GROUND_MARGIN_M = 60;
/** Kept beyond every clearance while searching, metres. */
const SEARCH_MARGIN_M = 0.025;

/** What is known before a search, or wanted for later ones. */
interface Around {
  /**
   * Ground is read at least this far round the structures, metres: what a later search in a wider window needs is
   * then there.
   */
  readonly widestM?: number;
  /** Outlines of the river as surveyed; left out = traced from the plan's sources. */
  readonly river?: readonly (readonly LonLat[])[];
}

/**
 * For a search round the structures that are asked for; the plan's others are no-go areas.
 * @throws Refusal `site/no-structure`, `plan/...`, `ground/...`
 */
export async function searchSetup(
  terrain: Terrain,
  plan: Plan,
  options: RingOptions,
  { widestM = 0, river }: Around = {},
): Promise<SearchSetup> {
  const structures = chosenStructures(plan, options.structureIds);
  const { plane } = planSite(plan, 0);
  const outlines = structures.map(({ outline }) => onPlane(plane, outline));
  const window = windowOnPlane(options.window, plane);
  const near = windowBox(window, outlines);
  const box = widestM > 0 ? union(near, windowBox({ reachM: widestM }, outlines)) : near;
  return settingOf(terrain, plan, structures, { window, box, options, river });
}

/** For moving a line that is there: about its corners, all of the plan's structures kept clear of by its setback. */
export async function lineSetting(
  terrain: Terrain,
  plan: Plan,
  { corners, setbackM = plan.practice.setbackM }: Alignment,
  maxCorners?: number,
): Promise<SearchSetup> {
  const { plane } = planSite(plan, 0);
  const window = { outline: onPlane(plane, corners) };
  const options = { window: { outline: corners }, maxCorners };
  const judgedBy = { ...plan, practice: { ...plan.practice, setbackM } };
  const place = { window, box: boxAround(window.outline), options };
  return settingOf(terrain, judgedBy, plan.structures, place);
}

interface Place {
  readonly window: SearchWindow;
  readonly box: PlaneBox;
  readonly options: RingOptions;
  readonly river?: Around["river"];
}

async function settingOf(
  terrain: Terrain,
  plan: Plan,
  structures: readonly Structure[],
  { window, box, options, river }: Place,
): Promise<SearchSetup> {
  const { plane } = planSite(plan, 0);
  const outlines = structures.map(({ outline }) => onPlane(plane, outline));
  const read = grown(box, GROUND_MARGIN_M);
  const sampler = await terrain.samplerFor(plane, read);
  const surface = waterSurface(plan.water, plan.flow, plan.gauge, plane);
  const { setbackM, limitM } = plan.practice;
  const others = plan.structures.filter((each) => !structures.includes(each));
  const request: SearchRequest = {
    ground: heldGround(sampler, read),
    crestAt: (xM, yM) => surface(xM, yM) + plan.water.freeboardM,
    section: sectionModel(plan.section, sampler),
    structures: outlines,
    noGo: [...plan.noGo, ...others]
      .map(({ outline }) => onPlane(plane, outline))
      .filter(meets(read)),
    water: river
      ? river.map((outline) => onPlane(plane, outline))
      : await waterOutlines(terrain, plan, plane, read, outlines),
    rule: {
      setbackM,
      limitM,
      keyInM: options.keyInM ?? DEFAULT_KEY_IN_M,
      marginM: SEARCH_MARGIN_M,
      maxCorners: options.maxCorners ?? DEFAULT_MAX_CORNERS,
    },
    window,
  };
  return { plan, plane, sampler, structures, request };
}

function chosenStructures(plan: Plan, ids: readonly string[] | undefined): readonly Structure[] {
  const chosen = plan.structures.filter((each) =>
    ids ? ids.includes(each.id) : isProtected(each),
  );
  if (chosen.length > 0) return chosen;
  throw refusal("site/no-structure", { ofPlan: true });
}

/** Corners on the plan plane, metres. */
export function onPlane(plane: PlanPlane, corners: readonly LonLat[]): Point[] {
  return corners.map((at) => plane.toPlane(at));
}

function windowOnPlane(window: FindWindow, plane: PlanPlane): SearchWindow {
  return "outline" in window ? { outline: onPlane(plane, window.outline) } : window;
}

const held = new WeakMap<GroundSampler, SearchGround>();

/** The search's own ground over a sampler: what one search has read the next one need not. */
function heldGround(sampler: GroundSampler, box: PlaneBox): SearchGround {
  const known = held.get(sampler);
  if (known && holdsBox(known.box, box)) return known;
  const fresh = searchGround(sampler, known ? union(known.box, box) : box);
  held.set(sampler, fresh);
  return fresh;
}

function union(a: PlaneBox, b: PlaneBox): PlaneBox {
  return {
    minX: Math.min(a.minX, b.minX),
    minY: Math.min(a.minY, b.minY),
    maxX: Math.max(a.maxX, b.maxX),
    maxY: Math.max(a.maxY, b.maxY),
  };
}

function meets(box: PlaneBox): (outline: Outline) => boolean {
  return (outline) => {
    const xs = outline.map(([x]) => x);
    const ys = outline.map(([, y]) => y);
    const apart =
      Math.min(...xs) > box.maxX ||
      Math.max(...xs) < box.minX ||
      Math.min(...ys) > box.maxY ||
      Math.max(...ys) < box.minY;
    return !apart;
  };
}
