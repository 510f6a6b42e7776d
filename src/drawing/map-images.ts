import type { Map as MapLibreMap } from "maplibre-gl";

/** Drawn at twice the size they are shown at. */
const PIXEL_RATIO = 2;

export type Pen = CanvasRenderingContext2D;
/** Draws a square picture, its side in pixels. */
export type Draw = (pen: Pen, size: number) => void;

/** Puts a picture on a map by its name, in place of that of another theme. */
export function putImage(map: MapLibreMap, name: string, size: number, draw: Draw): void {
  const picture = drawn(size * PIXEL_RATIO, draw);
  if (map.hasImage(name)) map.updateImage(name, picture);
  else map.addImage(name, picture, { pixelRatio: PIXEL_RATIO });
}

function drawn(size: number, draw: Draw): ImageData {
  const canvas = document.createElement("canvas");
  canvas.width = size;
  canvas.height = size;
  const pen = canvas.getContext("2d", { willReadFrequently: true });
  if (!pen) throw new Error("No 2D canvas in this browser.");
  draw(pen, size);
  return pen.getImageData(0, 0, size, size);
}

/** Lines from lower left to upper right that meet across the edges of the tile. */
export function stripes(pen: Pen, size: number, ink: string, ground: string, share: number): void {
  pen.fillStyle = ground;
  pen.fillRect(0, 0, size, size);
  pen.strokeStyle = ink;
  pen.lineWidth = (size * share) / Math.SQRT2;
  for (const shift of [-size, 0, size]) {
    pen.beginPath();
    pen.moveTo(shift - size / 2, size * 1.5);
    pen.lineTo(shift + size * 1.5, -size / 2);
    pen.stroke();
  }
}
