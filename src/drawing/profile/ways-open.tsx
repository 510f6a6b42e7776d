import "./ways-open.css";
import type { ClosureTime } from "../../../shared/time/types.ts";
import { LEFT_OPEN_SHORT } from "../../../shared/words/closures.ts";
import { textWidth } from "../text-width.ts";
import { middleWithin } from "./station-labels.ts";

interface WaysOpenProps {
  readonly closures: readonly Pick<ClosureTime, "fromM" | "toM">[];
  readonly x: (chainageM: number) => number;
  readonly fromM: number;
  readonly toM: number;
  readonly top: number;
  readonly bottom: number;
}

const TYPE_PX = 12;
/** Between its words and the ends of the plot. */
const BESIDE_PX = 3;
/** Least width at which a way is still seen, pixels. */
const LEAST_PX = 4;

/** The ways left open on a profile: a post at either side and what it is, so that it reads without color. */
export function WaysOpen({ closures, x, fromM, toM, top, bottom }: WaysOpenProps) {
  return closures
    .filter((each) => each.toM > fromM && each.fromM < toM)
    .map((each) => {
      const left = x(Math.max(fromM, each.fromM));
      const right = Math.max(left + LEAST_PX, x(Math.min(toM, each.toM)));
      const ends = [x(fromM) + BESIDE_PX, x(toM) - BESIDE_PX] as const;
      const middle = middleWithin((left + right) / 2, textWidth(LEFT_OPEN_SHORT, TYPE_PX), ends);
      return (
        <g key={each.fromM} class="way-open">
          <path d={`M${left} ${bottom}V${top}M${right} ${bottom}V${top}`} />
          <text x={middle} y={top - 3} text-anchor="middle">
            {LEFT_OPEN_SHORT}
          </text>
        </g>
      );
    });
}
