import type { Map as MapLibreMap } from "maplibre-gl";
import type { LentColors } from "./lent-map.ts";

/** Drawn at twice the size they are shown at. */
const PIXEL_RATIO = 2;

type Pen = CanvasRenderingContext2D;

/** Puts the patterns and signs of this view on a map in the colors given, replacing those of another theme. */
export function installSigns(map: MapLibreMap, colors: LentColors): void {
  const put = (name: string, size: number, draw: (pen: Pen, size: number) => void) => {
    const canvas = document.createElement("canvas");
    canvas.width = size * PIXEL_RATIO;
    canvas.height = canvas.width;
    const pen = canvas.getContext("2d", { willReadFrequently: true })!;
    draw(pen, canvas.width);
    const picture = pen.getImageData(0, 0, canvas.width, canvas.width);
    if (map.hasImage(name)) map.updateImage(name, picture);
    else map.addImage(name, picture, { pixelRatio: PIXEL_RATIO });
  };
  put("county-over", 7, (pen, size) => hatch(pen, size, colors.over, colors.panel, 0.5));
  put("county-no-data", 7, (pen, size) => hatch(pen, size, colors.secondary, colors.panel, 0.2));
  put("county-clock", 18, (pen, size) => clock(pen, size, colors));
  put("county-question", 18, (pen, size) => question(pen, size, colors));
}

/** Stripes from lower left to upper right that meet across the edges of the tile. */
function hatch(pen: Pen, size: number, ink: string, ground: string, share: number): void {
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

function clock(pen: Pen, size: number, { ink, panel }: LentColors): void {
  const middle = size / 2;
  pen.fillStyle = panel;
  pen.strokeStyle = ink;
  pen.lineWidth = size * 0.08;
  pen.beginPath();
  pen.arc(middle, middle, size * 0.4, 0, 2 * Math.PI);
  pen.fill();
  pen.stroke();
  pen.beginPath();
  pen.moveTo(middle, size * 0.26);
  pen.lineTo(middle, middle);
  pen.lineTo(size * 0.68, size * 0.58);
  pen.stroke();
}

function question(pen: Pen, size: number, { ink, panel }: LentColors): void {
  pen.font = `700 ${size * 0.72}px "Public Sans Variable", sans-serif`;
  pen.textAlign = "center";
  pen.textBaseline = "middle";
  pen.lineWidth = size * 0.16;
  pen.strokeStyle = panel;
  pen.strokeText("?", size / 2, size * 0.54);
  pen.fillStyle = ink;
  pen.fillText("?", size / 2, size * 0.54);
}
