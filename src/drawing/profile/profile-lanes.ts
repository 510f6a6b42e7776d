import { hasOtherSections, isStandard } from "../../../shared/reaches.ts";
import type { Reach, SizedLine } from "../../../shared/sizing-types.ts";
import type { ClosureTime, LineTime, WorkStretch } from "../../../shared/time/types.ts";
import {
  doneShare,
  isOvertopped,
  type WorkTone,
  workTone,
} from "../../../shared/time/work-tone.ts";
import type { UnitSystem } from "../../../shared/units.ts";
import { closeByWords, LEFT_OPEN_SHORT } from "../../../shared/words/closures.ts";
import { stationsWords, stepNames } from "../../../shared/words/crew-parts.ts";
import { reachTitle } from "../../../shared/words/profile.ts";
import { workWords } from "../../../shared/words/work.ts";
import { textWidth } from "../text-width.ts";
import type { ProfileFrame } from "./profile-frame.ts";

/** Height of a lane with the room above it, pixels; on a low drawing the smaller one. */
const LANE_PX = 17;
const LOW_LANE_PX = 15;
const LOW_ROOM_PX = 170;
const GAP_PX = 2;
/** Size of its type, and on paper the smaller one that it takes when that lets more be read. */
const TYPE_PX = 12;
const SMALL_TYPE_PX = 9;
/** Of the lane above the plot on the screen. */
const STRIP_LANE_PX = 19;
const PAD_PX = 1;
/** Under the last lane. */
const FOOT_PX = 3;

/** A part of a lane, pixels. */
export interface LaneCell {
  readonly key: string;
  readonly fromPx: number;
  readonly toPx: number;
  /** What fits of its words; empty when nothing does. */
  readonly text: string;
  readonly title: string;
  readonly tone: WorkTone | "overtopped" | "standard" | "other" | "over" | "open";
  /** How much of it is done at the moment looked at, 0..1; null when no moment is. */
  readonly doneShare: number | null;
  /** True where it is built over the limit of its levee type: it is hatched. */
  readonly isOver: boolean;
}

/** A row of words under the stations. */
export interface Lane {
  readonly kind: "sections" | "work";
  /** Said at its left. */
  readonly label: string;
  readonly topPx: number;
  readonly heightPx: number;
  /** Size of the type in its cells. */
  readonly typePx: number;
  readonly cells: readonly LaneCell[];
}

/** What is to be shown under the stations. */
export interface LaneOptions {
  /** The work to show; null for none. */
  readonly time: LineTime | null;
  /** Hours after the start of work that are looked at; null for none. */
  readonly hour: number | null;
}

/** Room that the lanes of a line take under the stations, pixels: none when they have nothing to say. The work is not under them on the screen. */
export function lanesPx(line: SizedLine, { time }: LaneOptions, roomPx: number): number {
  const rows = (hasOtherSections(line) ? 1 : 0) + (hasWork(time) ? 1 : 0);
  return rows === 0 ? 0 : rows * laneHeightPx(roomPx) + FOOT_PX;
}

/** The lanes of a line, top down; on the screen that of the work is above the plot. */
export function profileLanes(
  line: SizedLine,
  frame: ProfileFrame,
  { time, hour }: LaneOptions,
): Lane[] {
  const { unitSystem, heightPx, plot, layout } = frame;
  const eachPx = laneHeightPx(heightPx);
  const lanes: Omit<Lane, "topPx" | "heightPx">[] = [];
  const strip: Lane[] = [];
  if (hasOtherSections(line)) {
    const cells = line.reaches.map((reach, index) => reachCell(reach, index, unitSystem));
    lanes.push({ kind: "sections", label: "Type", ...placed(cells, frame) });
  }
  if (hasWork(time)) {
    const cells = [
      ...time.stretches.map((each) => workCell(each, time, hour, unitSystem)),
      ...time.closures.map((each) => openCell(each, unitSystem)),
    ];
    const work = { kind: "work", label: "Build", ...placed(cells, frame) } as const;
    const topPx = plot.top - STRIP_LANE_PX - 1;
    if (layout === "screen") strip.push({ ...work, label: "", topPx, heightPx: STRIP_LANE_PX });
    else lanes.push(work);
  }
  const top = heightPx - FOOT_PX - lanes.length * eachPx;
  const under = lanes.map((lane, row) => ({
    ...lane,
    topPx: top + row * eachPx + GAP_PX / 2,
    heightPx: eachPx - GAP_PX,
  }));
  return [...strip, ...under];
}

type Written = Pick<Lane, "typePx" | "cells">;

type Cell = Omit<LaneCell, "fromPx" | "toPx" | "text"> & {
  readonly fromM: number;
  readonly toM: number;
  /** What may be written in it, the fullest first. */
  readonly texts: readonly string[];
};

function reachCell(reach: Reach, index: number, system: UnitSystem): Cell {
  const { fromM, toM, sectionName, totals } = reach;
  const isOver = totals.lengthOverLimitM > 0;
  return {
    ...{ key: `reach-${index}`, fromM, toM, doneShare: null, isOver },
    texts: [`${index + 1} ${sectionName}`, `${index + 1}`],
    title: reachTitle(reach, index + 1, system),
    tone: isOver ? "over" : isStandard(reach) ? "standard" : "other",
  };
}

function hasWork(time: LineTime | null): time is LineTime {
  return time !== null && time.stretches.length > 0;
}

function workCell(
  stretch: WorkStretch,
  time: LineTime,
  hour: number | null,
  system: UnitSystem,
): Cell {
  const { fromM, toM, isOnHold } = stretch;
  const names = stepNames(stretch, time);
  return {
    ...{ key: `work-${fromM}`, fromM, toM },
    texts: [names.join(" "), names[0]!],
    title: workWords(stretch, time, system),
    tone: isOnHold ? "over" : isOvertopped(stretch) ? "overtopped" : workTone(stretch),
    doneShare: hour === null || isOnHold ? null : doneShare(stretch, hour),
    isOver: isOnHold,
  };
}

function openCell({ fromM, toM, ...closure }: ClosureTime, system: UnitSystem): Cell {
  const by = closeByWords(closure, system);
  const until = by === null ? "" : ` until ${by}`;
  return {
    ...{ key: `open-${fromM}`, fromM, toM, doneShare: null, isOver: false, tone: "open" },
    texts: [LEFT_OPEN_SHORT],
    title: `${stationsWords({ fromM, toM }, system)}, ${LEFT_OPEN_SHORT}${until}.`,
  };
}

/** The cells in view, written in the larger type where that leaves no more of them bare than the smaller one. */
function placed(cells: readonly Cell[], frame: ProfileFrame): Written {
  const large = written(cells, frame, TYPE_PX);
  if (frame.layout === "screen") return large;
  const small = written(cells, frame, SMALL_TYPE_PX);
  const bare = (lane: Written) => lane.cells.filter(({ text }) => text === "").length;
  return bare(large) <= bare(small) ? large : small;
}

function written(cells: readonly Cell[], { plot, x }: ProfileFrame, typePx: number): Written {
  const inView = cells.flatMap(({ fromM, toM, texts, ...cell }) => {
    const fromPx = Math.max(plot.left, x(fromM));
    const toPx = Math.min(plot.right, x(toM));
    if (toPx - fromPx < 0.5) return [];
    const roomPx = toPx - fromPx - 2 * PAD_PX;
    const text = texts.find((each) => textWidth(each, typePx) <= roomPx) ?? "";
    return [{ ...cell, fromPx, toPx, text }];
  });
  return { typePx, cells: inView };
}

function laneHeightPx(roomPx: number): number {
  return roomPx < LOW_ROOM_PX ? LOW_LANE_PX : LANE_PX;
}
