import type { Exported } from "../../shared/exports/exported.ts";
import { refusal } from "../../shared/failure.ts";
import { scaleLength } from "../../shared/scale-length.ts";
import { pictureWords } from "../../shared/words/plan-picture.ts";
import { printedWords } from "../../shared/words/sheet.ts";
import { tintWords } from "../../shared/words/water-marks.ts";
import { waterNow } from "../live/water-now.ts";
import type { MapForPages } from "./map-figure.tsx";

/** Widths and sizes, pixels. */
const LEAST_WIDTH = 1200;
const MARGIN = 24;
const FONT = '"Public Sans Variable", system-ui, sans-serif';
const TITLE = { px: 30, weight: 700 };
const BAND = { px: 22, weight: 700 };
const NOTE = { px: 18, weight: 400 };
/** The scale bar takes at most this share of the width. */
const SCALE_SHARE = 0.2;
const INK = "#1e2c33";
const OVER = "#b0123f";

interface Type {
  readonly px: number;
  readonly weight: number;
}

/** Lines of text one under the other. */
interface Block {
  readonly lines: readonly string[];
  readonly type: Type;
  readonly heightPx: number;
}

/**
 * The map as it stands, as a PNG picture with title, date, what must be fixed, north, scale, units and datum in it.
 * @throws Refusal `export/no-picture` where the map has lost its graphics, or is not drawn
 */
export async function planPicture(map: MapForPages, of: Exported): Promise<Blob> {
  if (map.isLost.peek()) throw refusal("export/no-picture");
  const image = new Image();
  image.src = await map.picture();
  await image.decode();
  const width = Math.max(LEAST_WIDTH, image.width);
  const mapHeight = Math.round((image.height * width) / image.width);
  const brush = document.createElement("canvas").getContext("2d")!;
  const block = (text: readonly string[], type: Type): Block => {
    brush.font = fontOf(type);
    const lines = text.flatMap((each) => wrapped(brush, each, width - 2 * MARGIN));
    return { lines, type, heightPx: lines.length * lineOf(type) + MARGIN };
  };
  const words = pictureWords(of, printedWords(new Date(), of.system), tintWords(waterNow.value));
  const title = block([words.title], TITLE);
  const band = words.band === null ? null : block([words.band], BAND);
  const notes = block(words.notes, NOTE);
  const mapTop = title.heightPx + (band?.heightPx ?? 0);
  brush.canvas.width = width;
  brush.canvas.height = mapTop + mapHeight + notes.heightPx;
  brush.fillStyle = "#fff";
  brush.fillRect(0, 0, width, brush.canvas.height);
  write(brush, title, 0, INK);
  if (band) {
    brush.fillStyle = OVER;
    brush.fillRect(0, title.heightPx, width, band.heightPx);
    write(brush, band, title.heightPx, "#fff");
  }
  brush.drawImage(image, 0, mapTop, width, mapHeight);
  const bottom = mapTop + mapHeight - MARGIN;
  const scale = scaleLength(SCALE_SHARE * map.widthM(), of.system);
  drawScale(brush, bottom, (scale.lengthM / map.widthM()) * width, scale.label);
  drawNorth(brush, width - 2 * MARGIN, mapTop + MARGIN);
  write(brush, notes, mapTop + mapHeight, INK);
  return new Promise((resolve, reject) => {
    brush.canvas.toBlob(
      (blob) => (blob ? resolve(blob) : reject(refusal("export/no-picture"))),
      "image/png",
    );
  });
}

function write(brush: CanvasRenderingContext2D, block: Block, top: number, color: string): void {
  const { lines, type } = block;
  brush.font = fontOf(type);
  brush.fillStyle = color;
  brush.textAlign = "left";
  brush.textBaseline = "top";
  for (const [i, line] of lines.entries()) {
    brush.fillText(line, MARGIN, top + MARGIN / 2 + i * lineOf(type));
  }
}

function wrapped(brush: CanvasRenderingContext2D, text: string, mostPx: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(/\s+/)) {
    const last = lines.at(-1);
    const longer = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && brush.measureText(longer).width <= mostPx) {
      lines[lines.length - 1] = longer;
    } else lines.push(word);
  }
  return lines;
}

/** A bar on white, so that it is seen on any ground. */
function drawScale(
  brush: CanvasRenderingContext2D,
  bottom: number,
  widthPx: number,
  label: string,
): void {
  brush.font = fontOf(NOTE);
  const labelPx = brush.measureText(label).width;
  brush.fillStyle = "#ffffffd9";
  brush.fillRect(MARGIN / 2, bottom - 34, widthPx + labelPx + 2 * MARGIN, 46);
  brush.fillStyle = INK;
  brush.fillRect(MARGIN, bottom, widthPx, 4);
  brush.fillRect(MARGIN, bottom - 10, 3, 14);
  brush.fillRect(MARGIN + widthPx - 3, bottom - 10, 3, 14);
  brush.textAlign = "left";
  brush.textBaseline = "alphabetic";
  brush.fillText("0", MARGIN, bottom - 14);
  brush.fillText(label, MARGIN + widthPx + 8, bottom + 4);
}

function drawNorth(brush: CanvasRenderingContext2D, x: number, top: number): void {
  brush.fillStyle = "#ffffffd9";
  brush.fillRect(x - 22, top - 8, 44, 78);
  brush.fillStyle = INK;
  brush.beginPath();
  brush.moveTo(x, top);
  brush.lineTo(x + 13, top + 36);
  brush.lineTo(x, top + 28);
  brush.lineTo(x - 13, top + 36);
  brush.fill();
  brush.font = fontOf(BAND);
  brush.textAlign = "center";
  brush.textBaseline = "top";
  brush.fillText("N", x, top + 42);
}

const fontOf = ({ px, weight }: Type) => `${weight} ${px}px ${FONT}`;
const lineOf = ({ px }: Type) => Math.round(px * 1.35);
