import "./plan-drawing.css";
import type { Position } from "geojson";
import { useId } from "preact/hooks";
import { leveeShapes } from "../../shared/line-shapes/levee-shapes.ts";
import type { LonLat, Plan } from "../../shared/plan.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { classLook } from "../drawing/class-bar.tsx";
import { stationMarks } from "../drawing/line/station-marks.ts";
import { waterSideIn } from "../drawing/line/water-side.ts";
import type { Box } from "../drawing/place-labels.ts";
import { PlanBuildings } from "./plan-buildings.tsx";
import { type PlanFrame, planFrame } from "./plan-frame.ts";
import { pathOf, pathOfShape } from "./plan-paths.ts";
import { nameBoxes, PlanReaches } from "./plan-reaches.tsx";
import { NorthArrow, ScaleBar } from "./plan-scale-marks.tsx";

interface PlanDrawingProps {
  readonly plan: Plan;
  readonly line: SizedLine;
  readonly system: UnitSystem;
  /** Most room on the paper, millimetres. */
  readonly room: { readonly widthMm: number; readonly heightMm: number };
}

const PX_MM = 25.4 / 96;
const TICK_MM = 1.6;
const LABEL_MM = 5;
/** Half the width of a station's label, and its height, millimetres. */
const LABEL_HALF_MM = 4;
const LABEL_HIGH_MM = 2.4;

/** The line on the ground, to scale: base width by height class, stations, buildings, no-go areas, north and scale. */
export function PlanDrawing({ plan, line, system, room }: PlanDrawingProps) {
  const frame = planFrame(plan, line, room, system);
  const { widthMm, heightMm } = frame;
  return (
    <svg
      class="plan-drawing"
      width={`${widthMm}mm`}
      height={`${heightMm}mm`}
      viewBox={`0 0 ${widthMm} ${heightMm}`}
      role="img"
      aria-label={`Plan of ${line.name}, ${frame.scale.words}, north up`}
    >
      <Site plan={plan} frame={frame} />
      <Levee plan={plan} line={line} frame={frame} />
      <PlanReaches line={line} side={waterSideIn(plan, line.id)} frame={frame} />
      <PlanBuildings structures={plan.structures} frame={frame} system={system} />
      <Stations plan={plan} line={line} frame={frame} system={system} />
      <NorthArrow xMm={widthMm - 7} yMm={9} />
      <ScaleBar scale={frame.scale} xMm={4} yMm={heightMm - 4} />
    </svg>
  );
}

interface PartProps {
  readonly plan: Plan;
  readonly frame: PlanFrame;
}

function Site({ plan, frame }: PartProps) {
  const id = useId();
  return (
    <>
      <StripePattern id={`${id}-no-go`} everyMm={2.4} stripeMm={0.25} stripe="plan-no-go-line" />
      {plan.noGo.map((area) => (
        <path
          key={area.id}
          class="plan-no-go"
          d={pathOf(area.outline, frame.toSpot, true)}
          fill={`url(#${id}-no-go)`}
        />
      ))}
    </>
  );
}

function Levee({ plan, line, frame }: PartProps & { readonly line: SizedLine }) {
  const id = useId();
  const alternative = plan.alignments.find((each) => each.id === line.id);
  const corners = alternative?.corners ?? [];
  const shapes = leveeShapes(line, plan.practice.limitM).features;
  return (
    <>
      <StripePattern id={`${id}-over`} everyMm={1.5} stripeMm={0.85} stripe="hatch-over" />
      {shapes.map(({ properties, geometry }, index) => {
        const d = pathOfShape(geometry, frame.toSpot);
        if (properties?.kind === "strip") {
          const look = classLook(properties.heightClass as number, id);
          return <path key={d || index} {...look} d={d} stroke="none" />;
        }
        return <path key={d || index} class={`plan-${properties?.kind}`} d={d} />;
      })}
      <path class="plan-centre" d={pathOf(corners, frame.toSpot, line.kind === "ring")} />
      {corners.map((corner) => {
        const [x, y] = frame.toSpot(corner);
        return <circle key={String(corner)} class="plan-corner" cx={x} cy={y} r="0.8" />;
      })}
    </>
  );
}

interface StripePatternProps {
  readonly id: string;
  readonly everyMm: number;
  readonly stripeMm: number;
  /** Class of the stripes. */
  readonly stripe: string;
}

function StripePattern({ id, everyMm, stripeMm, stripe }: StripePatternProps) {
  return (
    <pattern
      id={id}
      width={everyMm}
      height={everyMm}
      patternUnits="userSpaceOnUse"
      patternTransform="rotate(45)"
    >
      <rect class="hatch-paper" width={everyMm} height={everyMm} />
      <rect class={stripe} width={stripeMm} height={everyMm} />
    </pattern>
  );
}

interface StationsProps {
  readonly plan: Plan;
  readonly line: SizedLine;
  readonly frame: PlanFrame;
  readonly system: UnitSystem;
}

function Stations({ plan, line, frame, system }: StationsProps) {
  const side = waterSideIn(plan, line.id);
  const marks = stationMarks(line, frame.scale.mPerMm * PX_MM, system, side).features;
  const taken = nameBoxes({ line, side, frame });
  return (
    <>
      {marks.map(({ properties, geometry }) => {
        const at = (geometry as { coordinates: Position }).coordinates as unknown as LonLat;
        const [x, y] = frame.toSpot(at);
        const bearing = ((properties?.bearing as number) * Math.PI) / 180;
        const [east, south] = [Math.sin(bearing), -Math.cos(bearing)];
        const [labelX, labelY] = [x + east * LABEL_MM, y + south * (LABEL_MM - 1.4) + 0.9];
        return (
          <g key={properties?.text}>
            <path
              class="plan-tick"
              d={`M${x} ${y}l${(east * TICK_MM).toFixed(2)} ${(south * TICK_MM).toFixed(2)}`}
            />
            {isFree(taken, labelX, labelY) && (
              <text class="plan-label" x={labelX} y={labelY} text-anchor="middle">
                {properties?.text}
              </text>
            )}
          </g>
        );
      })}
    </>
  );
}

/** Whether a station's label stands clear of the names of reaches. */
function isFree(taken: readonly Box[], xMm: number, yMm: number): boolean {
  return taken.every(
    ({ left, right, top, bottom }) =>
      xMm + LABEL_HALF_MM < left ||
      xMm - LABEL_HALF_MM > right ||
      yMm < top ||
      yMm - LABEL_HIGH_MM > bottom,
  );
}
