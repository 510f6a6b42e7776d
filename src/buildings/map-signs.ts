import type { Map as MapLibreMap } from "maplibre-gl";
import { type Draw, type Pen, putImage, stripes } from "../drawing/map-images.ts";
import type { LentColors } from "./lent-map.ts";

/** Puts the patterns and signs of this view on a map in the colors given, replacing those of another theme. */
export function installSigns(map: MapLibreMap, colors: LentColors): void {
  const put = (name: string, size: number, draw: Draw) => putImage(map, name, size, draw);
  put("county-over", 7, (pen, size) => stripes(pen, size, colors.over, colors.panel, 0.5));
  put("county-no-data", 7, (pen, size) => stripes(pen, size, colors.secondary, colors.panel, 0.2));
  put("county-clock", 18, (pen, size) => clock(pen, size, colors));
  put("county-question", 18, (pen, size) => question(pen, size, colors));
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
