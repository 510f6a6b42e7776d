import { FOOT_M } from "../../constants.ts";
import { BOARD_PIECE_M, LUMBER_PIECE_M, PLYWOOD_SHEET_M2 } from "../../quantities.ts";
import { sectionById } from "../../sections.ts";
import { SETTINGS } from "../../settings.ts";
import {
  formatArea,
  formatCount,
  formatLength,
  formatShare,
  formatStation,
  formatVolume,
} from "../../units.ts";
import { unitsOf } from "../units.ts";
import type { Makeup, MakeupInputs } from "./inputs.ts";

type Words = (inputs: MakeupInputs) => Makeup;

/** How the materials of other sections than the pyramid are made up. */
export const MATERIAL_MAKEUPS = {
  looseSandM3: (inputs) => ({
    formula:
      "loose sand = volume of the reaches filled with it × (1 + waste); it is in the sand too",
    inputs: [
      {
        name: "loose sand",
        value: formatVolume(inputs.totals.materials.looseSandM3, inputs.system),
      },
      waste(inputs),
      ...reachesOf(inputs, "sand"),
    ],
    source: `cross-sections as their sources give them; waste ${SETTINGS["practice.wasteShare"].source}`,
  }),
  earthM3: (inputs) => ({
    formula:
      "earth = volume of the reaches built of it, tamped in place × (1 + waste); loose it takes more room",
    inputs: [
      { name: "earth", value: formatVolume(inputs.totals.materials.earthM3, inputs.system) },
      waste(inputs),
      ...reachesOf(inputs, "earth"),
    ],
    source: `IS-280, IL-RET, LSU (cross-section); waste ${SETTINGS["practice.wasteShare"].source}`,
  }),
  plywoodSheets: (inputs) => ({
    formula:
      "panels = area of the plywood faces / one panel, rounded up; what cutting wastes comes on top",
    inputs: [
      { name: "faces", value: formatArea(inputs.totals.materials.plywoodM2, inputs.system) },
      { name: "one panel", value: formatArea(PLYWOOD_SHEET_M2, inputs.system) },
      ...reachesWith(inputs, "plywoodM2"),
    ],
    source: `faces as high as the levee at its lowest ground; panels of ${unitsOf(inputs.system).figure(4 * FOOT_M)} by ${unitsOf(inputs.system).figure(8 * FOOT_M)}, common practice, no source`,
  }),
  lumberPieces: (inputs) => ({
    formula:
      "pieces = rails, ties and kickers along the built length / one piece, rounded up; what cutting wastes comes on top",
    inputs: [
      { name: "lumber", value: formatLength(inputs.totals.materials.lumberM, inputs.system, 0) },
      { name: "one piece", value: unitsOf(inputs.system).figure(LUMBER_PIECE_M) },
      ...reachesWith(inputs, "lumberM"),
    ],
    source: "DWR-03 p49 (kickers); rails and ties: common practice, no source",
  }),
  boardPieces: (inputs) => ({
    formula:
      "boards = rows of boards along the built length / one board, rounded up; what cutting wastes comes on top",
    inputs: [
      { name: "boards", value: formatLength(inputs.totals.materials.boardsM, inputs.system, 0) },
      { name: "one board", value: unitsOf(inputs.system).figure(BOARD_PIECE_M) },
      ...reachesWith(inputs, "boardsM"),
    ],
    source: "DWR-03 p47",
  }),
  stakes: (inputs) => ({
    formula: "stakes and posts = two for each spacing of the built length, rounded up",
    inputs: [
      { name: "stakes and posts", value: formatCount(inputs.totals.materials.stakes) },
      ...reachesWith(inputs, "stakes"),
    ],
    source: `DWR-03 (every ${unitsOf(inputs.system).figure(6 * FOOT_M)}); every ${unitsOf(inputs.system).figure(4 * FOOT_M)} in a plywood box: common practice, no source`,
  }),
} as const satisfies Record<string, Words>;

/** What person-hours count beside bags; nothing where all is of bags. */
export function loosePart({ totals, system }: MakeupInputs): Makeup["inputs"] {
  const { looseSandM3, earthM3, plywoodSheets, lumberPieces, boardPieces, stakes } =
    totals.materials;
  const loose =
    looseSandM3 + earthM3 > 0
      ? [
          {
            name: "sand and earth without bags, counted as the bags of their volume",
            value: formatVolume(looseSandM3 + earthM3, system),
          },
        ]
      : [];
  const boards =
    plywoodSheets + lumberPieces + boardPieces + stakes > 0
      ? [{ name: "carpentry", value: "not counted: no published rate" }]
      : [];
  return [...loose, ...boards];
}

function waste({ plan }: MakeupInputs): Makeup["inputs"][number] {
  return { name: "waste", value: formatShare(plan.practice.wasteShare) };
}

function reachesOf({ line, system }: MakeupInputs, fill: string): Makeup["inputs"] {
  return line.reaches.flatMap(({ section, sectionName, fromM, totals }) => {
    const kind = sectionById(section);
    if (!kind.ok || kind.value.fill !== fill) return [];
    const name = `${sectionName} from ${formatStation(fromM, system)}`;
    return [{ name, value: formatVolume(totals.volumeM3, system) }];
  });
}

function reachesWith(
  { line, system }: MakeupInputs,
  key: "plywoodM2" | "lumberM" | "boardsM" | "stakes",
): Makeup["inputs"] {
  const words = {
    plywoodM2: (value: number) => formatArea(value, system),
    lumberM: (value: number) => formatLength(value, system, 0),
    boardsM: (value: number) => formatLength(value, system, 0),
    stakes: formatCount,
  };
  return line.reaches
    .filter(({ totals }) => totals.materials[key] > 0)
    .map(({ sectionName, fromM, totals }) => ({
      name: `${sectionName} from ${formatStation(fromM, system)}`,
      value: words[key](totals.materials[key]),
    }));
}
