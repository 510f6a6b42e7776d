import { FOOT_M } from "../constants.ts";
import { refusal } from "../failure.ts";
import type { UnitSystem } from "../units.ts";
import { forecastClock } from "./clock.ts";
import { chosenSeries, levelsGiven, type Series } from "./series.ts";
import type { ForecastNote, LeftOut, Levels, ReadingWith, ReadRow, TextPlace } from "./types.ts";
import type { Unchecked } from "./understood.ts";
import { type Point, pointsOf, timesOf } from "./waterml-points.ts";
import { writtenTime } from "./written-time.ts";
import {
  allOf,
  linkName,
  type ParseXml,
  textOf,
  under,
  type XmlNode,
  xmlRoot,
} from "./xml-tree.ts";

/** Metres in a unit of length, by its UCUM code or a common way to write it, and which system it is of. */
const UNITS: ReadonlyMap<string, readonly [number, UnitSystem]> = new Map<
  string,
  readonly [number, UnitSystem]
>([
  ...["m", "metre", "metres", "meter", "meters"].map(
    (code): [string, readonly [number, UnitSystem]] => [code, [1, "metric"]],
  ),
  ["cm", [0.01, "metric"]],
  ["mm", [0.001, "metric"]],
  ...["ft", "foot", "feet", "[ft_i]"].map((code): [string, readonly [number, UnitSystem]] => [
    code,
    [FOOT_M, "us"],
  ]),
  ["[ft_us]", [1200 / 3937, "us"]],
]);
const FLOW = /discharge|streamflow|\bflow\b|volume|rain|precip|temperature/i;
const DOUBTFUL = new Set(["estimate", "suspect", "poor"]);
const NUMBER = /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d{1,2})?$/i;

interface WaterMlSeries extends Series {
  readonly node: XmlNode;
  readonly property: string;
  readonly unit: readonly [number, UnitSystem] | null;
  readonly writtenUnit: string;
}

/**
 * Reads WaterML 2.0, part 1 (OGC 10-126r4): a measurement time series as time-value pairs, with its times or equally
 * spaced from a base time (10.8), with default point metadata (10.8.2) and nil values; and as domain and range, as in
 * the informative schema beside it.
 * Failures name line and column where a point is meant: `forecast/xml`, `forecast/waterml`, `forecast/unit`,
 * `forecast/which`, `forecast/no-level`, `forecast/time`, `forecast/zone-needed`, `forecast/level`.
 */
export function readWaterMl(text: string, parse: ParseXml, how: ReadingWith): Unchecked {
  const root = xmlRoot(text, parse);
  const { found, others } = seriesOf(root);
  if (found.length + others.length === 0) throw notWaterMl(root);
  const { taken, notes } = chosenSeries(found, how, others);
  const named = levelsNamed(taken.property);
  const levels = levelsGiven(named, how, { series: taken.name });
  const { perUnitM, unit, note } = unitOf(taken, how);
  const clock = forecastClock(how, null);
  const leftOut: LeftOut[] = [];
  const doubtful = new Map<string, number>();
  const points = pointsOf(taken.node, text);
  const times = timesOf(taken.node, points, (raw, place) => momentOf(raw, place, clock));
  const rows = points.flatMap((point, index): ReadRow[] => {
    const { place, value, quality } = point;
    const why = whyNot(point);
    if (why) {
      leftOut.push({ place, why, came: value });
      return [];
    }
    if (DOUBTFUL.has(quality)) doubtful.set(quality, (doubtful.get(quality) ?? 0) + 1);
    const own = point.unit === "" ? perUnitM : (UNITS.get(point.unit)?.[0] ?? null);
    if (own === null) throw refusal("forecast/unit", { place, unit: point.unit });
    const levelM = own * figureOf(value, place);
    return [{ moment: times[index]!, levelM, lowM: null, highM: null, place }];
  });
  const marked = [...doubtful].map(
    ([code, count]): ForecastNote => ({
      ...{ kind: "doubtful", code, rows: count },
    }),
  );
  return {
    ...{ from: "waterml", levels, unit, series: taken.name || null, rows, leftOut },
    ...{ zones: clock.zones() },
    notes: [...notes, ...(note ? [note] : []), ...marked, ...clock.notes()],
  };
}

function seriesOf(root: XmlNode) {
  const observations = allOf(root, "OM_Observation");
  const owners = observations.length > 0 ? observations : [root];
  const others: string[] = [];
  const found = owners.flatMap((owner): WaterMlSeries[] =>
    ["MeasurementTimeseries", "MeasurementTimeseriesDomainRange"]
      .flatMap((name) => allOf(owner, name))
      .flatMap((node) => {
        const station = linkName(under(owner, "featureOfInterest")) ?? pointName(owner) ?? "";
        const property = linkName(under(owner, "observedProperty")) ?? "";
        const name = [station, property].filter((part) => part !== "").join(", ");
        const writtenUnit = unitWritten(node);
        const unit = UNITS.get(writtenUnit) ?? null;
        const isOther =
          FLOW.test(property) || (unit === null && /3|\/|flow|cfs|cms/i.test(writtenUnit));
        if (isOther) others.push(name || writtenUnit);
        return isOther ? [] : [{ station, name, rank: 0, node, property, unit, writtenUnit }];
      }),
  );
  return { found, others };
}

function pointName(owner: XmlNode): string | null {
  const point = allOf(owner, "MonitoringPoint")[0];
  return point ? textOf(under(point, "name") ?? under(point, "identifier")) || null : null;
}

function unitWritten(node: XmlNode): string {
  const names = ["DefaultTVPMeasurementMetadata", "DefaultPointMetadata", "PointMetadata"];
  const uom = names.flatMap((name) => allOf(node, name)).map((each) => under(each, "uom"))[0];
  const first = allOf(node, "value")[0] ?? allOf(node, "QuantityList")[0];
  return (
    uom?.getAttribute("code") ??
    uom?.getAttribute("uom") ??
    linkName(uom ?? null) ??
    first?.getAttribute("uom") ??
    ""
  ).trim();
}

function unitOf({ unit, writtenUnit, name }: WaterMlSeries, { units, system }: ReadingWith) {
  if (unit) return { perUnitM: unit[0], unit: unit[1], note: null };
  const given = units ?? (writtenUnit === "" ? system : null);
  if (given === null) {
    throw refusal("forecast/unit", { place: { series: name }, unit: writtenUnit });
  }
  const note: ForecastNote = units
    ? { kind: "unit-given", unit: given, written: writtenUnit }
    : { kind: "unit-assumed", unit: given };
  return { perUnitM: given === "us" ? FOOT_M : 1, unit: given, note };
}

function levelsNamed(property: string): Levels | null {
  if (/elevation|altitude/i.test(property)) return "elevation";
  return /stage|gage|gauge/i.test(property) ? "stage" : null;
}

function whyNot({ isNil, value, reason, quality, isCensored }: Point): LeftOut["why"] | null {
  if (isCensored) return "censored";
  if (isNil || value === "" || quality === "missing") return "missing";
  return /withheld/i.test(reason) ? "rejected" : null;
}

function momentOf(raw: string, place: TextPlace, clock: ReturnType<typeof forecastClock>) {
  const written = writtenTime(raw.replace(/(:\d{2})\.\d+/, "$1"));
  if (written) return clock.momentOf(written, raw, place);
  throw refusal("forecast/time", { place, how: "waterml", came: raw });
}

function figureOf(value: string, place: TextPlace): number {
  if (NUMBER.test(value)) return Number(value);
  throw refusal("forecast/level", { place, how: "waterml", came: value });
}

function notWaterMl({ nodeName, namespaceURI }: XmlNode) {
  const isFirst =
    /waterml\/1|WaterML/i.test(namespaceURI ?? "") || /timeSeriesResponse/.test(nodeName);
  return refusal("forecast/waterml", { how: isFirst ? "waterml-1" : "other", root: nodeName });
}
