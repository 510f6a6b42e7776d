import type { Exported } from "../../shared/exports/exported.ts";
import { longestCellM } from "../../shared/ground-accuracy.ts";
import type { GroundSummary } from "../../shared/messages.ts";
import type { Plan } from "../../shared/plan.ts";
import { formatElevation, formatLength, type UnitSystem } from "../../shared/units.ts";
import { Fact } from "../ui/fact.tsx";

interface GivenPartProps {
  readonly of: Exported;
  readonly ground: GroundSummary | null;
}

/** For the office: the elevation data and the gauge that every figure rests on. */
export function GivenPart({ of, ground }: GivenPartProps) {
  const { plan, line, verticalDatum, system } = of;
  const accuracy = `accuracy ±${formatLength(line.groundAccuracy.rmseM, system, 2)} (RMSE)`;
  return (
    <section aria-label="Elevation data and gauge" class="sheet-whole">
      <h2>Elevation data and gauge</h2>
      <dl class="facts">
        <Fact name="Elevation data">
          {ground
            ? `${ground.name}, cells of ${formatLength(longestCellM(ground), system, 2)}, ${accuracy}`
            : `not open; ${accuracy}`}
        </Fact>
        <Fact name="Vertical datum">{verticalDatum}</Fact>
        <Fact name="Freeboard">{formatLength(plan.water.freeboardM, system)}</Fact>
        <Fact name="Gauge">{gaugeWords(plan, system)}</Fact>
      </dl>
    </section>
  );
}

function gaugeWords({ water }: Plan, system: UnitSystem): string {
  if (water.by === "elevation") return "not used: water is given as an elevation";
  const zero = `gauge zero ${formatElevation(water.gaugeZeroM, system)}`;
  if (water.datumOffsetM === null)
    return `${zero}; no datum offset stated, taken as the same datum`;
  const note = water.datumNote ? ` (${water.datumNote})` : "";
  return `${zero}, datum offset ${formatLength(water.datumOffsetM, system, 2)}${note}`;
}
