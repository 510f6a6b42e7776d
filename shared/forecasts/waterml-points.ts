import { refusal } from "../failure.ts";
import type { Moment } from "../time/forecast-time.ts";
import type { TextPlace } from "./types.ts";
import { allOf, childrenOf, linkEnd, textOf, under, type XmlNode } from "./xml-tree.ts";

/** A point of a series, as it is written. */
export interface Point {
  readonly place: TextPlace;
  /** As written; empty where base time and spacing say it. */
  readonly time: string;
  readonly value: string;
  readonly isNil: boolean;
  readonly isCensored: boolean;
  /** Why it is nil, in the words of its address; empty where none is given. */
  readonly reason: string;
  /** `good`, `suspect`, `estimate`, `poor`, `unchecked`, `missing`; empty where none is given. */
  readonly quality: string;
  /** A unit of its own; empty where it is that of the series. */
  readonly unit: string;
}

const NIL = "http://www.w3.org/2001/XMLSchema-instance";

/** The points of a series. @throws Refusal `forecast/waterml` for domain and range of different lengths */
export function pointsOf(series: XmlNode, text: string): Point[] {
  if (series.localName === "MeasurementTimeseriesDomainRange") return rangePoints(series);
  const places = placesOf(series, text);
  const defaults = under(series, "defaultPointMetadata", "DefaultTVPMeasurementMetadata");
  const usual = qualityOf(defaults);
  return allOf(series, "MeasurementTVP").map((point, index): Point => {
    const value = under(point, "value");
    const metadata = under(point, "metadata", "TVPMeasurementMetadata");
    return {
      place: places[index] ?? { line: 1, column: 1 },
      time: textOf(under(point, "time")),
      value: textOf(value),
      isNil: /^(true|1)$/.test(value?.getAttributeNS(NIL, "nil") ?? "") || !value,
      isCensored: under(metadata, "censoredReason") !== null,
      reason: linkEnd(under(metadata, "nilReason")) ?? "",
      quality: qualityOf(metadata) || usual,
      unit: (
        under(metadata, "uom")?.getAttribute("code") ??
        value?.getAttribute("uom") ??
        ""
      ).trim(),
    };
  });
}

function qualityOf(metadata: XmlNode | null): string {
  return (linkEnd(under(metadata, "quality")) ?? "").toLowerCase();
}

function rangePoints(series: XmlNode): Point[] {
  const words = (name: string) =>
    textOf(allOf(series, name)[0] ?? null)
      .split(/\s+/)
      .filter((word) => word !== "");
  const [times, values] = [words("timePositionList"), words("QuantityList")];
  if (times.length !== values.length) {
    const counts = { values: values.length, times: times.length };
    throw refusal("forecast/waterml", { how: "lengths", ...counts });
  }
  return values.map((value, index) => ({
    ...{ place: { line: 1, column: index + 1 }, time: times[index]!, value, unit: "" },
    ...{ isNil: /^(missing|unknown|inapplicable|withheld|template|NaN)$/i.test(value) },
    ...{ isCensored: false, reason: "", quality: "" },
  }));
}

/** Where the points of a series begin in its text: those of the series before it are passed over. */
function placesOf(series: XmlNode, text: string): TextPlace[] {
  const id = series.getAttribute("gml:id");
  const from = id === null ? 0 : Math.max(0, text.indexOf(`"${id}"`));
  let line = 1;
  let lineAt = 0;
  const places: TextPlace[] = [];
  const pattern = /\n|<(?:[\w.-]+:)?MeasurementTVP[\s>]/g;
  for (const match of text.matchAll(pattern)) {
    if (match[0] === "\n") {
      line += 1;
      lineAt = match.index + 1;
    } else if (match.index >= from) {
      places.push({ line, column: match.index - lineAt + 1 });
    }
  }
  return places;
}

/**
 * The moment of each point: its own, or `baseTime` and so many times `spacing`, zero for the first.
 * Source: OGC 10-126r4, 10.8, requirement equidistant-encoding.
 * @param momentOf reads one time
 * @throws Refusal `forecast/waterml` for a point without a time, or a spacing that cannot be read
 */
export function timesOf(
  series: XmlNode,
  points: readonly Point[],
  momentOf: (raw: string, place: TextPlace) => Moment,
): Moment[] {
  const metadata = childrenOf(series, "metadata").flatMap((each) =>
    allOf(each, "MeasurementTimeseriesMetadata"),
  )[0];
  const [base, spacing] = [under(metadata ?? null, "baseTime"), under(metadata ?? null, "spacing")];
  const isSpaced = base !== null && spacing !== null && points.every(({ time }) => time === "");
  if (!isSpaced) {
    return points.map(({ time, place }) => {
      if (time !== "") return momentOf(time, place);
      throw refusal("forecast/waterml", { place, how: "no-time" });
    });
  }
  const first = points[0]?.place ?? { line: 1, column: 1 };
  const start = momentOf(textOf(base), first);
  const stepS = spacingS(textOf(spacing), first);
  return points.map((_, n) => ({ atS: start.atS + n * stepS, offsetMin: start.offsetMin }));
}

function spacingS(text: string, place: TextPlace): number {
  const match = /^P(?:(\d+)D)?(?:T(?:(\d+)H)?(?:(\d+)M)?(?:(\d+)S)?)?$/.exec(text);
  const [days, hours, minutes, seconds] = (match?.slice(1) ?? []).map((part) => Number(part ?? 0));
  const stepS = match ? ((24 * days! + hours!) * 60 + minutes!) * 60 + seconds! : 0;
  if (stepS > 0) return stepS;
  throw refusal("forecast/waterml", { place, how: "spacing", came: text });
}
