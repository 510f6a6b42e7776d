import type { GroundSummary } from "../../shared/messages.ts";
import type { Plan } from "../../shared/plan.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { waterElevationAtGauge } from "../../shared/stage.ts";
import { formatElevation, formatLength, type UnitSystem } from "../../shared/units.ts";
import { Fact } from "../ui/fact.tsx";
import { Mark } from "../ui/icons.tsx";
import { LineWarning } from "./line-warning.tsx";

interface SheetHeadProps {
  readonly plan: Plan;
  readonly line: SizedLine;
  readonly letter: string;
  readonly ground: GroundSummary | null;
  readonly system: UnitSystem;
  /** When it was printed, in words. */
  readonly printed: string;
}

/** What the sheets are of: plan, alternative, forecast, crest, and what every elevation counts from. */
export function SheetHead({ plan, line, letter, ground, system, printed }: SheetHeadProps) {
  return (
    <header class="sheet-head">
      <div class="sheet-title">
        <Mark />
        <div>
          <h1>{plan.title}</h1>
          <p>
            Emergency sandbag {line.kind === "ring" ? "ring" : "line"}, alternative {letter}:{" "}
            {line.name}. Drystead, {printed}
          </p>
        </div>
      </div>
      <LineWarning line={line} system={system} />
      <dl class="facts">
        <Fact name="Forecast">{forecastWords(plan, system)}</Fact>
        <Fact name="Crest of the levee">
          <strong>{crestWords(line, system)}</strong>, freeboard{" "}
          {formatLength(plan.water.freeboardM, system)}
        </Fact>
        <Fact name="Elevations count from">{datumWords(plan, ground)}</Fact>
        <Fact name="Gauge and ground">{offsetWords(plan, system)}</Fact>
        <Fact name="Ground">{groundWords(line, ground, system)}</Fact>
      </dl>
    </header>
  );
}

function forecastWords({ water, gauge }: Plan, system: UnitSystem): string {
  const elevation = formatElevation(waterElevationAtGauge(water), system);
  if (water.by === "elevation") return `water surface at ${elevation}`;
  const at = gauge?.name ? ` at ${gauge.name}` : "";
  const stage = formatLength(water.stageM, system, 2);
  return `stage ${stage}${at}, gauge zero ${formatElevation(water.gaugeZeroM, system)}: water at ${elevation}`;
}

function crestWords(line: SizedLine, system: UnitSystem): string {
  const crests = line.stations.map((station) => station.crestM);
  const low = formatElevation(Math.min(...crests), system);
  const high = formatElevation(Math.max(...crests), system);
  return low === high ? high : `${low} to ${high}`;
}

function datumWords(plan: Plan, ground: GroundSummary | null): string {
  const stated = ground?.verticalDatum;
  const noted = plan.ground.datumNote;
  if (stated) return `${stated}, as the raster states${noted ? `; ${noted}` : ""}`;
  return noted ? `${noted}, as noted by hand` : "a vertical datum that the raster does not state";
}

function offsetWords({ water }: Plan, system: UnitSystem): string {
  if (water.by === "elevation") return "water given as an elevation in the ground's datum";
  if (water.datumOffsetM === null) return "taken as the same datum; no offset was stated";
  const note = water.datumNote ? ` (${water.datumNote})` : "";
  return `offset ${formatLength(water.datumOffsetM, system, 2)} from gauge to ground${note}`;
}

function groundWords(line: SizedLine, ground: GroundSummary | null, system: UnitSystem): string {
  const accuracy = `accuracy ±${formatLength(line.groundAccuracy.rmseM, system, 2)} (RMSE)`;
  if (!ground) return `not open; ${accuracy}`;
  return `${ground.name}, cells of ${formatLength(ground.cellXM, system, 2)}, ${accuracy}`;
}
