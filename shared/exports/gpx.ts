import { fileNotes } from "../words/file-notes.ts";
import { gpxElevationNote, stakeName, stakeWords } from "../words/stake.ts";
import { lineTitle } from "../words/title.ts";
import { WORK_PLACES } from "../words/work-places.ts";
import type { Exported, Named } from "./exported.ts";
import { lineFacts } from "./line-state.ts";
import { DEGREE_DIGITS, METRE_DIGITS } from "./rounded.ts";
import { stakeFigures } from "./stakes.ts";
import { element, type Markup, textElement, xmlDocument } from "./xml.ts";

/** Names the elements of ours, which the schema lets stand in `extensions`. */
const OURS = "urn:drystead:stakes";

/**
 * The stakes of a line and its work places as waypoints and the line as a track, GPX 1.1. The elevation of each is the top of levee in
 * meters, as the format has it whatever the units of the rest; `extensions` hold the figures that the CSV file has.
 * Source: the schema http://www.topografix.com/GPX/1/1/gpx.xsd (order of elements, `ele` in meters).
 */
export function gpx(exported: Exported): string {
  const { plan, line } = exported;
  const { mustFix, about, cautions } = fileNotes(exported);
  const notes = [...mustFix, ...about, gpxElevationNote(exported), ...cautions].join("\n");
  const title = `${plan.title}, ${lineTitle(plan, line)}`;
  return xmlDocument(
    element(
      "gpx",
      [
        element("metadata", [
          textElement("name", title),
          textElement("desc", notes),
          extensions(lineFacts(exported)),
        ]),
        ...line.stations.map((station) =>
          element(
            "wpt",
            [
              ...elevation(station.crestM),
              textElement("name", stakeName(station, exported)),
              textElement("desc", stakeWords(station, exported).join(" ")),
              textElement("src", exported.verticalDatum),
              textElement("type", "Stake"),
              extensions(stakeFigures(station, exported)),
            ],
            place(station),
          ),
        ),
        ...(plan.workPlaces ?? []).map(({ name, kind, path }) => {
          const [lon, lat] = path.at(-1)!;
          return element(
            "wpt",
            [
              textElement("name", name),
              textElement("desc", WORK_PLACES[kind].tip),
              textElement("type", "Work place"),
            ],
            place({ lon, lat }),
          );
        }),
        element("trk", [
          textElement("name", title),
          textElement("desc", notes),
          textElement("src", exported.verticalDatum),
          element(
            "trkseg",
            line.stations.map((station) =>
              element("trkpt", elevation(station.crestM), place(station)),
            ),
          ),
        ]),
      ],
      {
        version: "1.1",
        creator: "Drystead",
        xmlns: "http://www.topografix.com/GPX/1/1",
        "xmlns:drystead": OURS,
      },
    ),
  );
}

function place({ lon, lat }: { readonly lon: number; readonly lat: number }) {
  return { lat: lat.toFixed(DEGREE_DIGITS), lon: lon.toFixed(DEGREE_DIGITS) };
}

function elevation(m: number): (Markup | null)[] {
  return [textElement("ele", m.toFixed(METRE_DIGITS))];
}

function extensions(figures: Named): Markup {
  const each = Object.entries(figures).map(([name, value]) =>
    textElement(`drystead:${name}`, value),
  );
  return element("extensions", each);
}
