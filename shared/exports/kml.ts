import type { LonLat } from "../plan.ts";
import type { Station } from "../sizing-types.ts";
import { fileNotes } from "../words/file-notes.ts";
import { kmlAltitudeNote, stakeName, stakeWords } from "../words/stake.ts";
import { lineTitle } from "../words/title.ts";
import { WORK_PLACES } from "../words/work-places.ts";
import { baseOf } from "./base.ts";
import type { Exported, Named } from "./exported.ts";
import { lineFacts } from "./line-state.ts";
import { DEGREE_DIGITS, METRE_DIGITS } from "./rounded.ts";
import { stakeFigures } from "./stakes.ts";
import { element, escaped, type Markup, textElement, xmlDocument } from "./xml.ts";

/** Color of lines and of areas, as KML writes it: alpha, blue, green, red. */
const STYLES = {
  base: { line: "ff3f6f8f", area: "995fa8d8" },
  over: { line: "ff1f1fb0", area: "b33030d0" },
  top: { line: "ff1f1fb0", area: "66a0a0ff" },
  gap: { line: "ff1f1fb0", area: "00000000" },
  building: { line: "ff404040", area: "99707070" },
} as const;

type Style = keyof typeof STYLES;

/**
 * A line as KML 2.2: stakes, base and buildings clamped to the ground, the line at the top of levee at absolute
 * altitude in meters, as its notes say. Source: OGC 07-147r2 (order of elements, altitude modes, longitude first).
 */
export function kml(exported: Exported): string {
  const { plan, line } = exported;
  const { mustFix, about, cautions } = fileNotes(exported);
  const { strips, gaps } = baseOf(plan, line);
  const outlines = (isOver: boolean) =>
    strips.filter((each) => each.isOver === isOver).map(({ outline }) => polygon(outline));
  const document = [
    textElement("name", `${plan.title}, ${lineTitle(plan, line)}`),
    description([...mustFix, ...about, kmlAltitudeNote(exported), ...cautions]),
    ...(Object.keys(STYLES) as Style[]).map(style),
    extendedData(lineFacts(exported)),
    folder(
      "Stakes, clamped to the ground",
      line.stations.map((each) => stake(each, exported)),
    ),
    folder("Top of levee, absolute altitude", [topOfLevee(exported)]),
    folder("Base, clamped to the ground", [
      shapes("Base", "base", outlines(false), exported),
      shapes("Base, over the height limit", "over", outlines(true), exported),
      shapes("No elevation data", "gap", gaps.map(clampedPath), exported),
    ]),
    folder(
      "Buildings, clamped to the ground",
      plan.structures.map(({ name, outline }) =>
        element("Placemark", [
          textElement("name", name),
          textElement("styleUrl", "#building"),
          polygon(outline),
        ]),
      ),
    ),
    folder(
      "Work places, clamped to the ground",
      (plan.workPlaces ?? []).map(({ name, kind, path }) =>
        element("Placemark", [
          textElement("name", name),
          description([WORK_PLACES[kind].tip]),
          kind === "truck-way" ? clampedPath(path) : clampedPoint(path[0]!),
        ]),
      ),
    ),
  ];
  return xmlDocument(
    element("kml", [element("Document", document)], { xmlns: "http://www.opengis.net/kml/2.2" }),
  );
}

function stake(station: Station, exported: Exported): Markup {
  const { lon, lat, crestM } = station;
  return element("Placemark", [
    textElement("name", stakeName(station, exported)),
    description(stakeWords(station, exported)),
    extendedData(stakeFigures(station, exported)),
    element("Point", [
      textElement("altitudeMode", "clampToGround"),
      textElement("coordinates", position([lon, lat], crestM)),
    ]),
  ]);
}

function topOfLevee(exported: Exported): Markup {
  const { mustFix } = fileNotes(exported);
  const path = exported.line.stations.map(({ lon, lat, crestM }) => position([lon, lat], crestM));
  return element("Placemark", [
    textElement("name", "Top of levee"),
    description([...mustFix, kmlAltitudeNote(exported)]),
    textElement("styleUrl", "#top"),
    element("LineString", [
      textElement("extrude", 1),
      textElement("altitudeMode", "absolute"),
      textElement("coordinates", path.join(" ")),
    ]),
  ]);
}

/** One placemark of several shapes; null where there are none. */
function shapes(
  name: string,
  look: Style,
  geometries: readonly Markup[],
  exported: Exported,
): Markup | null {
  if (geometries.length === 0) return null;
  return element("Placemark", [
    textElement("name", name),
    description(fileNotes(exported).mustFix),
    textElement("styleUrl", `#${look}`),
    element("MultiGeometry", geometries),
  ]);
}

function polygon(corners: readonly LonLat[]): Markup {
  const ring = [...corners, ...corners.slice(0, 1)].map((at) => position(at));
  return element("Polygon", [
    textElement("tessellate", 1),
    textElement("altitudeMode", "clampToGround"),
    element("outerBoundaryIs", [
      element("LinearRing", [textElement("coordinates", ring.join(" "))]),
    ]),
  ]);
}

function clampedPoint(at: LonLat): Markup {
  return element("Point", [
    textElement("altitudeMode", "clampToGround"),
    textElement("coordinates", position(at)),
  ]);
}

function clampedPath(path: readonly LonLat[]): Markup {
  return element("LineString", [
    textElement("tessellate", 1),
    textElement("altitudeMode", "clampToGround"),
    textElement("coordinates", path.map((at) => position(at)).join(" ")),
  ]);
}

function folder(name: string, placemarks: readonly (Markup | null)[]): Markup | null {
  if (placemarks.every((each) => each === null)) return null;
  return element("Folder", [textElement("name", name), ...placemarks]);
}

/** A description, which viewers show as HTML: signs of markup in it are written so that they are read as signs. */
function description(sentences: readonly string[]): Markup | null {
  if (sentences.length === 0) return null;
  return textElement("description", sentences.map(escaped).join("<br>"));
}

function extendedData(figures: Named): Markup {
  const known = Object.entries(figures).filter(([, value]) => value !== null);
  return element(
    "ExtendedData",
    known.map(([name, value]) => element("Data", [textElement("value", value)], { name })),
  );
}

function style(id: Style): Markup {
  const { line, area } = STYLES[id];
  return element(
    "Style",
    [
      element("LineStyle", [textElement("color", line), textElement("width", 2)]),
      element("PolyStyle", [textElement("color", area)]),
    ],
    { id },
  );
}

function position([lon, lat]: LonLat, altitudeM?: number): string {
  const place = `${lon.toFixed(DEGREE_DIGITS)},${lat.toFixed(DEGREE_DIGITS)}`;
  return altitudeM === undefined ? place : `${place},${altitudeM.toFixed(METRE_DIGITS)}`;
}
