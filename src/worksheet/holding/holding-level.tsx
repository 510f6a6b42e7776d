import { formatElevation } from "../../../shared/units.ts";
import { levelsSpoken } from "../../../shared/words/holding.ts";
import type { HoldingNow } from "../../live/holding-now.ts";
import { unitSystem } from "../../live/screen.ts";
import { levelPicture } from "./holding-level.ts";

const LABEL_PX = 13;

/** The level inside by hour without pumps, between least and most, with the structure's level marked. */
export function HoldingLevel({ now }: { readonly now: HoldingNow }) {
  const picture = levelPicture(now.holding);
  const { inside, pumping } = now.holding;
  if (!picture || !inside) return null;
  const system = unitSystem.value;
  const level = (m: number) => formatElevation(m, system);
  const { width, height, structureY, outsideY, sumpY, soonestX, ticks } = picture;
  const apart = structureY === null || Math.abs(structureY - outsideY) > LABEL_PX;
  return (
    <svg
      class="holding-level"
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={`Level inside without pumps: ${levelsSpoken(pumping.withoutPumps, level)}`}
    >
      <path class="holding-level-band" d={picture.band} />
      <path class="holding-level-most" d={picture.most} />
      <path class="holding-level-least" d={picture.least} />
      <path class="holding-level-outside" d={`M4 ${outsideY}H292`} />
      {apart && (
        <text x="292" y={outsideY - 4} text-anchor="end">
          water outside
        </text>
      )}
      {structureY !== null && inside.structureM !== null && (
        <>
          <path class="holding-level-structure" d={`M4 ${structureY}H292`} />
          <text class="holding-level-wet" x="292" y={structureY - 4} text-anchor="end">
            water at building above {level(inside.structureM)}
          </text>
        </>
      )}
      {soonestX !== null && structureY !== null && (
        <circle class="holding-level-soonest" cx={soonestX} cy={structureY} r="3.5" />
      )}
      <path class="holding-level-axis" d={`M4 ${sumpY}H292`} />
      {ticks.map(({ hours, x }) => (
        <g key={hours}>
          <path class="holding-level-axis" d={`M${x} ${sumpY}v4`} />
          <text x={x} y={height - 4} text-anchor={hours === 0 ? "start" : "middle"}>
            {hours === 0 ? "0 h" : hours}
          </text>
        </g>
      ))}
    </svg>
  );
}
