import { DOMParser } from "@xmldom/xmldom";
import { type Given, type Refusal, refusal } from "../../../shared/failure.ts";
import {
  childrenOf,
  elementsIn,
  textOf,
  under,
  type XmlNode,
} from "../../../shared/forecasts/xml-tree.ts";
import type { Affine } from "../affine.ts";

/** A rectangle in pixels, fractions allowed. */
export interface PixelRect {
  readonly column: number;
  readonly row: number;
  readonly columns: number;
  readonly rows: number;
}

/** A file that a VRT takes its heights from, and the part of it that lies where. */
export interface VrtSource {
  readonly path: string;
  /** True when the path counts from the VRT's own folder. */
  readonly isRelative: boolean;
  /** Stored number that marks missing data; null when none is stated for this source. */
  readonly noData: number | null;
  /** In the source's own pixels; null for all of it. */
  readonly from: PixelRect | null;
  /** In the VRT's pixels; null for all of it. */
  readonly to: PixelRect | null;
}

/** A mosaic as a GDAL VRT lists it. */
export interface VrtText {
  readonly affine: Affine;
  readonly columns: number;
  readonly rows: number;
  /** Well-known text of its reference; null when it states none. */
  readonly reference: string | null;
  readonly noData: number | null;
  /** Unit of the heights as written; null when it states none. */
  readonly unit: string | null;
  readonly bands: number;
  /** In the VRT's order: where two overlap, the later counts. */
  readonly sources: readonly VrtSource[];
}

/** More sources than this are no plan's ground. */
const MOST_SOURCES = 5000;

/** Parts of a dataset and a band that change no height. Source: GDAL, VRT -- GDAL Virtual Format. */
const IN_DATASET = ["SRS", "GeoTransform", "Metadata", "VRTRasterBand", "OverviewList"];
const IN_BAND = [
  ...["SimpleSource", "ComplexSource", "NoDataValue", "HideNoDataValue", "UnitType", "Offset"],
  ...["Scale", "ColorInterp", "Description", "Metadata", "Histograms", "Overview"],
];
const IN_SOURCE = [
  ...["SourceFilename", "SourceBand", "SourceProperties", "SrcRect", "DstRect", "NODATA"],
  ...["ScaleOffset", "ScaleRatio", "OpenOptions"],
];

/**
 * Reads a VRT of simple sources: files side by side, each as it is. What makes heights of its own (warping, pixel
 * functions, filters, tables) is refused by its name, as is a source that is no plain file.
 * @throws Refusal `raster/vrt-kind`, `raster/vrt-damaged`, `raster/vrt-source`
 */
export function readVrtText(name: string, text: string): VrtText {
  const root = rootOf(name, text);
  const kind = root.getAttribute("subClass");
  if (kind) throw unread(name, kind);
  refuseOthers(name, root, IN_DATASET);
  const bands = childrenOf(root, "VRTRasterBand");
  const band = bands.find((each) => [null, "", "1"].includes(each.getAttribute("band")));
  if (!band) throw damaged(name, "no-band");
  const bandKind = band.getAttribute("subClass");
  if (bandKind && bandKind !== "VRTSourcedRasterBand") {
    const made = textOf(under(band, "PixelFunctionType"));
    throw unread(name, made === "" ? bandKind : `${bandKind}, pixel function ${made.slice(0, 60)}`);
  }
  refuseOthers(name, band, IN_BAND);
  unchanged(name, band, "Offset", 0);
  unchanged(name, band, "Scale", 1);
  const found = elementsIn(band).filter(({ localName }) => localName?.endsWith("Source"));
  if (found.length === 0) throw damaged(name, "no-file");
  if (found.length > MOST_SOURCES) throw damaged(name, "many-files", found.length);
  const [reference, unit] = [textOf(under(root, "SRS")), textOf(under(band, "UnitType"))];
  return {
    affine: affineOf(name, textOf(under(root, "GeoTransform"))),
    columns: sizeOf(name, root, "rasterXSize"),
    rows: sizeOf(name, root, "rasterYSize"),
    reference: reference === "" ? null : reference,
    noData: numberIn(name, under(band, "NoDataValue")),
    unit: unit === "" ? null : unit,
    bands: bands.length,
    sources: found.map((each) => sourceOf(name, each)),
  };
}

function rootOf(name: string, text: string): XmlNode {
  if (/<!(?:DOCTYPE|ENTITY)/i.test(text)) {
    throw damaged(name, "entities");
  }
  try {
    const onError = (_level: string, message: string) => {
      throw new Error(message);
    };
    const parsed = new DOMParser({ onError }).parseFromString(text, "text/xml");
    const root = parsed.documentElement as XmlNode | null;
    if (root?.localName === "VRTDataset") return root;
  } catch {
    throw damaged(name, "not-xml");
  }
  throw damaged(name, "not-vrt");
}

function sourceOf(name: string, source: XmlNode): VrtSource {
  refuseOthers(name, source, IN_SOURCE);
  unchanged(name, source, "ScaleOffset", 0);
  unchanged(name, source, "ScaleRatio", 1);
  const file = under(source, "SourceFilename");
  const path = textOf(file);
  const band = textOf(under(source, "SourceBand"));
  const shown = path.slice(0, 120);
  if (path === "") throw notAFile(name, "nothing");
  if (/^\/vsi|^[a-z][a-z0-9+.-]+:/i.test(path)) throw notAFile(name, "elsewhere", shown);
  if (/\.vrt$/i.test(path)) throw notAFile(name, "nested", shown);
  if (band !== "" && band !== "1") throw notAFile(name, "band", shown, band.slice(0, 20));
  return {
    path,
    isRelative: file?.getAttribute("relativeToVRT") === "1",
    noData: numberIn(name, under(source, "NODATA")),
    from: rectOf(name, under(source, "SrcRect")),
    to: rectOf(name, under(source, "DstRect")),
  };
}

function rectOf(name: string, rect: XmlNode | null): PixelRect | null {
  if (!rect) return null;
  const [column, row, columns, rows] = ["xOff", "yOff", "xSize", "ySize"].map((key) =>
    Number(rect.getAttribute(key) || Number.NaN),
  ) as [number, number, number, number];
  const isRect = [column, row, columns, rows].every(Number.isFinite) && columns > 0 && rows > 0;
  if (!isRect) throw damaged(name, "rectangle", rect.localName ?? "");
  return { column, row, columns, rows };
}

function affineOf(name: string, text: string): Affine {
  const numbers = text.split(",").map((each) => Number(each.trim() || Number.NaN));
  const [x0, xPerColumn, xPerRow, y0, yPerColumn, yPerRow] = numbers as [
    ...[number, number, number],
    ...[number, number, number],
  ];
  if (numbers.length === 6 && numbers.every(Number.isFinite)) {
    return { x0, xPerColumn, xPerRow, y0, yPerColumn, yPerRow };
  }
  throw damaged(name, "transform");
}

function sizeOf(name: string, root: XmlNode, key: string): number {
  const size = Number(root.getAttribute(key));
  if (Number.isSafeInteger(size) && size > 0) return size;
  throw damaged(name, "size", key);
}

function numberIn(name: string, node: XmlNode | null): number | null {
  const text = textOf(node);
  if (text === "" || /^-?nan$/i.test(text)) return null;
  const value = Number(text);
  if (Number.isFinite(value)) return value;
  throw damaged(name, "number", node?.localName ?? "");
}

function refuseOthers(name: string, node: XmlNode, known: readonly string[]): void {
  const other = elementsIn(node).find(({ localName }) => !known.includes(localName ?? ""));
  if (other) throw unread(name, (other.localName ?? other.nodeName).slice(0, 60));
}

/** @throws Refusal where heights would be changed by a scale or an offset of the VRT's own */
function unchanged(name: string, node: XmlNode, element: string, expected: number): void {
  const value = numberIn(name, under(node, element));
  if (value !== null && value !== expected) throw unread(name, `${element} ${value}`);
}

function unread(name: string, has: string): Refusal {
  return refusal("raster/vrt-kind", { name, has });
}

function damaged(
  name: string,
  fault: Given<"raster/vrt-damaged">["fault"],
  ...of: readonly (string | number)[]
): Refusal {
  return refusal("raster/vrt-damaged", { name, fault, of });
}

function notAFile(
  name: string,
  fault: Given<"raster/vrt-source">["fault"],
  ...of: readonly string[]
): Refusal {
  return refusal("raster/vrt-source", { name, fault, of });
}
