import proj4 from "proj4";
import { EMPTY_PLAN } from "../shared/defaults.ts";
import type { Alignment, LonLat, Plan, Structure } from "../shared/plan.ts";
import { DEMO_LEAVE, DEMO_TIME } from "./flood.ts";
import { BUILDINGS, CORNER, FLOW, GAUGE, onFarm, type Spot } from "./layout.ts";
import { TEACHING_CORNER } from "./teaching.ts";

const utm = proj4(
  "+proj=utm +zone=15 +datum=NAD83 +units=m +no_defs",
  "+proj=longlat +datum=WGS84",
);

/** Longitude and latitude, to nine decimals, of a place given in metres from a grid's lower left corner. */
function placed(corner: Spot, [east, north]: Spot): LonLat {
  const [lon, lat] = utm.forward([corner[0] + east, corner[1] + north]);
  return [round(lon!), round(lat!)];
}

function round(degrees: number): number {
  return Math.round(degrees * 1e9) / 1e9;
}

/** Longitude and latitude of a place on the demo site. */
export function placedOnSite(spot: Spot): LonLat {
  return placed(CORNER, spot);
}

type Drawn = Pick<Alignment, "id" | "name" | "kind"> & { readonly spots: readonly Spot[] };

function alignment(corner: Spot, { id, name, kind, spots }: Drawn): Alignment {
  return { id, name, kind, corners: spots.map((spot) => placed(corner, spot)), reachBreaksM: [] };
}

/** The ring as one draws it: close round the buildings, straight across the yard's open corner. */
const DRAWN_RING: readonly Spot[] = [
  onFarm(-42, -31),
  onFarm(37.7, -29),
  onFarm(38.5, -8),
  onFarm(29, 22),
  onFarm(9.8, 30),
  onFarm(-38, 30),
  onFarm(-42, 5),
];

/** The same yard by way of higher ground: sand ridge, natural levee, drive. */
const HIGH_GROUND_RING: readonly Spot[] = [
  onFarm(-54, -33),
  onFarm(-40, -47),
  onFarm(-2, -52),
  onFarm(24, -42),
  onFarm(38, -28),
  onFarm(38, -5),
  onFarm(28, -1),
  onFarm(14, 0),
  onFarm(10, 29.6),
  onFarm(-38, 30),
  onFarm(-50, 14),
  onFarm(-56, -5),
];

/** From road bank to road bank: along the natural levee, round the yard, back on the drive. */
const ROAD_BANK_LINE: readonly Spot[] = [
  onFarm(105, -54),
  onFarm(40, -56),
  onFarm(-40, -50),
  onFarm(-55, -35),
  onFarm(-55, 10),
  onFarm(-38, 30),
  onFarm(10, 30),
  onFarm(14, -1),
  onFarm(40, -2),
  onFarm(70, 4),
  [622, 352.5],
];

/** The demo: an invented farm at a forecast of 31.0 ft on an invented gauge whose zero is at 843.0 ft. */
export function demoPlan(bytes: number): Plan {
  const at = placedOnSite;
  return {
    ...EMPTY_PLAN,
    title: "Pellow farm, Oxlip Bend",
    structures: BUILDINGS.map(
      ({ name, floorM, outline }, index): Structure => ({
        id: `structure-${index + 1}`,
        name,
        floorM,
        outline: outline.map(at),
      }),
    ),
    alignments: [
      alignment(CORNER, { id: "a", name: "Drawn ring", kind: "ring", spots: DRAWN_RING }),
      alignment(CORNER, { id: "b", name: "By high ground", kind: "ring", spots: HIGH_GROUND_RING }),
      alignment(CORNER, {
        id: "c",
        name: "Tied to road bank",
        kind: "line",
        spots: ROAD_BANK_LINE,
      }),
    ],
    gauge: { name: "Wexmere River at Kiln Road", at: at(GAUGE) },
    flow: { from: at(FLOW[0]), to: at(FLOW[1]) },
    water: {
      ...EMPTY_PLAN.water,
      by: "stage",
      stageM: 9.4488,
      gaugeZeroM: 256.9464,
      datumOffsetM: 0,
      datumNote: "Gauge and terrain share the invented local height.",
      elevationM: 266.3952,
      fallPerM: 0.0003,
    },
    ground: { ...EMPTY_PLAN.ground, rmseM: 0.1 },
    practice: { ...EMPTY_PLAN.practice, people: 60 },
    time: DEMO_TIME,
    leave: DEMO_LEAVE,
    terrain: [{ name: "demo.tif", bytes }],
    chosenId: "a",
  };
}

/** A ring of 80 x 40 m on the tilted plane, its crest level with the ground 200 m east of the grid's edge. */
export function tiltedPlan(bytes: number): Plan {
  return teachingPlan("Tilted plane", "tilted.tif", bytes, 102, {
    house: [
      [90, 120],
      [110, 120],
      [110, 136],
      [90, 136],
    ],
    lines: [
      {
        id: "a",
        name: "Rectangle",
        kind: "ring",
        spots: [
          [60, 108],
          [140, 108],
          [140, 148],
          [60, 148],
        ],
      },
      {
        id: "b",
        name: "Tied to the slope",
        kind: "line",
        spots: [
          [204, 108],
          [60, 108],
          [60, 148],
          [204, 148],
        ],
      },
    ],
  });
}

/** A house 10 m from a step of 0.6 m in the ground: on the flat, and pulled up to the step. */
export function steppedPlan(bytes: number): Plan {
  const west = 96;
  const ring = (east: number): readonly Spot[] => [
    [west, 106],
    [east, 106],
    [east, 150],
    [west, 150],
  ];
  return teachingPlan("Step in the ground", "stepped.tif", bytes, 101.2, {
    house: [
      [102, 112],
      [118, 112],
      [118, 144],
      [102, 144],
    ],
    lines: [
      { id: "a", name: "On the low ground", kind: "ring", spots: ring(124) },
      { id: "b", name: "Over the step", kind: "ring", spots: ring(132) },
    ],
  });
}

interface Lesson {
  readonly house: readonly Spot[];
  readonly lines: readonly Drawn[];
}

function teachingPlan(
  title: string,
  file: string,
  bytes: number,
  crestM: number,
  lesson: Lesson,
): Plan {
  const outline = lesson.house.map((spot) => placed(TEACHING_CORNER, spot));
  return {
    ...EMPTY_PLAN,
    title,
    structures: [{ id: "structure-1", name: "House", floorM: null, outline }],
    alignments: lesson.lines.map((line) => alignment(TEACHING_CORNER, line)),
    ground: { ...EMPTY_PLAN.ground, rmseM: 0.1 },
    water: {
      ...EMPTY_PLAN.water,
      elevationM: crestM - EMPTY_PLAN.water.freeboardM,
      datumOffsetM: 0,
      datumNote: "Water and terrain share the classroom height.",
    },
    practice: { ...EMPTY_PLAN.practice, people: 60 },
    time: { ...EMPTY_PLAN.time!, shifts: 2 },
    terrain: [{ name: file, bytes }],
    chosenId: "a",
  };
}
