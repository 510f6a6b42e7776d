/**
 * Where things stand on the demo site. Positions are metres east and north of the raster's lower left
 * corner; everything here is invented.
 */
export type Spot = readonly [number, number];

export const SIZE_M = 1024;
/** Lower left corner in EPSG:26915, metres. */
export const CORNER: Spot = [420000, 4760000];

/** The farm is turned a little against the grid, as farms are. */
const FARM: Spot = [505, 335];
const TURN = (7 * Math.PI) / 180;

/** From the farm's own axes (metres from the middle of the yard) to the site. */
export function onFarm(along: number, across: number): Spot {
  return [
    FARM[0] + along * Math.cos(TURN) - across * Math.sin(TURN),
    FARM[1] + along * Math.sin(TURN) + across * Math.cos(TURN),
  ];
}

export interface Building {
  readonly name: string;
  readonly floorM: number;
  readonly outline: readonly Spot[];
}

export const BUILDINGS: readonly Building[] = [
  {
    name: "House",
    floorM: 266.9,
    outline: [
      onFarm(-38, -27),
      onFarm(-18, -27),
      onFarm(-18, -15),
      onFarm(-27, -15),
      onFarm(-27, -8),
      onFarm(-38, -8),
    ],
  },
  {
    name: "Barn",
    floorM: 266.2,
    outline: [onFarm(-34, 9), onFarm(6, 9), onFarm(6, 26), onFarm(-34, 26)],
  },
  {
    name: "Machine shed",
    floorM: 266.1,
    outline: [onFarm(4, -25), onFarm(34, -25), onFarm(34, -11), onFarm(4, -11)],
  },
];

/** Middle of the river, upstream to downstream. */
export function riverNorthM(eastM: number): number {
  return 364 - 135 * Math.cos(((eastM - 520) / SIZE_M) * 1.5 * Math.PI);
}

export const RIVER_HALF_WIDTH_M = 30;

/** The old channel: leaves the river upstream, passes behind the farm, ends at the road bank. */
export const OLD_CHANNEL: readonly Spot[] = [
  [60, 480],
  [190, 455],
  [330, 440],
  [450, 432],
  [560, 426],
  [660, 402],
  [800, 405],
  [1024, 440],
];

/** Field ditch from the back of the yard past its north-east corner into the old channel. */
export const DITCH: readonly Spot[] = [
  onFarm(52, -60),
  onFarm(45.6, -7.4),
  onFarm(28.1, 26.8),
  onFarm(14, 62),
  onFarm(8, 96),
];

/** Low sand ridge west of the farm, off the river's natural levee. */
export const SAND_RIDGE: readonly Spot[] = [
  onFarm(-120, -120),
  onFarm(-75, -62),
  onFarm(-58, -25),
  onFarm(-55, 15),
  onFarm(-52, 42),
];

/** Raised drive from the yard to the road. */
export const DRIVE: readonly Spot[] = [onFarm(8, -3), onFarm(40, -2), onFarm(70, 4), [622, 352]];

/** Middle of the road bank, river to north edge. */
export const ROAD: readonly Spot[] = [
  [604, 262],
  [612, 290],
  [622, 352],
  [640, 480],
  [690, 720],
  [740, 1024],
];

/** The same road south of the river. */
export const ROAD_SOUTH: readonly Spot[] = [
  [588, 190],
  [560, 0],
];

/** A farm pond the survey could not see: left without data. */
export const POND: { readonly at: Spot; readonly alongM: number; readonly acrossM: number } = {
  at: [300, 505],
  alongM: 26,
  acrossM: 15,
};

export const GAUGE: Spot = [598, 238];

/** Direction of the river's fall past the farm, upstream to downstream. */
export const FLOW: readonly [Spot, Spot] = [
  [425, 236],
  [570, 234],
];
