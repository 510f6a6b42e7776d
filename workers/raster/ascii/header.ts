import { type Given, type Refusal, refusal } from "../../../shared/failure.ts";
import { type Affine, isUsableAffine } from "../affine.ts";
import { HEADER_KEYS } from "./ascii-grid.ts";

/** What the head of an Esri ASCII grid says. Source: Esri, ASCII raster format (from memory). */
export interface AsciiHeader {
  readonly columns: number;
  readonly rows: number;
  readonly affine: Affine;
  /** Null when the file names none. */
  readonly noData: number | null;
  /** Where the cells begin, bytes. */
  readonly dataAt: number;
}

type Key = (typeof HEADER_KEYS)[number];

const MOST_SIDE = 4_000_000;

/**
 * @param text the first bytes of the file, one character a byte
 * @throws Refusal `raster/grid-header` or `raster/comma-decimals`
 */
export function readHeader(name: string, text: string): AsciiHeader {
  const { values, dataAt } = readPairs(name, text);
  const need = (key: Key): number => {
    const value = values.get(key);
    if (value === undefined) throw badHeader(name, "missing", key);
    return value;
  };
  const columns = need("ncols");
  const rows = need("nrows");
  for (const side of [columns, rows]) {
    if (!(Number.isInteger(side) && side >= 1 && side <= MOST_SIDE)) {
      throw badHeader(name, "size", columns, rows);
    }
  }
  const dx = values.get("dx") ?? need("cellsize");
  const dy = values.get("dy") ?? need("cellsize");
  if (!(dx > 0 && dy > 0)) throw badHeader(name, "cells", dx, dy);
  const left = values.get("xllcorner") ?? need("xllcenter") - dx / 2;
  const bottom = values.get("yllcorner") ?? need("yllcenter") - dy / 2;
  const affine: Affine = {
    x0: left,
    y0: bottom + rows * dy,
    xPerColumn: dx,
    xPerRow: 0,
    yPerColumn: 0,
    yPerRow: -dy,
  };
  if (!isUsableAffine(affine)) throw badHeader(name, "place");
  return { columns, rows, affine, noData: values.get("nodata_value") ?? null, dataAt };
}

function readPairs(name: string, text: string): { values: Map<Key, number>; dataAt: number } {
  const values = new Map<Key, number>();
  const pair = /\s*([A-Za-z_]+)[ \t]+(\S+)/y;
  let dataAt = 0;
  for (let match = pair.exec(text); match; match = pair.exec(text)) {
    const word = match[1]!.toLowerCase();
    const key = HEADER_KEYS.find((each) => each === word);
    if (!key) {
      if (/^(nan|inf)/.test(word)) break;
      throw badHeader(name, "keyword", match[1]!.slice(0, 30));
    }
    values.set(key, numberOf(name, key, match[2]!));
    dataAt = pair.lastIndex;
  }
  return { values, dataAt };
}

function numberOf(name: string, key: Key, text: string): number {
  if (/^[-+]?\d+,\d+$/.test(text)) throw commaDecimals(name, text);
  if (key === "nodata_value" && /^[-+]?nan$/i.test(text)) return Number.NaN;
  const value = Number(text);
  if (!Number.isFinite(value)) throw badHeader(name, "value", key, text.slice(0, 30));
  return value;
}

function badHeader(
  name: string,
  fault: Given<"raster/grid-header">["fault"],
  ...of: readonly (string | number)[]
): Refusal {
  return refusal("raster/grid-header", { name, fault, of });
}

/** The refusal for numbers such as 1,5. */
export function commaDecimals(name: string, text: string): Refusal {
  return refusal("raster/comma-decimals", { name, text: text.slice(0, 30) });
}
