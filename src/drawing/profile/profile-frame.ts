import { FOOT_M } from "../../../shared/constants.ts";
import type { SizedLine } from "../../../shared/sizing-types.ts";
import {
  formatStation,
  lengthFrom,
  lengthIn,
  lengthUnit,
  type UnitSystem,
} from "../../../shared/units.ts";
import { type LinearScale, linearScale } from "../linear-scale.ts";
import type { Box } from "../place-labels.ts";
import { textWidth } from "../text-width.ts";
import { markLanes } from "./profile-marks.ts";
import type { Stretch } from "./profile-stretch.ts";

/** Sizes of type and of the parts round the plot, pixels. */
export const PROFILE_TYPE_PX = 12;
const LANE_PX = 11;
/** On the screen: the lane above the plot, the room for what the lines are called at their ends, the stations. */
const STRIP_PX = 24;
const ENDS_PX = 106;
const FOOT_PX = 22;
const ABOVE_ON_SCREEN_PX = 5;
const AXIS_PX = 24;
const RIGHT_PX = 18;
const TOP_PX = 5;
/** Room above the crest for its label. */
const ABOVE_CREST_PX = 19;
const ROW_PX = 23;
const SCREEN_ROW_PX = 34;
/** What the names of the lanes under the stations take at their left. */
const LANE_LABEL_PX = 36;
/** Share of a limit's height that is shown of ground standing above the crest. */
const GROUND_ABOVE_SHARE = 0.5;

interface Tick {
  readonly px: number;
  readonly label: string;
}

/** Where everything of a long profile lies: scales from metres to pixels, ticks, the plot's box. */
export interface ProfileFrame {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly plot: Box;
  readonly stretch: Stretch;
  readonly unitSystem: UnitSystem;
  x(chainageM: number): number;
  /** NaN for NaN. */
  y(elevationM: number): number;
  chainageAt(xPx: number): number;
  /** How many times larger heights are drawn than lengths. */
  readonly exaggeration: number;
  readonly xTicks: readonly Tick[];
  /** Pixels of the stations between the labelled ones; empty when they would run together. */
  readonly stationPx: readonly number[];
  readonly yTicks: readonly Tick[];
  /** Rows of check marks above the plot, and the height of each. */
  readonly lanes: number;
  readonly rowPx: number;
  readonly layout: ProfileLayout;
}

/**
 * `paper` writes everything at its place, all lanes at once; `screen` has one lane above the plot, the names of the
 * lines at their right ends and the stations in the ground.
 */
type ProfileLayout = "paper" | "screen";

interface FrameRequest {
  readonly line: SizedLine;
  readonly limitM: number;
  readonly unitSystem: UnitSystem;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly stretch: Stretch;
  /** Room kept under the stations, pixels. */
  readonly underPx?: number;
  readonly layout?: ProfileLayout;
}

/** Lays out a long profile. The heights shown are those of the whole line, so that zooming along it moves nothing up or down. */
export function profileFrame(request: FrameRequest): ProfileFrame {
  const { line, unitSystem, widthPx, heightPx, stretch, underPx = 0, layout = "paper" } = request;
  const isScreen = layout === "screen";
  const lanes = isScreen ? 1 : markLanes(line.checks, line.totals.lengthM, widthPx, heightPx);
  const rowPx = isScreen ? STRIP_PX : LANE_PX;
  const top = (isScreen ? 0 : TOP_PX) + lanes * rowPx;
  const bottom = Math.max(top + 10, heightPx - (isScreen ? 0 : AXIS_PX) - underPx);
  const footY = isScreen ? Math.max(top + 8, bottom - FOOT_PX) : bottom;
  const abovePx = isScreen ? ABOVE_ON_SCREEN_PX : ABOVE_CREST_PX;
  const ys = heights(request, footY - top, abovePx);
  const rows = Math.max(2, Math.floor((footY - top) / (isScreen ? SCREEN_ROW_PX : ROW_PX)));
  const yTicks = elevationTicks(
    ys,
    rows,
    unitSystem,
    top,
    footY,
    isScreen ? MOST_LABELED : Infinity,
  );
  const least = underPx > 0 ? LANE_LABEL_PX : 20;
  const left =
    Math.ceil(Math.max(...yTicks.map(({ label }) => textWidth(label, PROFILE_TYPE_PX)), least)) +
    16;
  const right = Math.max(left + 10, widthPx - (isScreen ? ENDS_PX : RIGHT_PX));
  const xs = linearScale(
    [lengthIn(stretch.fromM, unitSystem), lengthIn(stretch.toM, unitSystem)],
    [left, right],
  );
  const x = (chainageM: number) => xs(lengthIn(chainageM, unitSystem));
  const scale = linearScale(ys, [footY, top]);
  const y = (elevationM: number) => scale(elevationM);
  const pxPerM = (right - left) / Math.max(1e-9, stretch.toM - stretch.fromM);
  return {
    widthPx,
    heightPx,
    plot: { left, top, right, bottom },
    stretch,
    unitSystem,
    x,
    y,
    chainageAt: (px) => lengthFrom(xs.invert(px), unitSystem),
    exaggeration: (footY - top) / (ys[1] - ys[0]) / pxPerM,
    xTicks: stationTicks(xs, unitSystem),
    stationPx: stationMarks(line, stretch, x),
    yTicks,
    lanes,
    rowPx,
    layout,
  };
}

/** What is written about the scale, e.g. "heights drawn 12 times". */
export function scaleNote(exaggeration: number): string {
  const digits = exaggeration < 9.95 ? 1 : 0;
  const times = exaggeration.toFixed(digits).replace(/\.0$/, "");
  return times === "1" ? "true scale" : `vertical exaggeration ${times}x`;
}

function heights(
  { line, limitM, layout }: FrameRequest,
  plotPx: number,
  aboveCrestPx: number,
): [number, number] {
  const { crestM, groundM, lowestGroundM } = line.walk;
  const isScreen = layout === "screen";
  let lowCrest = Infinity;
  let highCrest = -Infinity;
  let low = Infinity;
  let high = -Infinity;
  for (let i = 0; i < crestM.length; i++) {
    lowCrest = Math.min(lowCrest, crestM[i]!);
    highCrest = Math.max(highCrest, crestM[i]!);
    const ground = groundM[i]!;
    const lowest = lowestGroundM[i]!;
    if (ground < low) low = ground;
    if (lowest < low) low = lowest;
    if (ground > high) high = ground;
  }
  const stepM = limitM / 8;
  const ceiling = Math.min(high, highCrest + limitM * GROUND_ABOVE_SHARE);
  const least = Math.min(low, lowCrest - limitM);
  const bottom = isScreen
    ? least - limitM * 0.04
    : Math.floor((least - limitM * 0.2) / stepM) * stepM;
  const spanM = Math.max(highCrest, ceiling) - bottom;
  const abovePx = Math.min(aboveCrestPx, plotPx / 3);
  const crestRoomM = ((highCrest - bottom) * abovePx) / Math.max(1, plotPx - abovePx);
  return [bottom, Math.max(highCrest + crestRoomM, bottom + spanM + limitM * 0.06)];
}

/** Of more ticks than these, every second one has its figure on the screen. */
const MOST_LABELED = 3;

function elevationTicks(
  range: [number, number],
  rows: number,
  unitSystem: UnitSystem,
  top: number,
  bottom: number,
  mostLabeled: number,
): Tick[] {
  const ys = linearScale(
    [lengthIn(range[0], unitSystem), lengthIn(range[1], unitSystem)],
    [bottom, top],
  );
  const decimals = ys.decimals(rows);
  const values = ys.ticks(rows).filter((value) => ys(value) >= top + 5 && ys(value) <= bottom - 4);
  const last = values.length - 1;
  const isLabeled = (index: number) => last < mostLabeled || (last - index) % 2 === 0;
  return values.map((value, index) => ({
    px: ys(value),
    label: isLabeled(index)
      ? `${value.toFixed(decimals).replace("-", "−")}${index === last ? ` ${lengthUnit(unitSystem)}` : ""}`
      : "",
  }));
}

function stationTicks(xs: LinearScale, unitSystem: UnitSystem): Tick[] {
  const [from, to] = xs.domain;
  const labelPx =
    textWidth(stationLabel(lengthFrom(to, unitSystem), unitSystem), PROFILE_TYPE_PX) + 36;
  const [left, right] = xs.range;
  const values = xs.ticks(Math.max(1, Math.floor((right - left) / labelPx)));
  const whole = values.filter((value) => Math.abs(value - Math.round(value)) < 1e-6);
  return whole
    .filter((value) => value >= from - 1e-6 && value <= to + 1e-6)
    .map((value) => ({
      px: xs(value),
      label: stationLabel(lengthFrom(value, unitSystem), unitSystem),
    }));
}

function stationLabel(chainageM: number, unitSystem: UnitSystem): string {
  return formatStation(chainageM, unitSystem, 0);
}

function stationMarks(
  line: SizedLine,
  { fromM, toM }: Stretch,
  x: (chainageM: number) => number,
): number[] {
  const marks = line.stations
    .filter(({ chainageM }) => chainageM >= fromM && chainageM <= toM)
    .map(({ chainageM }) => x(chainageM));
  const spread = marks.length > 1 ? (marks.at(-1)! - marks[0]!) / (marks.length - 1) : 0;
  return spread >= 5 ? marks : [];
}

/** The limit in words, as its line is labelled: "4 ft below top of levee". */
export function limitNote(limitM: number, unitSystem: UnitSystem): string {
  const isWholeFeet = Math.abs(limitM / FOOT_M - Math.round(limitM / FOOT_M)) < 1e-6;
  const digits = unitSystem === "us" ? (isWholeFeet ? 0 : 1) : 2;
  return `${lengthIn(limitM, unitSystem).toFixed(digits)} ${lengthUnit(unitSystem)} below top of levee`;
}
