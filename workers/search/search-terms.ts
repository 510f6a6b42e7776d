import { stepFor } from "../../shared/section.ts";
import type { PlaneBox } from "../../shared/site.ts";
import { boxAround } from "../../shared/site.ts";
import { type ClearanceField, clearanceField } from "./clearance-field.ts";
import { type PriceTable, priceTable } from "./price-table.ts";
import { preparedGround, type SearchGround } from "./search-ground.ts";
import { type Shape, shapeOf } from "./shape.ts";
import type { Outline, SearchRequest, SearchWindow } from "./types.ts";

/** Something the levee's base keeps clear of. */
export interface Obstacle {
  readonly shape: Shape;
  readonly role: "structure" | "noGo" | "water";
  /** Clear distance from it to the toe, metres, search margin included. */
  readonly clearM: number;
  /** Its clearance on a lattice; null where it is worked out exactly each time. */
  readonly field: ClearanceField | null;
}

/** The crest as a + b x + c y (metres), or as a function where it is no plane. */
interface Crest {
  readonly plane: readonly [number, number, number] | null;
  readonly at: (xM: number, yM: number) => number;
}

/** Everything a leg's price and the lattice need, worked out once for a request. */
export interface SearchTerms {
  readonly request: SearchRequest;
  readonly ground: SearchGround;
  readonly crest: Crest;
  readonly table: PriceTable;
  readonly obstacles: readonly Obstacle[];
  /** Points that a line may not be moved across: one inside each structure and each water. */
  readonly anchorXM: Float64Array;
  readonly anchorYM: Float64Array;
  /** A code for each anchor: those of several, taken together by exclusive-or, tell which ones they are. */
  readonly anchorCode: Int32Array;
  readonly window: SearchWindow;
  /** The drawn window; null where the window is a box. */
  readonly windowShape: Shape | null;
  readonly box: PlaneBox;
  /** Greatest spacing of samples along a leg, metres. */
  readonly sampleM: number;
  /** Ground that must have data beyond half the base, metres: a cut looks one step past the toe. */
  readonly holeMarginM: number;
}

/** Up to this many anchors each has a bit of its own; more have mixed ones (Zobrist 1970). */
const ANCHOR_BITS = 31;
/** Ground wanted beyond the window for bases and cuts, metres. */
const GROUND_MARGIN_M = 12;
const SAMPLE_M = 0.5;
const PLANE_WITHIN_M = 1e-6;

export function searchTerms(request: SearchRequest): SearchTerms {
  const box = windowBox(request.window, request.structures);
  const ground = preparedGround(request.ground, grown(box, GROUND_MARGIN_M));
  const { setbackM, marginM, limitM } = request.rule;
  const facing = (role: Obstacle["role"], clearM: number) => (outline: Outline) => {
    const shape = shapeOf(outline);
    return {
      shape,
      role,
      clearM: clearM + marginM,
      field: clearanceField(shape, clearM + marginM),
    };
  };
  const obstacles: Obstacle[] = [
    ...request.structures.map(facing("structure", setbackM)),
    ...request.water.map(facing("water", 0)),
    ...request.noGo.map(facing("noGo", 0)),
  ];
  const anchors = obstacles.filter((each) => each.role !== "noGo");
  return {
    request,
    ground,
    crest: crestOf(request.crestAt, box),
    table: priceTable(request.section, limitM),
    obstacles,
    anchorXM: Float64Array.from(anchors, (each) => each.shape.inside[0]),
    anchorYM: Float64Array.from(anchors, (each) => each.shape.inside[1]),
    anchorCode: Int32Array.from(anchors, (_, k) => anchorCode(k, anchors.length)),
    window: request.window,
    windowShape: "outline" in request.window ? shapeOf(request.window.outline) : null,
    box,
    sampleM: Math.min(SAMPLE_M, request.ground.cellM / 2),
    holeMarginM: marginM + stepFor(request.ground),
  };
}

function anchorCode(k: number, count: number): number {
  if (count <= ANCHOR_BITS) return 1 << k;
  let mixed = Math.imul(k + 1, 0x9e3779b1);
  mixed = Math.imul(mixed ^ (mixed >>> 15), 0x85ebca6b);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
  return mixed ^ (mixed >>> 16);
}

/** The box that holds a window, metres. */
export function windowBox(window: SearchWindow, structures: readonly Outline[]): PlaneBox {
  if ("outline" in window) return boxAround(window.outline);
  return grown(boxAround(structures.flat()), window.reachM);
}

export function grown(box: PlaneBox, byM: number): PlaneBox {
  return {
    minX: box.minX - byM,
    minY: box.minY - byM,
    maxX: box.maxX + byM,
    maxY: box.maxY + byM,
  };
}

function crestOf(at: (xM: number, yM: number) => number, box: PlaneBox): Crest {
  const { minX, minY, maxX, maxY } = box;
  const corner = at(minX, minY);
  const b = (at(maxX, minY) - corner) / (maxX - minX);
  const c = (at(minX, maxY) - corner) / (maxY - minY);
  const a = corner - b * minX - c * minY;
  const shares = [0.13, 0.37, 0.5, 0.71, 1];
  const flat = shares.every((s, i) => {
    const x = minX + s * (maxX - minX);
    const y = minY + shares[(i * 2 + 3) % 5]! * (maxY - minY);
    return Math.abs(at(x, y) - (a + b * x + c * y)) < PLANE_WITHIN_M;
  });
  return { plane: flat ? [a, b, c] : null, at };
}
