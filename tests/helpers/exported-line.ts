import { SURVEY_FOOT_M } from "../../shared/constants.ts";
import type { Exported } from "../../shared/exports/exported.ts";
import { FILE_FORMATS, type FileFormat, type ToGrid } from "../../shared/exports/formats.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { groundOf, lonLats, PLANE, planWith, rectangle, ring, size, structure } from "./grounds.ts";

/** Names that a format could take for markup, a formula, an escape, or the end of something. */
export const HOSTILE = {
  title: 'Müller & Söhne <script>alert("x")</script> 北岸',
  line: '=HYPERLINK("http://x.invalid")]]>',
  pile: "<Pile> & 'sand' \\P {1}",
  building: "Höfe ^J\\P {x} 'a' &amp; “b”",
} as const;

const ground = groundOf((x, y) => (x > 10 && y > 5 ? Number.NaN : 100 + x / 20));
const alternative = { ...ring(rectangle(20, 15)), name: HOSTILE.line };
const plan = {
  ...planWith(101.5),
  title: HOSTILE.title,
  alignments: [alternative],
  structures: [structure(HOSTILE.building, rectangle(4, 4))],
  workPlaces: [
    { id: "p", name: HOSTILE.pile, kind: "pile" as const, path: lonLats([[5, 8]]) },
    {
      id: "t",
      name: "Farm lane",
      kind: "truck-way" as const,
      path: lonLats([
        [-60, 0],
        [-8, 0],
      ]),
    },
  ],
};

/** A line partly over the height limit and partly without elevation data, with hostile names. */
export const HOSTILE_LINE = size(plan, alternative, ground);

/** The same as it leaves the program. */
export function hostileExport(system: UnitSystem): Exported {
  const line = HOSTILE_LINE;
  const { checks } = line;
  return {
    ...{ plan, alternative, line, checks, isTraced: true, verticalDatum: "NAVD 88", system },
  };
}

/** A grid in US survey feet: the plan plane, its origin moved away from zero. */
export const surveyFeet: ToGrid = async (places) => ({
  crs: "EPSG:9999",
  unitM: SURVEY_FOOT_M,
  xy: places.map((at) => {
    const [xM, yM] = PLANE.toPlane(at);
    return [2_000_000 + xM / SURVEY_FOOT_M, 500_000 + yM / SURVEY_FOOT_M];
  }),
});

/** The text of a line in a format. */
export function written(
  as: FileFormat["as"],
  exported: Exported,
  toGrid: ToGrid = surveyFeet,
): Promise<string> {
  return FILE_FORMATS.find((format) => format.as === as)!.write(exported, toGrid);
}
