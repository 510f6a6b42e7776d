import type { Map as MapLibreMap } from "maplibre-gl";
import { type Draw, putImage, stripes } from "../drawing/map-images.ts";
import { faded, type MapColours } from "./colours.ts";

/** Puts the map's patterns and symbols in place in the colours given, replacing those of another theme. */
export function installImages(map: MapLibreMap, colours: MapColours): void {
  const put = (name: string, size: number, draw: Draw) => putImage(map, name, size, draw);
  put("over-hatch", 8, (pen, size) => stripes(pen, size, colours.over, colours.panel, 0.5));
  put("no-go-hatch", 10, (pen, size) =>
    stripes(pen, size, faded(colours.ink, 0.45), faded(colours.paper, 0.25), 0.14),
  );
  put("tick", 22, (pen, size) => {
    pen.fillStyle = colours.ink;
    pen.fillRect(size / 2 - 1.5, size * 0.04, 3, size * 0.3);
  });
  put("flow-head", 22, (pen, size) => arrowHead(pen, size, colours.waterText));
  put("gauge", 26, (pen, size) => staff(pen, size, colours));
  put("source", 20, (pen, size) => spring(pen, size, colours));
  for (const plugged of [false, true]) {
    const state = plugged ? "plugged" : "open";
    put(`pipe-${state}`, 16, (pen, size) => opening(pen, size, colours, "round", plugged));
    put(`drain-${state}`, 18, (pen, size) => opening(pen, size, colours, "grate", plugged));
  }
  put("pile", 24, (pen, size) => pile(pen, size, colours));
  put("pumps", 22, (pen, size) => pumps(pen, size, colours));
  put("truck-head", 26, (pen, size) => wedge(pen, size, colours.ink, colours.panel));
  put("way-head", 26, (pen, size) => wedge(pen, size, colours.waterText, colours.panel));
}

function arrowHead(pen: CanvasRenderingContext2D, size: number, ink: string): void {
  pen.strokeStyle = ink;
  pen.lineWidth = 4;
  pen.lineCap = "round";
  pen.lineJoin = "round";
  pen.beginPath();
  pen.moveTo(size * 0.28, size * 0.76);
  pen.lineTo(size * 0.5, size * 0.5);
  pen.lineTo(size * 0.72, size * 0.76);
  pen.stroke();
}

/** A place where water comes from: a filled point in a ring. */
function spring(pen: CanvasRenderingContext2D, size: number, colours: MapColours): void {
  const disc = (radius: number, colour: string) => {
    pen.fillStyle = colour;
    pen.beginPath();
    pen.arc(size / 2, size / 2, radius, 0, 2 * Math.PI);
    pen.fill();
  };
  disc(size * 0.45, colours.waterText);
  disc(size * 0.36, colours.panel);
  disc(size * 0.2, colours.waterText);
}

/** The opening of a pipe, or the grate of a drain; crossed out where it is plugged. */
function opening(
  pen: CanvasRenderingContext2D,
  size: number,
  colours: MapColours,
  shape: "round" | "grate",
  plugged: boolean,
): void {
  const [low, high, middle] = [size * 0.16, size * 0.84, size / 2];
  pen.beginPath();
  if (shape === "round") pen.arc(middle, middle, size * 0.36, 0, 2 * Math.PI);
  else pen.rect(low, low, high - low, high - low);
  pen.fillStyle = colours.panel;
  pen.fill();
  pen.strokeStyle = colours.ink;
  pen.lineWidth = 4;
  pen.stroke();
  pen.beginPath();
  if (plugged) {
    pen.moveTo(low, low);
    pen.lineTo(high, high);
    pen.moveTo(low, high);
    pen.lineTo(high, low);
  } else if (shape === "grate") {
    for (const x of [size * 0.38, size * 0.62]) {
      pen.moveTo(x, low);
      pen.lineTo(x, high);
    }
  }
  pen.stroke();
}

/** A filled arrow head that points up, its tip in the middle. */
function wedge(pen: CanvasRenderingContext2D, size: number, fill: string, edge: string): void {
  pen.beginPath();
  pen.moveTo(size * 0.5, size * 0.42);
  pen.lineTo(size * 0.86, size * 0.94);
  pen.lineTo(size * 0.5, size * 0.8);
  pen.lineTo(size * 0.14, size * 0.94);
  pen.closePath();
  pen.lineJoin = "round";
  pen.strokeStyle = edge;
  pen.lineWidth = 6;
  pen.stroke();
  pen.fillStyle = fill;
  pen.fill();
}

/** A heap of sand. */
function pile(pen: CanvasRenderingContext2D, size: number, colours: MapColours): void {
  pen.beginPath();
  pen.moveTo(size * 0.1, size * 0.8);
  pen.quadraticCurveTo(size * 0.3, size * 0.2, size * 0.5, size * 0.2);
  pen.quadraticCurveTo(size * 0.7, size * 0.2, size * 0.9, size * 0.8);
  pen.closePath();
  inked(pen, colours);
  pen.fillStyle = colours.ink;
  for (const [x, y] of [
    [0.38, 0.62],
    [0.52, 0.44],
    [0.64, 0.64],
  ] as const) {
    pen.fillRect(size * x, size * y, size * 0.08, size * 0.08);
  }
}

/** Pumps: a box with the throw of one. */
function pumps(pen: CanvasRenderingContext2D, size: number, colours: MapColours): void {
  pen.beginPath();
  pen.rect(size * 0.14, size * 0.14, size * 0.72, size * 0.72);
  inked(pen, colours);
  pen.beginPath();
  pen.arc(size * 0.5, size * 0.54, size * 0.17, 0, 2 * Math.PI);
  pen.moveTo(size * 0.5, size * 0.37);
  pen.lineTo(size * 0.8, size * 0.37);
  pen.stroke();
}

/** Fills the path in the panel's color with an outline of ink. */
function inked(pen: CanvasRenderingContext2D, colours: MapColours): void {
  pen.fillStyle = colours.panel;
  pen.fill();
  pen.strokeStyle = colours.ink;
  pen.lineWidth = 4;
  pen.lineJoin = "round";
  pen.stroke();
}

/** A staff gauge: a post with divisions. */
function staff(pen: CanvasRenderingContext2D, size: number, colours: MapColours): void {
  const [left, width] = [size * 0.38, size * 0.24];
  pen.fillStyle = colours.panel;
  pen.strokeStyle = colours.waterText;
  pen.lineWidth = 3;
  pen.fillRect(left, size * 0.1, width, size * 0.8);
  pen.strokeRect(left, size * 0.1, width, size * 0.8);
  pen.fillStyle = colours.waterText;
  for (let mark = 0; mark < 4; mark++) {
    pen.fillRect(left, size * (0.2 + mark * 0.18), width * (mark % 2 ? 0.5 : 0.8), 4);
  }
}
