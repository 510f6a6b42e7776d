import type { Geometry } from "geojson";
import { failureOf, type Given, type Outcome } from "../../shared/failure.ts";
import { letterOf } from "../../shared/line-letter.ts";
import { drawnCulvert, drawnDrain } from "../../shared/pipes/drawn-pipes.ts";
import type { Alignment, LonLat, Plan, WorkPlace } from "../../shared/plan.ts";
import { freeLetter, freeNames, freeNumbered } from "../../shared/plan-names.ts";
import { placedWork } from "../../shared/work-places/placed-work.ts";
import { type Listed, type ListName, withAdded } from "../document/edits/listed.ts";
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
  return refused("nothing");
}

function alternative(tool: Tool, geometry: Geometry, plan: Plan): Outcome<Edit> {
  const kind = tool === "draw-ring" ? "ring" : "line";
  const corners = cornersOf(geometry);
  const fewest = kind === "ring" ? 3 : 2;
  if (corners.length < fewest) return refused(kind);
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

function structure(geometry: Geometry, { structures }: Plan): Outcome<Edit> {
  const outline = cornersOf(geometry);
  if (outline.length < 3) return refused("building");
  const names = freeNames("Building ", "structure-", structures);
  return added("Draw", "structures", { ...names, outline, floorM: null });
}

function noGo(geometry: Geometry, { noGo }: Plan): Outcome<Edit> {
  const outline = cornersOf(geometry);
  if (outline.length < 3) return refused("no-go");
  return added("Draw", "noGo", { ...freeNames("No-go ", "no-go-", noGo), outline });
}

function flow(geometry: Geometry): Outcome<Edit> {
  const [from, to] = cornersOf(geometry);
  if (!from || !to) return refused("flow");
  return accepted("Draw the river's flow", (now) => ({ ...now, flow: { from, to } }));
}

function gauge(geometry: Geometry, plan: Plan): Outcome<Edit> {
  const [at] = cornersOf(geometry);
  if (!at) return refused("gauge");
  const name = plan.gauge?.name ?? "Gauge";
  return accepted("Place the gauge", (now) => ({ ...now, gauge: { name, at } }));
}

function source(geometry: Geometry, { sources = [] }: Plan): Outcome<Edit> {
  const [at] = cornersOf(geometry);
  if (!at) return refused("source");
  return added("Mark", "sources", { ...freeNames("Source ", "source-", sources), at });
}

function culvert(geometry: Geometry, { culverts = [] }: Plan): Outcome<Edit> {
  const path = cornersOf(geometry);
  if (path.length < 2) return refused("culvert");
  return added("Draw", "culverts", drawnCulvert(path, culverts));
}

function road(geometry: Geometry, { roads = [] }: Plan): Outcome<Edit> {
  const path = cornersOf(geometry);
  if (path.length < 2) return refused("road");
  return added("Draw", "roads", { ...freeNames("Road ", "road-", roads), path });
}

function drain(geometry: Geometry, { drains = [] }: Plan): Outcome<Edit> {
  const [at] = cornersOf(geometry);
  if (!at) return refused("drain");
  return added("Mark", "drains", drawnDrain(at, drains));
}

function workPlace(kind: WorkPlace["kind"], geometry: Geometry, plan: Plan): Outcome<Edit> {
  const path = cornersOf(geometry);
  if (path.length === 0) return refused("work-place");
  if (kind === "truck-way" && path.length < 2) {
    return refused("truck-way");
  }
  return added("Place", "workPlaces", placedWork(kind, path, plan.workPlaces ?? []));
}

/** Corners of a drawn shape, rounded, without repeats; a polygon's closing corner is left out. */
export function cornersOf(geometry: Geometry): LonLat[] {
  if (geometry.type === "Point") return [rounded(geometry.coordinates)];
  if (geometry.type === "LineString") return distinct(geometry.coordinates.map(rounded), false);
  if (geometry.type === "Polygon")
    return distinct((geometry.coordinates[0] ?? []).map(rounded), true);
  return [];
}

function added<K extends ListName>(verb: string, list: K, drawn: Listed<K>): Outcome<Edit> {
  return accepted(`${verb} ${drawn.name}`, (now) => withAdded(now, list, drawn));
}

function accepted(note: string, change: (plan: Plan) => Plan): Outcome<Edit> {
  return { ok: true, value: { note, change } };
}

function refused(shape: Given<"draw/too-few">["shape"]): Outcome<Edit> {
  return { ok: false, failure: failureOf("draw/too-few", { shape }) };
}
