import type { Structure } from "../plan.ts";
import {
  distanceTo,
  isInside,
  type PlanePolygon,
  pieceTouches,
  planePolygon,
} from "../plane-polygon.ts";
import { isProtected } from "../protected.ts";
import type { Severity } from "../sizing-types.ts";
import { type FittingType, fittingAt, samplesIn } from "./room.ts";
import { type CheckContext, type Finding, ofStretch, ofWholePlan, type Rule } from "./rule.ts";
import { type Stretch, stretchesOf } from "./stretch.ts";
import { whereOf } from "./where.ts";

/** Names are as the person typed them; metres. */
export type PlaceFinding =
  | {
      readonly kind: "overlaps-building";
      readonly building: string;
      readonly setbackM: number;
      readonly fits: readonly FittingType[];
    }
  | {
      readonly kind: "setback";
      readonly building: string;
      readonly roomM: number;
      readonly setbackM: number;
      readonly fits: readonly FittingType[];
    }
  | { readonly kind: "no-go"; readonly area: string }
  | { readonly kind: "over-footprint"; readonly building: string }
  | { readonly kind: "no-building" }
  | {
      /** How a ring and a building lie: cut through; left out by choice; outside; inside though not to be protected. */
      readonly kind: "ring-cuts" | "left-outside" | "outside" | "inside-unprotected";
      readonly building: string;
    };

interface Toes {
  readonly leftX: number;
  readonly leftY: number;
  readonly rightX: number;
  readonly rightY: number;
}

/** The toes at a sample, or null where nothing is built or the ground is not known. */
function toesAt({ samples, cuts }: CheckContext, i: number): Toes | null {
  if (!(cuts.heightM[i]! > 0) || Number.isNaN(cuts.areaM2[i]!)) return null;
  const leftX = samples.leftNormal[2 * i]!;
  const leftY = samples.leftNormal[2 * i + 1]!;
  return {
    leftX: samples.xM[i]! + leftX * cuts.toeLeftM[i]!,
    leftY: samples.yM[i]! + leftY * cuts.toeLeftM[i]!,
    rightX: samples.xM[i]! - leftX * cuts.toeRightM[i]!,
    rightY: samples.yM[i]! - leftY * cuts.toeRightM[i]!,
  };
}

/** Whether a sample can be within `withinM` of an outline at all, by boxes. */
function nearBox(polygon: PlanePolygon, withinM: number): (toes: Toes) => boolean {
  const minX = Math.min(...polygon.xM) - withinM;
  const maxX = Math.max(...polygon.xM) + withinM;
  const minY = Math.min(...polygon.yM) - withinM;
  const maxY = Math.max(...polygon.yM) + withinM;
  return ({ leftX, leftY, rightX, rightY }) =>
    Math.max(leftX, rightX) >= minX &&
    Math.min(leftX, rightX) <= maxX &&
    Math.max(leftY, rightY) >= minY &&
    Math.min(leftY, rightY) <= maxY;
}

function touches(polygon: PlanePolygon, { leftX, leftY, rightX, rightY }: Toes): boolean {
  return pieceTouches(polygon, leftX, leftY, rightX, rightY);
}

/** Free room between the base and a structure at a sample, metres; 0 where they overlap. */
function roomAt(polygon: PlanePolygon, toes: Toes): number {
  if (touches(polygon, toes)) return 0;
  const left = distanceTo(polygon, toes.leftX, toes.leftY);
  return Math.min(left, distanceTo(polygon, toes.rightX, toes.rightY));
}

/** Room to work between levee and structure, and the base clear of it. */
export const setback: Rule = {
  id: "setback",
  find: (context) =>
    context.plan.structures.flatMap((structure) => roomFindings(context, structure)),
};

function roomFindings(context: CheckContext, structure: Structure): Finding[] {
  const { plan, line, samples, plane, setbackM } = context;
  const { stationIntervalM } = plan.practice;
  const polygon = planePolygon(structure.outline, plane);
  const near = nearBox(polygon, setbackM);
  const roomM = new Float64Array(samples.count).fill(Number.POSITIVE_INFINITY);
  for (let i = 0; i < samples.count; i++) {
    const toes = toesAt(context, i);
    if (toes && near(toes)) roomM[i] = roomAt(polygon, toes);
  }
  const closed = line.closed;
  const over = stretchesOf(samples, closed, stationIntervalM, (i) => (roomM[i] === 0 ? 1 : 0));
  const close = stretchesOf(samples, closed, stationIntervalM, (i) =>
    roomM[i]! > 0 ? setbackM - roomM[i]! - 1e-6 : 0,
  );
  const fits = (stretch: Stretch, is: (sample: number) => boolean) => {
    const those = samplesIn(samples, stretch, is);
    const room = (i: number) => roomBeside(context, polygon, i, setbackM);
    return fittingAt(context, those, room);
  };
  const { name: building } = structure;
  return [
    ...over.map((stretch) => {
      const found = fits(stretch, (i) => roomM[i] === 0);
      const figures = { building, setbackM, fits: found };
      const listed = { stretch, where: whereOf(stretch) };
      return ofStretch("stop", listed, { kind: "overlaps-building", ...figures });
    }),
    ...close.map((stretch) => {
      const found = fits(stretch, (i) => roomM[i]! < setbackM);
      const figures = { building, roomM: roomM[stretch.worst]!, setbackM, fits: found };
      const listed = { stretch, where: whereOf(stretch) };
      return ofStretch("caution", listed, { kind: "setback", ...figures });
    }),
  ];
}

/** Room on either side of the centre line that leaves a clear distance to a structure, metres. */
function roomBeside(context: CheckContext, polygon: PlanePolygon, i: number, setbackM: number) {
  const { samples } = context;
  const toes = toesAt(context, i)!;
  const centreM = distanceTo(polygon, samples.xM[i]!, samples.yM[i]!);
  const toward = (x: number, y: number) =>
    centreM === 0 || distanceTo(polygon, x, y) < centreM
      ? centreM - setbackM
      : Number.POSITIVE_INFINITY;
  return { left: toward(toes.leftX, toes.leftY), right: toward(toes.rightX, toes.rightY) };
}

/** Ground that must not be built on, and imported buildings that are not in the plan. */
export const noGo: Rule = {
  id: "no-go",
  find: (context) =>
    context.plan.noGo.flatMap((area) => {
      const polygon = planePolygon(area.outline, context.plane);
      const near = nearBox(polygon, 0);
      const severityAt = (i: number) => {
        const toes = toesAt(context, i);
        return toes && near(toes) && touches(polygon, toes) ? 1 : 0;
      };
      const gapM = context.plan.practice.stationIntervalM;
      const finding = area.isImported
        ? ({ kind: "over-footprint", building: area.name } as const)
        : ({ kind: "no-go", area: area.name } as const);
      const severity = area.isImported ? "caution" : "stop";
      return stretchesOf(context.samples, context.line.closed, gapM, severityAt).map((stretch) =>
        ofStretch(severity, { stretch, where: whereOf(stretch) }, finding),
      );
    }),
};

/** Structures inside the ring. */
export const enclosure: Rule = {
  id: "enclosure",
  find: (context) => {
    const { plan, line } = context;
    if (plan.structures.length === 0) {
      return ofWholePlan("note", { kind: "no-building" });
    }
    return line.closed ? enclosureFindings(context) : [];
  },
};

function enclosureFindings({ plan, line, plane }: CheckContext): Finding[] {
  const ring: PlanePolygon = {
    xM: Array.from(line.xM.subarray(0, line.legs)),
    yM: Array.from(line.yM.subarray(0, line.legs)),
  };
  const places = plan.structures.map((structure) => ({
    structure,
    place: placeIn(ring, planePolygon(structure.outline, plane)),
  }));
  const someInside = places.some(
    ({ structure, place }) => place === "inside" && isProtected(structure),
  );
  return places.flatMap(({ structure, place }): Finding[] => {
    const protect = isProtected(structure);
    if (place === "inside")
      return protect ? [] : [ofBuilding("note", structure, "inside-unprotected")];
    if (place === "cut") return [ofBuilding("stop", structure, "ring-cuts")];
    if (!protect) return [ofBuilding("note", structure, "left-outside")];
    const isNote = someInside && structure.protect !== true;
    return [ofBuilding(isNote ? "note" : "stop", structure, "outside")];
  });
}

function ofBuilding(
  severity: Severity,
  { name, outline }: Structure,
  kind: "ring-cuts" | "left-outside" | "outside" | "inside-unprotected",
): Finding {
  const [found] = ofWholePlan(severity, { kind, building: name });
  return { ...found!, at: outline[0]! };
}

function placeIn(ring: PlanePolygon, outline: PlanePolygon): "inside" | "outside" | "cut" {
  const { xM, yM } = ring;
  for (let i = 0, j = xM.length - 1; i < xM.length; j = i++) {
    if (pieceTouches(outline, xM[j]!, yM[j]!, xM[i]!, yM[i]!)) return "cut";
  }
  return isInside(ring, outline.xM[0]!, outline.yM[0]!) ? "inside" : "outside";
}
