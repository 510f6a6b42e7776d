import {
  Colors,
  DxfWriter,
  LWPolylineFlags,
  PolylineFlags,
  point2d,
  point3d,
  Units,
} from "@tarikjabiri/dxf";
import { drawingNotes } from "../words/drawing-notes.ts";
import { fileNotes } from "../words/file-notes.ts";
import { type DrawingGrid, type DrawingUnit, drawingGrid } from "./drawing-grid.ts";
import { type DrawnShape, drawnShapes, LAYERS } from "./dxf-shapes.ts";
import type { Exported } from "./exported.ts";
import type { ToGrid } from "./formats.ts";

const UNITS: Readonly<Record<DrawingUnit, Units>> = {
  m: Units.Meters,
  ft: Units.Feet,
  "us-ft": Units.USSurveyFeet,
};
const COLORS: Partial<Record<DrawnShape["layer"], Colors>> = {
  "TOP-OF-LEVEE": Colors.Blue,
  "STAKES-TOP-OF-LEVEE": Colors.Blue,
  "STAKES-GROUND": Colors.Green,
  "OVER-HEIGHT-LIMIT-2D": Colors.Red,
  "NO-ELEVATION-DATA-2D": Colors.Magenta,
  NOTES: Colors.Red,
};
const DIGITS = 3;
const TEXT_M = 0.4;
const NOTE_M = 0.8;
/** Notes are this far below the drawing, and this many characters wide. */
const BELOW_M = 10;
const NOTE_CHARACTERS = 110;
/** A point is drawn as a cross in a circle, so that one sees it. */
const POINT_LOOK = 34;

/**
 * A line as an ASCII DXF drawing on the grid of the elevation data, coordinates and elevations in its unit
 * (`$INSUNITS`). Source: Autodesk's DXF reference (release 2007, AC1021).
 */
export async function dxf(exported: Exported, toGrid: ToGrid): Promise<string> {
  const shapes = drawnShapes(exported);
  const places = shapes.flatMap((shape) => shape.places);
  return drawing(exported, shapes, drawingGrid(places, await toGrid(places)));
}

function drawing(exported: Exported, shapes: readonly DrawnShape[], grid: DrawingGrid): string {
  const writer = new DxfWriter();
  const unitOf = (m: number) => rounded(m / grid.unitM);
  writer.setUnits(UNITS[grid.unit]);
  writer.setVariable("$PDMODE", { 70: POINT_LOOK });
  writer.setVariable("$PDSIZE", { 40: unitOf(TEXT_M) });
  for (const layer of LAYERS) writer.addLayer(layer, COLORS[layer] ?? Colors.White, "Continuous");
  let next = 0;
  for (const shape of shapes) {
    const xy = grid.xy.slice(next, next + shape.places.length);
    next += shape.places.length;
    draw(writer, shape, xy, unitOf);
  }
  const left = least(grid.xy.map(([x]) => x));
  const bottom = least(grid.xy.map(([, y]) => y)) - unitOf(BELOW_M);
  notesOf(exported, grid).forEach((text, row) => {
    const at = point3d(rounded(left), rounded(bottom - row * 1.6 * unitOf(NOTE_M)), 0);
    writer.addMText(at, unitOf(NOTE_M), plain(text), { layerName: "NOTES" });
  });
  return `${writer.stringify()}\n`;
}

function draw(
  writer: DxfWriter,
  { layer: layerName, kind, elevationsM, text }: DrawnShape,
  xy: DrawingGrid["xy"],
  unitOf: (m: number) => number,
): void {
  const spots = xy.map(([x, y], i) =>
    point3d(rounded(x), rounded(y), elevationsM ? unitOf(elevationsM[i]!) : 0),
  );
  const [first] = spots;
  if (!first) return;
  if (kind === "point") writer.addPoint(first.x, first.y, first.z, { layerName });
  else if (kind === "text")
    writer.addMText(first, unitOf(TEXT_M), plain(text ?? ""), { layerName });
  else if (elevationsM) {
    const flags = PolylineFlags.Polyline3D;
    writer.addPolyline3D(
      spots.map((point) => ({ point })),
      { layerName, flags },
    );
  } else {
    const flags = kind === "outline" ? LWPolylineFlags.Closed : LWPolylineFlags.None;
    writer.addLWPolyline(
      spots.map(({ x, y }) => ({ point: point2d(x, y) })),
      { layerName, flags },
    );
  }
}

function notesOf(exported: Exported, grid: DrawingGrid): string[] {
  const { mustFix, about, cautions } = fileNotes(exported);
  const notes = [...mustFix, ...about, ...drawingNotes(exported, grid), ...cautions];
  return notes.flatMap((note) => wrapped(note));
}

/** Lines of a text of at most so many characters, broken between words. */
function wrapped(text: string): string[] {
  const lines: string[] = [];
  for (const word of text.split(/\s+/)) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= NOTE_CHARACTERS) {
      lines[lines.length - 1] = `${last} ${word}`;
    } else lines.push(word);
  }
  return lines;
}

/**
 * A text of MTEXT on one line, in ASCII: signs of its formatting are written so that they are read as signs, control
 * characters left out, all other letters as `\U+XXXX`, which readers take alike whatever the encoding.
 */
function plain(text: string): string {
  return text
    .replace(/\p{Cc}+/gu, " ")
    .replace(/[\\{}]/g, "\\$&")
    .replace(/\^/g, "^ ")
    .replace(/[^ -~]/g, (unit) => `\\U+${hexOf(unit)}`);
}

function hexOf(unit: string): string {
  return unit.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0");
}

function least(values: readonly number[]): number {
  return values.reduce((low, each) => Math.min(low, each), Number.POSITIVE_INFINITY);
}

function rounded(value: number): number {
  return Number(value.toFixed(DIGITS)) + 0;
}
