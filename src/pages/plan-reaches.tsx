import type { Position } from "geojson";
import type { LonLat } from "../../shared/plan.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { EDGE_DASHES, reachShapes } from "../drawing/line/reach-shapes.ts";
import type { Box } from "../drawing/place-labels.ts";
import { textWidth } from "../drawing/text-width.ts";
import type { PlanFrame } from "./plan-frame.ts";
import { pathOfShape } from "./plan-paths.ts";

interface PlanReachesProps {
  readonly line: SizedLine;
  /** The water's side, left (+1) or right (-1) of chainage. */
  readonly side: 1 | -1;
  readonly frame: PlanFrame;
}

const EDGE_MM = 0.6;
const TYPE_MM = 3.2;

/** Reaches that are built otherwise, on paper: their edges, their ends and their names. */
export function PlanReaches({ line, side, frame }: PlanReachesProps) {
  return (
    <>
      {reachShapes(line, side).features.map(({ properties, geometry }, index) => {
        const key = `${properties?.kind} ${index}`;
        if (properties?.kind === "label") {
          const at = (geometry as { coordinates: Position }).coordinates as unknown as LonLat;
          return <Name key={key} at={frame.toSpot(at)} {...(properties as NameLook)} />;
        }
        const dashes = EDGE_DASHES[properties?.pattern as number]?.map((each) => each * EDGE_MM);
        return (
          <path
            key={key}
            class={`plan-reach-${properties?.kind}`}
            d={pathOfShape(geometry, frame.toSpot)}
            stroke-dasharray={dashes?.join(" ")}
          />
        );
      })}
    </>
  );
}

/** The room that the names of reaches take on the paper, millimetres: other words keep out of it. */
export function nameBoxes({ line, side, frame }: PlanReachesProps): readonly Box[] {
  return reachShapes(line, side)
    .features.filter(({ properties }) => properties?.kind === "label")
    .map(({ properties, geometry }) => {
      const at = (geometry as { coordinates: Position }).coordinates as unknown as LonLat;
      const { text, across, x, y } = placed(frame.toSpot(at), properties as NameLook);
      const width = textWidth(text, TYPE_MM);
      const left = across === "start" ? x : across === "end" ? x - width : x - width / 2;
      return { left, right: left + width, top: y - TYPE_MM, bottom: y };
    });
}

interface NameLook {
  readonly text: string;
  readonly anchor: string;
  readonly offset: readonly [number, number];
}

function Name({ at, ...look }: NameLook & { at: readonly [number, number] }) {
  const { text, across, x, y } = placed(at, look);
  return (
    <text class="plan-label plan-reach-name" x={x} y={y} text-anchor={across}>
      {text}
    </text>
  );
}

function placed([x, y]: readonly [number, number], { text, anchor, offset }: NameLook) {
  const across = anchor.includes("left") ? "start" : anchor.includes("right") ? "end" : "middle";
  const down = anchor.includes("top") ? 1 : anchor.includes("bottom") ? 0 : 0.5;
  return {
    text,
    across,
    x: x + offset[0] * TYPE_MM,
    y: y + (offset[1] + 0.75 * down) * TYPE_MM,
  } as const;
}
