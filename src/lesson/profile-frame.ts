import { lengthIn, lengthUnit } from "../../shared/units.ts";
import type { Box } from "../drawing/place-labels.ts";
import { axisFor } from "./axis.ts";
import type { Drawn } from "./shown.ts";

/** Where everything of the profile lies, pixels. */
export interface LessonFrame {
  readonly plot: Box;
  readonly stretch: { readonly fromM: number; readonly toM: number };
  x(chainageM: number): number;
  y(elevationM: number): number;
  /** How many times larger heights are drawn than lengths. */
  readonly exaggeration: number;
  readonly levels: readonly { readonly text: string; readonly y: number }[];
  readonly stations: readonly number[];
}

/** Room right of the plot for the names of the lines, in type sizes. */
const NAMES_EMS = 8.6;
const LEVELS_EMS = 3.9;

/** Lays out the profile; its axis grows with what is drawn now and before. */
export function lessonFrame(drawn: Drawn, widthPx: number, heightPx: number): LessonFrame {
  const { teaching, shape, before, typePx } = drawn;
  const { system, lengthM, room } = teaching;
  const plot = {
    left: LEVELS_EMS * typePx,
    right: widthPx - NAMES_EMS * typePx,
    top: 0.8 * typePx,
    bottom: heightPx - 2.1 * typePx,
  };
  const shapes = before ? [shape, before] : [shape];
  const axis = axisFor(
    [lengthIn(room.lowM, system), lengthIn(room.highM, system)],
    shapes.flatMap(({ topM, line }) =>
      [topM, ...line.walk.groundM].map((m) => lengthIn(m, system)),
    ),
    4,
  );
  const perLength = (plot.right - plot.left) / lengthIn(lengthM, system);
  const perHeight = (plot.bottom - plot.top) / (axis.to - axis.from);
  const atLevel = (level: number) => plot.bottom - (level - axis.from) * perHeight;
  const digits = lengthUnit(system) === "ft" ? 0 : 1;
  return {
    plot,
    stretch: { fromM: 0, toM: lengthM },
    x: (chainageM) => plot.left + lengthIn(chainageM, system) * perLength,
    y: (elevationM) => atLevel(lengthIn(elevationM, system)),
    exaggeration: perHeight / perLength,
    levels: axis.labels.map((level) => ({ text: level.toFixed(digits), y: atLevel(level) })),
    stations: Array.from(
      { length: Math.round(lengthM / teaching.markEveryM) + 1 },
      (_, i) => i * teaching.markEveryM,
    ),
  };
}
