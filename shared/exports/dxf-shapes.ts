import type { LonLat } from "../plan.ts";
import { stakeLabel } from "../words/stake.ts";
import { baseOf } from "./base.ts";
import type { Exported } from "./exported.ts";

/** Layers of a drawing, named for what they hold; a name ends in -2D where nothing on it has an elevation. */
export const LAYERS = [
  "TOP-OF-LEVEE",
  "STAKES-TOP-OF-LEVEE",
  "STAKES-GROUND",
  "STAKE-LABELS",
  "BASE-2D",
  "OVER-HEIGHT-LIMIT-2D",
  "NO-ELEVATION-DATA-2D",
  "BUILDINGS-2D",
  "BUILDING-NAMES-2D",
  "NO-GO-AREAS-2D",
  "WORK-PLACES-2D",
  "WORK-PLACE-NAMES-2D",
  "NOTES",
] as const;

/** One thing of a drawing, before it is put on a grid. */
export interface DrawnShape {
  readonly layer: (typeof LAYERS)[number];
  readonly kind: "path" | "outline" | "point" | "text";
  readonly places: readonly LonLat[];
  /** Elevations of the places, metres; null for a shape without. */
  readonly elevationsM: readonly number[] | null;
  readonly text?: string;
}

/** What a line's drawing holds; nothing that has no elevation data is given an elevation. */
export function drawnShapes(exported: Exported): readonly DrawnShape[] {
  const { plan, line } = exported;
  const { stations } = line;
  const { strips, gaps } = baseOf(plan, line);
  const places = stations.map(({ lon, lat }): LonLat => [lon, lat]);
  return [
    raised(
      "TOP-OF-LEVEE",
      "path",
      places,
      stations.map(({ crestM }) => crestM),
    ),
    ...stations.flatMap((station, i) => {
      const { crestM, groundM } = station;
      const at = [places[i]!];
      return [
        raised("STAKES-TOP-OF-LEVEE", "point", at, [crestM]),
        ...(groundM === null ? [] : [raised("STAKES-GROUND", "point", at, [groundM])]),
        { ...raised("STAKE-LABELS", "text", at, [crestM]), text: stakeLabel(station, exported) },
      ];
    }),
    ...strips.map(({ outline, isOver }) =>
      flat(isOver ? "OVER-HEIGHT-LIMIT-2D" : "BASE-2D", "outline", outline),
    ),
    ...gaps.map((path) => flat("NO-ELEVATION-DATA-2D", "path", path)),
    ...plan.structures.flatMap(({ name, outline }) => [
      flat("BUILDINGS-2D", "outline", outline),
      { ...flat("BUILDING-NAMES-2D", "text", outline.slice(0, 1)), text: name },
    ]),
    ...(plan.workPlaces ?? []).flatMap(({ name, kind, path }) => [
      flat("WORK-PLACES-2D", kind === "truck-way" ? "path" : "point", path),
      { ...flat("WORK-PLACE-NAMES-2D", "text", path.slice(-1)), text: name },
    ]),
    ...plan.noGo.map(({ outline }) => flat("NO-GO-AREAS-2D", "outline", outline)),
  ];
}

function raised(
  layer: DrawnShape["layer"],
  kind: DrawnShape["kind"],
  places: readonly LonLat[],
  elevationsM: readonly number[],
): DrawnShape {
  return { layer, kind, places, elevationsM };
}

function flat(
  layer: DrawnShape["layer"],
  kind: DrawnShape["kind"],
  places: readonly LonLat[],
): DrawnShape {
  return { layer, kind, places, elevationsM: null };
}
