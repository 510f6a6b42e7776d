import { BEHIND_LINE, LOW, type WetMask } from "../../shared/water-types.ts";
import { faded, type MapColours } from "./colours.ts";

/** How much of the water's tint is covered, on ground that it does not reach and on ground kept dry. */
const LOW_COVER = 0.66;
const KEPT_COVER = 1;
/** Side of the repeated pattern, CSS pixels. */
const DOTS_PX = 8;

/** Where the ground is below the surface and yet without water, as stencils of one pixel a cell. */
export interface Stencils {
  readonly low: HTMLCanvasElement | null;
  readonly kept: HTMLCanvasElement | null;
}

/** Null for what there is none of. */
export function stencilsOf(mask: WetMask): Stencils {
  return { low: stencil(mask, LOW), kept: stencil(mask, BEHIND_LINE) };
}

function stencil({ columns, rows, codes }: WetMask, wanted: number): HTMLCanvasElement | null {
  if (!codes.includes(wanted)) return null;
  const [canvas, pen] = sheet(columns, rows);
  const picture = pen.createImageData(columns, rows);
  const pixels = new Uint32Array(picture.data.buffer);
  for (let i = 0; i < codes.length; i++) if (codes[i] === wanted) pixels[i] = 0xffffffff;
  pen.putImageData(picture, 0, 0);
  return canvas;
}

/** Upper left, upper right and lower left corner of the mask on the picture, CSS pixels. */
export type MaskPlace = readonly [At, At, At];
interface At {
  readonly x: number;
  readonly y: number;
}

/**
 * Paints over the water's tint what is not under water: merely low ground lighter and dotted, ground kept dry as
 * plain ground. The pattern is of the screen's own scale.
 * @param picture as large as the view in CSS pixels times `ratio`; what was on it is wiped off
 */
export function paintPicture(
  picture: HTMLCanvasElement,
  ratio: number,
  placed: readonly { readonly of: Stencils; readonly at: MaskPlace }[],
  colours: MapColours,
): void {
  const pen = picture.getContext("2d")!;
  pen.clearRect(0, 0, picture.width, picture.height);
  const [low, kept] = [dots(ratio, colours), plain(ratio, colours)];
  for (const { of, at } of placed) {
    if (of.low) pen.drawImage(filled(picture, ratio, of.low, low, at), 0, 0);
    if (of.kept) pen.drawImage(filled(picture, ratio, of.kept, kept, at), 0, 0);
  }
}

/** A stencil in its place, filled with a pattern that stays with the ground when the view moves. */
function filled(
  { width, height }: HTMLCanvasElement,
  ratio: number,
  shape: HTMLCanvasElement,
  pattern: HTMLCanvasElement,
  [corner, right, down]: MaskPlace,
): HTMLCanvasElement {
  const [canvas, pen] = sheet(width, height);
  const across = [(right.x - corner.x) / shape.width, (right.y - corner.y) / shape.width] as const;
  const along = [(down.x - corner.x) / shape.height, (down.y - corner.y) / shape.height] as const;
  pen.setTransform(ratio, 0, 0, ratio, 0, 0);
  pen.transform(...across, ...along, corner.x, corner.y);
  pen.imageSmoothingQuality = "medium";
  pen.drawImage(shape, 0, 0);
  pen.globalCompositeOperation = "source-in";
  const side = pattern.width;
  const shift = (px: number) => ((((px * ratio) % side) + side) % side) - side;
  pen.setTransform(1, 0, 0, 1, shift(corner.x), shift(corner.y));
  pen.fillStyle = pen.createPattern(pattern, "repeat")!;
  pen.fillRect(0, 0, width + 2 * side, height + 2 * side);
  return canvas;
}

function dots(ratio: number, colours: MapColours): HTMLCanvasElement {
  const side = Math.round(DOTS_PX * ratio);
  const [canvas, pen] = sheet(side, side);
  pen.fillStyle = faded(colours.groundHigh, LOW_COVER);
  pen.fillRect(0, 0, side, side);
  pen.fillStyle = colours.waterText;
  for (const at of [0.25, 0.75]) {
    pen.beginPath();
    pen.arc(side * at, side * at, 0.9 * ratio, 0, 2 * Math.PI);
    pen.fill();
  }
  return canvas;
}

function plain(ratio: number, colours: MapColours): HTMLCanvasElement {
  const side = Math.round(DOTS_PX * ratio);
  const [canvas, pen] = sheet(side, side);
  pen.fillStyle = faded(colours.groundHigh, KEPT_COVER);
  pen.fillRect(0, 0, side, side);
  return canvas;
}

function sheet(width: number, height: number): [HTMLCanvasElement, CanvasRenderingContext2D] {
  const canvas = document.createElement("canvas");
  canvas.width = width;
  canvas.height = height;
  const pen = canvas.getContext("2d");
  if (!pen) throw new Error("No 2D canvas in this browser.");
  return [canvas, pen];
}
