import { useId } from "preact/hooks";
import type { Exported } from "../../shared/exports/exported.ts";
import { lengthFrom, lengthIn, type UnitSystem } from "../../shared/units.ts";
import { highestWords, profileKey, profileRows } from "../../shared/words/build-sheet.ts";
import { classLook } from "../drawing/class-bar.tsx";
import { Hatches } from "../drawing/hatches.tsx";
import { scaleNote } from "../drawing/profile/profile-frame.ts";
import { profilePaths } from "../drawing/profile/profile-paths.ts";
import { WaysOpen } from "../drawing/profile/ways-open.tsx";
import { everyIntervals, type MarkedStation, markedStations } from "./plan-stations.ts";

interface ProfileStripProps {
  readonly of: Exported;
  readonly fromM: number;
  readonly toM: number;
  readonly widthPx: number;
}

const LEFT_PX = 78;
const RIGHT_PX = 10;
const TOP_PX = 18;
const PLOT_PX = 88;
/** Rows under the plot: height, courses, ground, station. */
const ROWS_PX = [33, 19, 50, 19] as const;
/** Nearer to the highest place than this share of their distance a column gives way to it. */
const NEAR_SHARE = 0.75;
/** Least width of a column. */
const COLUMN_PX = 16.6;
/** What a character of a station's number takes with the space after it, and how much less a point does. */
const CHARACTER_PX = 9;
const POINT_LESS_PX = 5;
/** A height nearer to the foot of the plot than this is not written: it would be on the rule below. */
const FOOT_PX = 3;

/** Height of the strip with its rows. */
const STRIP_PX = TOP_PX + PLOT_PX + ROWS_PX.reduce((a, b) => a + b, 0) + 4;

/** The profile of a part of the line, and under it, station for station, what is built there. */
export function ProfileStrip({ of, fromM, toM, widthPx }: ProfileStripProps) {
  const { plan, line, system } = of;
  const id = useId();
  const plot = { left: LEFT_PX, right: widthPx - RIGHT_PX, top: TOP_PX, bottom: TOP_PX + PLOT_PX };
  const [low, high] = heights(of, fromM, toM);
  const x = (m: number) =>
    plot.left + ((m - fromM) / Math.max(1e-9, toM - fromM)) * (plot.right - plot.left);
  const y = (m: number) => plot.bottom - ((m - low) / (high - low)) * (plot.bottom - plot.top);
  const paths = profilePaths(line, plan.practice.limitM, { plot, stretch: { fromM, toM }, x, y });
  const exaggeration =
    (plot.bottom - plot.top) / (high - low) / ((plot.right - plot.left) / (toM - fromM));
  const highest = highestWords(line, system);
  const highestM = line.totals.greatestHeightAtM;
  const isHere = highest !== null && highestM >= fromM && highestM <= toM;
  return (
    <svg
      class="profile-strip"
      width={widthPx}
      height={STRIP_PX}
      viewBox={`0 0 ${widthPx} ${STRIP_PX}`}
      role="img"
      aria-label={`Profile of ${line.name}`}
    >
      <Hatches id={id} />
      <clipPath id={`${id}-plot`}>
        <rect
          x={plot.left}
          y={plot.top - 3}
          width={plot.right - plot.left}
          height={plot.bottom - plot.top + 3}
        />
      </clipPath>
      <g clip-path={`url(#${id}-plot)`}>
        <path class="strip-ground" d={paths.groundFill} />
        {paths.bands.map((d, index) => (
          <path key={index} {...classLook(index, id)} d={d} />
        ))}
        <path fill={`url(#${id}-hole)`} d={paths.unknownBand} />
        <path class="strip-ground-line" d={paths.groundLine} />
        <path class="strip-limit" d={paths.limitLine} />
        <path class="strip-water" d={paths.waterLine} />
        <path class="strip-top" d={paths.crestLine} />
      </g>
      {paths.gaps.map(({ fromPx, toPx }) => (
        <path key={fromPx} class="strip-gap" d={`M${fromPx} ${plot.bottom - 4}H${toPx}`} />
      ))}
      {line.cornersM
        .filter((m) => m >= fromM && m <= toM)
        .map((m) => (
          <circle key={m} class="strip-corner" cx={x(m)} cy={y(topAt(line, m))} r="3.4" />
        ))}
      {ticks(low, high, system)
        .filter((m) => plot.bottom - y(m) >= FOOT_PX)
        .map((m) => (
          <text key={m} x={plot.left - 6} y={y(m) + 4} text-anchor="end">
            {lengthIn(m, system).toFixed(system === "us" ? 0 : 1)}
          </text>
        ))}
      <WaysOpen
        closures={line.time?.closures ?? []}
        {...{ x, fromM, toM }}
        top={plot.top + 28}
        bottom={plot.bottom}
      />
      {isHere && <Highest words={highest} x={x(highestM)} plot={plot} isOver={isOver(of)} />}
      <text x={widthPx} y={12} text-anchor="end">
        {scaleNote(exaggeration)}
      </text>
      <Rows of={of} fromM={fromM} toM={toM} x={x} top={plot.bottom} widthPx={widthPx} />
    </svg>
  );
}

/** What the lines of the profile are, once on a page. */
export function ProfileKey({ of: { plan, system } }: { readonly of: Exported }) {
  const words = profileKey(plan, system);
  return (
    <ul class="profile-key">
      {(["top", "water", "limit", "ground"] as const).map((line) => (
        <li key={line}>
          <svg width="30" height="6" aria-hidden="true">
            <path class={line === "ground" ? "strip-ground-line" : `strip-${line}`} d="M0 3H30" />
          </svg>
          {words[line]}
        </li>
      ))}
    </ul>
  );
}

interface HighestProps {
  readonly words: string;
  readonly x: number;
  readonly plot: { readonly left: number; readonly right: number; readonly top: number };
  readonly isOver: boolean;
}

function Highest({ words, x, plot, isOver: over }: HighestProps) {
  const isLeft = x > (plot.left + plot.right) / 2 - 60;
  return (
    <>
      <path class="strip-rule" d={`M${x} ${plot.top - 14}V${plot.top}`} />
      <text
        class={over ? "strip-over" : "strip-figure"}
        x={isLeft ? x - 5 : x + 5}
        y={12}
        text-anchor={isLeft ? "end" : "start"}
      >
        {words}
      </text>
    </>
  );
}

interface RowsProps {
  readonly of: Exported;
  readonly fromM: number;
  readonly toM: number;
  readonly x: (m: number) => number;
  readonly top: number;
  readonly widthPx: number;
}

function Rows({ of, fromM, toM, x, top, widthPx }: RowsProps) {
  const { plan, line, system } = of;
  const most = Math.floor((x(toM) - x(fromM)) / COLUMN_PX);
  const every = everyIntervals(plan, toM - fromM, most);
  const columns = markedStations({ plan, line, system, fromM, toM }, every, NEAR_SHARE);
  const words = profileRows(system);
  const heads = [words.height, words.courses, words.ground, words.station];
  const tops = ROWS_PX.map((_, i) => top + 4 + ROWS_PX.slice(0, i).reduce((a, b) => a + b, 0));
  const bottom = tops[3]! + ROWS_PX[3];
  const numberX = ({ chainageM, station }: MarkedStation) =>
    Math.min(widthPx - numberPx(station) / 2, x(chainageM));
  const numbered = numberedOf(columns, numberX);
  return (
    <>
      {[...tops, bottom].map((y) => (
        <path key={y} class="strip-rule" d={`M0 ${y}H${widthPx}`} />
      ))}
      {heads.map((head, i) => (
        <text
          key={head}
          class={i === 0 ? "strip-figure" : ""}
          x="0"
          y={tops[i]! + ROWS_PX[i]! / 2 + 4}
        >
          {head}
        </text>
      ))}
      {columns.map((column) => (
        <Column key={column.chainageM} column={column} x={x(column.chainageM)} tops={tops} />
      ))}
      {numbered.map((column) => (
        <text
          key={column.chainageM}
          class={column.station.endsWith("00") ? "strip-figure" : ""}
          x={numberX(column)}
          y={tops[3]! + 13}
          text-anchor="middle"
        >
          {column.station}
        </text>
      ))}
      {columns
        .filter(({ isOver: over, isHighest }) => over && isHighest)
        .map(({ chainageM }) => (
          <rect
            key={chainageM}
            class="strip-box"
            x={x(chainageM) - 8}
            y={tops[0]! + 1}
            width="16"
            height={tops[3]! - tops[0]! - 2}
          />
        ))}
    </>
  );
}

interface ColumnProps {
  readonly column: MarkedStation;
  readonly x: number;
  readonly tops: readonly number[];
}

function Column({ column: { height, courses, ground, isOver: over }, x, tops }: ColumnProps) {
  const upright = (row: number, text: string, look: string) => (
    <text
      class={look}
      transform={`translate(${(x + 4.2).toFixed(1)} ${tops[row]! + ROWS_PX[row]! - 3}) rotate(-90)`}
    >
      {text}
    </text>
  );
  return (
    <>
      {upright(0, height ?? "–", over ? "strip-over" : "strip-figure")}
      <text class={over ? "strip-over" : ""} x={x} y={tops[1]! + 13.5} text-anchor="middle">
        {courses ?? "–"}
      </text>
      {upright(2, ground ?? "–", "")}
    </>
  );
}

function numberPx(station: string): number {
  return station.length * CHARACTER_PX - (station.includes(".") ? POINT_LESS_PX : 0);
}

/** Stations whose numbers have room: hundreds first. */
function numberedOf(
  columns: readonly MarkedStation[],
  x: (column: MarkedStation) => number,
): MarkedStation[] {
  const taken: MarkedStation[] = [];
  const ordered = [...columns].sort((a, b) => rank(a) - rank(b));
  for (const column of ordered) {
    const isFree = taken.every((each) => {
      const apartPx = (numberPx(each.station) + numberPx(column.station)) / 2;
      return Math.abs(x(each) - x(column)) >= apartPx;
    });
    if (isFree) taken.push(column);
  }
  return columns.filter((column) => taken.includes(column));
}

function rank({ station, isHighest }: MarkedStation): number {
  return isHighest ? 2 : station.endsWith("00") ? 0 : 1;
}

/** Top of levee at a chainage. */
function topAt({ walk }: Exported["line"], m: number): number {
  const after = walk.chainageM.findIndex((each) => each >= m);
  return walk.crestM.at(after)!;
}

/** Lowest and highest of a part of the line, with the height limit below the top of levee. */
function heights({ plan, line }: Exported, fromM: number, toM: number): [number, number] {
  const { chainageM, crestM, lowestGroundM, groundM } = line.walk;
  const known = (values: Float64Array) =>
    values.filter((m, i) => Number.isFinite(m) && chainageM[i]! >= fromM && chainageM[i]! <= toM);
  const crests = known(crestM);
  const top = Math.max(...crests);
  const low = Math.min(
    ...known(lowestGroundM),
    ...known(groundM),
    Math.min(...crests) - plan.practice.limitM,
  );
  const spanM = Math.max(top - low, 0.5);
  return [low - 0.12 * spanM, top + 0.06 * spanM];
}

function ticks(low: number, high: number, system: UnitSystem): number[] {
  const span = lengthIn(high - low, system);
  const step = [0.5, 1, 2, 5, 10, 20].find((each) => span / each <= 6) ?? 50;
  const first = Math.ceil(lengthIn(low, system) / step) * step;
  const count = Math.floor((lengthIn(high, system) - first) / step) + 1;
  return Array.from({ length: Math.max(0, count) }, (_, i) => lengthFrom(first + i * step, system));
}

function isOver({ line }: Exported): boolean {
  return line.totals.underLimitM < 0;
}
