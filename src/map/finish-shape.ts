import type { Geometry } from "geojson";
import type { Failure, Outcome } from "../../shared/failure.ts";
import { letterOf } from "../../shared/line-letter.ts";
import { drawnCulvert, drawnDrain } from "../../shared/pipes/drawn-pipes.ts";
import type { Alignment, LonLat, Plan, WorkPlace } from "../../shared/plan.ts";
import { freeLetter, freeNumbered } from "../../shared/plan-names.ts";
import { placedWork } from "../../shared/work-places/placed-work.ts";
import type { Edit } from "../document/types.ts";
import type { Tool } from "../live/screen.ts";
import { distinct, rounded } from "./corner-step.ts";

/**
 * The edit that adds what was drawn with a tool to the plan; refused when it has too few corners.
 * A drawn ring or line becomes the chosen alternative and takes the next free letter.
 */
export function drawnEdit(tool: Tool, geometry: Geometry, plan: Plan): Outcome<Edit> {
  if (tool === "draw-ring" || tool === "draw-line") return alternative(tool, geometry, plan);
  if (tool === "draw-structure") return structure(geometry, plan);
  if (tool === "draw-no-go") return noGo(geometry, plan);
  if (tool === "draw-flow") return flow(geometry);
  if (tool === "place-gauge") return gauge(geometry, plan);
  if (tool === "place-source") return source(geometry, plan);
  if (tool === "draw-culvert") return culvert(geometry, plan);
  if (tool === "place-drain") return drain(geometry, plan);
  if (tool === "draw-road") return road(geometry, plan);
  if (tool === "place-pile") return workPlace("pile", geometry, plan);
  if (tool === "place-pumps") return workPlace("pumps", geometry, plan);
  if (tool === "draw-truck-way") return workPlace("truck-way", geometry, plan);
  return refused("Nothing was being drawn.");
}

function alternative(tool: Tool, geometry: Geometry, plan: Plan): Outcome<Edit> {
  const kind = tool === "draw-ring" ? "ring" : "line";
  const corners = cornersOf(geometry);
  const fewest = kind === "ring" ? 3 : 2;
  if (corners.length < fewest) return refused(`A ${kind} needs at least ${fewest} corners.`);
  const name = nextName(plan);
  const id = freeNumbered(new Set(plan.alignments.map((each) => each.id)), "line-");
  const drawn: Alignment = { id, name, kind, corners, reachBreaksM: [] };
  return accepted(`Draw ${kind} ${name}`, (now) => ({
    ...now,
    alignments: [...now.alignments, drawn],
    chosenId: id,
  }));
}

/** The letter an alternative at the end of the list goes by; another free one when it is taken as a name. */
function nextName(plan: Plan): string {
  const taken = new Set(plan.alignments.map((each) => each.name));
  const own = letterOf(plan.alignments.length);
  return taken.has(own) ? freeLetter(taken) : own;
}

function structure(geometry: Geometry, plan: Plan): Outcome<Edit> {
  const outline = cornersOf(geometry);
  if (outline.length < 3) return refused("A building needs at least 3 corners.");
  const name = freeNumbered(new Set(plan.structures.map((each) => each.name)), "Building ");
  const id = freeNumbered(new Set(plan.structures.map((each) => each.id)), "structure-");
  return accepted(`Draw ${name}`, (now) => ({
    ...now,
    structures: [...now.structures, { id, name, outline, floorM: null }],
  }));
}

function noGo(geometry: Geometry, plan: Plan): Outcome<Edit> {
  const outline = cornersOf(geometry);
  if (outline.length < 3) return refused("A no-go area needs at least 3 corners.");
  const name = freeNumbered(new Set(plan.noGo.map((each) => each.name)), "No-go ");
  const id = freeNumbered(new Set(plan.noGo.map((each) => each.id)), "no-go-");
  return accepted(`Draw ${name}`, (now) => ({
    ...now,
    noGo: [...now.noGo, { id, name, outline }],
  }));
}

function flow(geometry: Geometry): Outcome<Edit> {
  const [from, to] = cornersOf(geometry);
  if (!from || !to) return refused("The river's flow needs two places: upstream and downstream.");
  return accepted("Draw the river's flow", (now) => ({ ...now, flow: { from, to } }));
}

function gauge(geometry: Geometry, plan: Plan): Outcome<Edit> {
  const [at] = cornersOf(geometry);
  if (!at) return refused("The gauge needs a place.");
  const name = plan.gauge?.name ?? "Gauge";
  return accepted("Place the gauge", (now) => ({ ...now, gauge: { name, at } }));
}

function source(geometry: Geometry, plan: Plan): Outcome<Edit> {
  const [at] = cornersOf(geometry);
  if (!at) return refused("A source needs a place.");
  const sources = plan.sources ?? [];
  const name = freeNumbered(new Set(sources.map((each) => each.name)), "Source ");
  const id = freeNumbered(new Set(sources.map((each) => each.id)), "source-");
  return accepted(`Mark ${name}`, (now) => ({
    ...now,
    sources: [...(now.sources ?? []), { id, name, at }],
  }));
}

function culvert(geometry: Geometry, plan: Plan): Outcome<Edit> {
  const path = cornersOf(geometry);
  if (path.length < 2) return refused("A culvert needs two ends.");
  const drawn = drawnCulvert(path, plan.culverts ?? []);
  return accepted(`Draw ${drawn.name}`, (now) => ({
    ...now,
    culverts: [...(now.culverts ?? []), drawn],
  }));
}

function road(geometry: Geometry, plan: Plan): Outcome<Edit> {
  const path = cornersOf(geometry);
  if (path.length < 2) return refused("A road needs at least 2 corners.");
  const roads = plan.roads ?? [];
  const name = freeNumbered(new Set(roads.map((each) => each.name)), "Road ");
  const id = freeNumbered(new Set(roads.map((each) => each.id)), "road-");
  return accepted(`Draw ${name}`, (now) => ({
    ...now,
    roads: [...(now.roads ?? []), { id, name, path }],
  }));
}

function drain(geometry: Geometry, plan: Plan): Outcome<Edit> {
  const [at] = cornersOf(geometry);
  if (!at) return refused("A drain needs a place.");
  const drawn = drawnDrain(at, plan.drains ?? []);
  return accepted(`Mark ${drawn.name}`, (now) => ({
    ...now,
    drains: [...(now.drains ?? []), drawn],
  }));
}

function workPlace(kind: WorkPlace["kind"], geometry: Geometry, plan: Plan): Outcome<Edit> {
  const path = cornersOf(geometry);
  if (path.length === 0) return refused("A work place needs a place on the map.");
  if (kind === "truck-way" && path.length < 2) {
    return refused("The trucks' way in needs at least 2 corners.");
  }
  const drawn = placedWork(kind, path, plan.workPlaces ?? []);
  return accepted(`Place ${drawn.name}`, (now) => ({
    ...now,
    workPlaces: [...(now.workPlaces ?? []), drawn],
  }));
}

/** Corners of a drawn shape, rounded, without repeats; a polygon's closing corner is left out. */
export function cornersOf(geometry: Geometry): LonLat[] {
  if (geometry.type === "Point") return [rounded(geometry.coordinates)];
  if (geometry.type === "LineString") return distinct(geometry.coordinates.map(rounded), false);
  if (geometry.type === "Polygon")
    return distinct((geometry.coordinates[0] ?? []).map(rounded), true);
  return [];
}

function accepted(note: string, change: (plan: Plan) => Plan): Outcome<Edit> {
  return { ok: true, value: { note, change } };
}

function refused(message: string): Outcome<Edit> {
  const failure: Failure = {
    code: "draw/too-few",
    message,
    remedy: "Set its corners one after the other, then double-click or press Enter.",
  };
  return { ok: false, failure };
}
