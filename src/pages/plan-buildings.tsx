import type { Structure } from "../../shared/plan.ts";
import { formatElevation, type UnitSystem } from "../../shared/units.ts";
import type { PlanFrame } from "./plan-frame.ts";
import { pathOf } from "./plan-paths.ts";

interface PlanBuildingsProps {
  readonly structures: readonly Structure[];
  readonly frame: PlanFrame;
  readonly system: UnitSystem;
}

/** About how wide one letter of a label is, and how far apart two lines stand, millimetres. */
const LETTER_MM = 1.4;
const LINE_MM = 3.2;

/** The buildings with name and floor: written inside where there is room, else above. */
export function PlanBuildings({ structures, frame, system }: PlanBuildingsProps) {
  return (
    <>
      {structures.map((structure) => (
        <Building key={structure.id} structure={structure} frame={frame} system={system} />
      ))}
    </>
  );
}

interface BuildingProps {
  readonly structure: Structure;
  readonly frame: PlanFrame;
  readonly system: UnitSystem;
}

function Building({ structure, frame, system }: BuildingProps) {
  const spots = structure.outline.map(frame.toSpot);
  const xs = spots.map((spot) => spot[0]);
  const ys = spots.map((spot) => spot[1]);
  const x = mean(xs);
  const lines = [structure.name];
  if (structure.floorM !== null) lines.push(`floor ${formatElevation(structure.floorM, system)}`);
  const longest = Math.max(...lines.map((line) => line.length)) * LETTER_MM;
  const fits =
    Math.max(...xs) - Math.min(...xs) > longest * 1.3 &&
    Math.max(...ys) - Math.min(...ys) > LINE_MM * (lines.length + 1);
  const firstY = fits
    ? mean(ys) - ((lines.length - 1) * LINE_MM) / 2 + 1
    : Math.min(...ys) - 1.2 - (lines.length - 1) * LINE_MM;
  return (
    <g>
      <path class="plan-building" d={pathOf(structure.outline, frame.toSpot, true)} />
      {lines.map((line, index) => (
        <text
          key={line}
          class={fits ? "plan-inside" : "plan-label"}
          x={x}
          y={firstY + index * LINE_MM}
          text-anchor="middle"
        >
          {line}
        </text>
      ))}
    </g>
  );
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
