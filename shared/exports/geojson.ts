import type { Position } from "geojson";
import { bagOrder } from "../bag-order.ts";
import { isCounted } from "../completeness.ts";
import { formatStation, lengthIn, lengthUnit, volumeIn } from "../units.ts";
import { baseOf } from "./base.ts";
import type { Exported, Value } from "./exported.ts";
import { lineState } from "./line-state.ts";
import { closedLeft, roundedPosition } from "./positions.ts";
import { decimals } from "./rounded.ts";
import { stakeFigures } from "./stakes.ts";

/** Properties of a feature; the unit in each name. Null where there is no elevation data. */
type Properties = Readonly<Record<string, Value | object>>;

type Geometry =
  | { readonly type: "Point"; readonly coordinates: Position }
  | { readonly type: "LineString"; readonly coordinates: readonly Position[] }
  | { readonly type: "Polygon"; readonly coordinates: readonly (readonly Position[])[] };

/**
 * One line as a GeoJSON FeatureCollection (RFC 7946, WGS 84). `feature` says what each is: the `line` (a Polygon for
 * a ring, a LineString for a line tied in) with its totals, its `base` between the toes, stretches with `no elevation data`, `work place`s, and its `stake`s with the figures that the CSV file has. Positions carry no elevation: there
 * it would have to be one over the ellipsoid.
 */
export function geoJson(exported: Exported): string {
  const features = [
    lineFeature(exported),
    ...groundFeatures(exported),
    ...workPlaces(exported),
    ...stakes(exported),
  ];
  return `${JSON.stringify({ type: "FeatureCollection", features }, null, 1)}\n`;
}

function lineFeature(exported: Exported) {
  const { alternative } = exported;
  const corners = alternative.corners.map(roundedPosition);
  return feature(
    "line",
    alternative.kind === "ring"
      ? { type: "Polygon", coordinates: [closedLeft(corners)] }
      : { type: "LineString", coordinates: corners },
    { ...totals(exported), ...lineState(exported) },
  );
}

function groundFeatures(exported: Exported) {
  const state = lineState(exported);
  const { strips, gaps } = baseOf(exported.plan, exported.line);
  return [
    ...strips.map(({ outline, isOver }) =>
      feature(
        "base",
        { type: "Polygon", coordinates: [closedLeft(outline.map(roundedPosition))] },
        { over_height_limit: isOver, ...state },
      ),
    ),
    ...gaps.map((path) =>
      feature(
        "no elevation data",
        { type: "LineString", coordinates: path.map(roundedPosition) },
        state,
      ),
    ),
  ];
}

function workPlaces({ plan }: Exported) {
  return (plan.workPlaces ?? []).map(({ name, kind, path }) =>
    feature(
      "work place",
      kind === "truck-way"
        ? { type: "LineString", coordinates: path.map(roundedPosition) }
        : { type: "Point", coordinates: roundedPosition(path[0]!) },
      { name, kind },
    ),
  );
}

function stakes(exported: Exported) {
  const state = lineState(exported);
  return exported.line.stations.map((station) =>
    feature(
      "stake",
      { type: "Point", coordinates: roundedPosition([station.lon, station.lat]) },
      { ...stakeFigures(station, exported), ...state },
    ),
  );
}

function totals({ alternative, line, system }: Exported): Properties {
  const { totals } = line;
  const length = lengthUnit(system);
  const volume = system === "us" ? "cu_yd" : "m3";
  const counted = (value: Value) => (isCounted(line) ? value : null);
  const tops = line.stations.map(({ crestM }) => lengthIn(crestM, system));
  return {
    kind: alternative.kind,
    [`length_${length}`]: decimals(lengthIn(totals.lengthM, system), 1),
    [`lowest_top_of_levee_${length}`]: decimals(Math.min(...tops), 2),
    [`highest_top_of_levee_${length}`]: decimals(Math.max(...tops), 2),
    [`greatest_height_${length}`]: counted(decimals(lengthIn(totals.greatestHeightM, system), 2)),
    greatest_height_at: counted(formatStation(totals.greatestHeightAtM, system)),
    [`levee_${volume}`]: counted(decimals(volumeIn(totals.volumeM3, system), 1)),
    bags: counted(totals.bags),
    bags_on_poly_sheeting: counted(totals.sheetBags),
    bags_to_order: counted(bagOrder(totals).total),
    [`sand_${volume}`]: counted(decimals(volumeIn(totals.sandM3, system), 1)),
  };
}

function feature(what: string, geometry: Geometry, properties: Properties) {
  return { type: "Feature", geometry, properties: { feature: what, ...properties } };
}
