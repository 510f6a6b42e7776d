import "./watch.css";
import { mustFixCount } from "../../shared/completeness.ts";
import { timeOf } from "../../shared/defaults.ts";
import type { Exported } from "../../shared/exports/exported.ts";
import type { Holding, Inside, PumpOption } from "../../shared/holding/types.ts";
import type { LonLat, Plan } from "../../shared/plan.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { riseOverPlanM } from "../../shared/time/forecast-end.ts";
import {
  formatElevation,
  formatFlow,
  formatFlowRange,
  formatFlowUpTo,
  formatLength,
  formatStation,
  lengthUnit,
  type UnitSystem,
} from "../../shared/units.ts";
import type { TracedAlternative, TracedStructure } from "../../shared/water-types.ts";
import { PATROL, watchSigns } from "../../shared/words/cautions.ts";
import { overtopsButForGap } from "../../shared/words/ground-gap.ts";
import { spanWords } from "../../shared/words/holding.ts";
import { insideCapWords } from "../../shared/words/inside.ts";
import { leaveWords } from "../../shared/words/leave.ts";
import { NOT_TRACED, shortCautions } from "../../shared/words/line-state.ts";
import { pumpCountWords, pumpWords } from "../../shared/words/pumps.ts";
import { unitsOf } from "../../shared/words/units.ts";
import { nearestChainage } from "../drawing/line/along.ts";
import { BuildingsPart } from "./buildings-part.tsx";
import { Sheet } from "./sheet.tsx";
import type { SheetFrame } from "./title-block.tsx";
import { watchPlaces } from "./watch-places.ts";

interface WatchSheetProps extends SheetFrame {
  readonly holding: Holding;
  /** The water with the line built; null while that is not known. */
  readonly traced: TracedAlternative | null;
  /** The buildings without any levee; empty while that is not known. */
  readonly structures: readonly TracedStructure[];
}

/** For the crew on the levee: when people leave, where to look, what for, and the pumps. */
export function WatchSheet({ holding, traced, structures, ...frame }: WatchSheetProps) {
  const { of } = frame;
  const { plan, line, system } = of;
  const pieces = [
    <Leave of={of} traced={traced} />,
    <Patrol of={of} />,
    <Places line={line} holding={holding} traced={traced} system={system} />,
    <Signs system={system} />,
    <BuildingsPart plan={plan} structures={structures} traced={traced} system={system} />,
    <Pumps plan={plan} line={line} holding={holding} system={system} />,
    <Cautions of={of} />,
  ];
  return (
    <Sheet
      {...frame}
      name="Watch and pumps"
      pieces={pieces.map((piece) => <div class="watch">{piece}</div>)}
    />
  );
}

function Patrol({ of: { plan, system } }: { readonly of: Exported }) {
  return (
    <>
      <h3>Patrol</h3>
      <ul class="sheet-caution-list">
        {PATROL.map(({ text, source }) => (
          <li key={text}>
            {text} <small>{source}</small>
          </li>
        ))}
      </ul>
      <p class="watch-blanks">
        <Blank
          label={plan.water.by === "stage" ? "Begin at stage" : "Begin at elevation"}
          unit={lengthUnit(system)}
        />{" "}
        <Blank label="Every" unit="h" /> <Blank label="Report to" wide />
        <Blank label="Phone" wide />
      </p>
    </>
  );
}

function Cautions({ of }: { readonly of: Exported }) {
  return (
    <>
      <h3>Hazards, the deadliest first</h3>
      <ul class="sheet-cautions">
        {shortCautions(of).map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </>
  );
}

interface LeaveProps {
  readonly of: Exported;
  readonly traced: TracedAlternative | null;
}

function Leave({ of: { plan, line, checks, system }, traced }: LeaveProps) {
  const isStage = plan.water.by === "stage";
  const freeboard = formatLength(plan.water.freeboardM, system);
  const riseM = line.time ? riseOverPlanM(line.time) : 0;
  return (
    <div class="watch-leave">
      <p>
        <strong>{leaveWords(plan, system)}</strong>{" "}
        {plan.leave ? (
          plan.leave.note
        ) : (
          <>
            <Blank label={isStage ? "stage" : "elevation"} unit={lengthUnit(system)} />{" "}
            <Blank label="decided by" wide />
          </>
        )}
      </p>
      <p>
        {plan.leave ? "Leave then, or sooner: it is set by" : "Set it now, by"} the exit road and
        the time people need to get out, never by the level at which the levee overtops. Be ready to
        give the levee up. <small>LSU, FFO-96</small>
      </p>
      <p>
        {traced
          ? `By the plan this line ${overtopsButForGap(traced, line, plan, system, mustFixCount(checks))}. `
          : `${NOT_TRACED} `}
        The top of levee is {freeboard} above the sized-for water; freeboard is not protection.
        {riseM > 0 &&
          ` The forecast crest is ${formatLength(riseM, system)} above the sized-for water.`}
      </p>
    </div>
  );
}

interface BlankProps {
  readonly label: string;
  readonly unit?: string;
  readonly wide?: boolean;
}

/** A line to write on. */
function Blank({ label, unit, wide }: BlankProps) {
  return (
    <span class="watch-blank" data-wide={wide === true}>
      {label} <span class="watch-rule" /> {unit}
    </span>
  );
}

interface OfLineProps {
  readonly line: SizedLine;
  readonly holding: Holding;
  readonly system: UnitSystem;
}

function Places(props: OfLineProps & { readonly traced: TracedAlternative | null }) {
  const { line, holding, traced, system } = props;
  const places = watchPlaces(line, holding, traced, system);
  if (places.length === 0) return null;
  return (
    <>
      <h3>Where to stop and look</h3>
      <table class="sheet-table watch-table">
        <thead>
          <tr>
            <th scope="col">Station</th>
            <th scope="col">
              Place<small>latitude, longitude</small>
            </th>
            <th scope="col">Because</th>
            <th scope="col" class="watch-seen">
              Seen, hour
            </th>
          </tr>
        </thead>
        <tbody>
          {places.map(({ chainageM, at, reasons }) => (
            <tr key={chainageM}>
              <td>{formatStation(chainageM, system)}</td>
              <td>{placeWords(at)}</td>
              <td>{reasons.join("; ")}</td>
              <td class="watch-seen" />
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

function placeWords([lon, lat]: LonLat): string {
  return `${lat.toFixed(5)}, ${lon.toFixed(5)}`;
}

function Signs({ system }: { readonly system: UnitSystem }) {
  return (
    <>
      <h3>What to look for</h3>
      <table class="sheet-table watch-table">
        <tbody>
          {watchSigns(system).map(({ sign, act, source }) => (
            <tr key={sign}>
              <th scope="row">{sign}</th>
              <td>
                {act} <small>{source}</small>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

function Pumps({ plan, line, holding, system }: OfLineProps & { readonly plan: Plan }) {
  const { pumping, inside } = holding;
  const { proposed } = pumping;
  return (
    <>
      <h3>Pumps and sump</h3>
      <table class="sheet-table watch-table">
        <tbody>
          {proposed && <Proposed pump={proposed} system={system} />}
          <tr>
            <th scope="row">To be pumped</th>
            <td>
              {demandWords(holding, system)} Leaks at joints and closures come on top.{" "}
              <small>LSU; margin from memory</small>
            </td>
          </tr>
          <tr>
            <th scope="row">Sump</th>
            <td>
              {inside ? sumpWords(line, inside, system) : "Look for the lowest place inside."} A
              pail with holes, set in the ground. <small>NDSU-11</small>
            </td>
          </tr>
          {inside && <WithoutPumps plan={plan} holding={holding} inside={inside} system={system} />}
          <tr>
            <th scope="row">When one fails</th>
            <td>{failsWords(holding, system)}</td>
          </tr>
        </tbody>
      </table>
    </>
  );
}

function Proposed({ pump, system }: { readonly pump: PumpOption; readonly system: UnitSystem }) {
  return (
    <tr>
      <th scope="row">Pumps</th>
      <td>
        <strong>{pumpCountWords(pump)}</strong>, {pumpWords(pump.kind, unitsOf(system))}, at least{" "}
        {formatFlow(pump.eachM3PerS, system)} each, with fuel, hose and power of their own. The
        higher they lift and the longer the hose, the less they pump. <small>PWM, LSU</small>
      </td>
    </tr>
  );
}

function WithoutPumps({
  plan,
  holding,
  inside,
  system,
}: {
  readonly plan: Plan;
  readonly holding: Holding;
  readonly inside: Inside;
  readonly system: UnitSystem;
}) {
  const { withoutPumps, hoursToStructure } = holding.pumping;
  const level = (m: number | null) => (m === null ? "outside" : formatElevation(m, system));
  const wet =
    inside.structureM === null ? null : `A building is wet at ${level(inside.structureM)}`;
  const { soonest } = hoursToStructure;
  const full = withoutPumps.findIndex(({ highM }) => highM === null);
  const rising = full < 0 ? withoutPumps : withoutPumps.slice(0, full);
  const levels = [
    ...rising.map(({ hours, highM }) => `${hours} h ${level(highM)}`),
    ...(full < 0 ? [] : [`from ${withoutPumps[full]!.hours} h as high as outside`]),
  ];
  return (
    <tr>
      <th scope="row">Without pumps</th>
      <td>
        {wet && (
          <strong>
            {wet}
            {soonest !== null && `, in ${spanWords(soonest)} at the soonest`}.
          </strong>
        )}{" "}
        Water inside, at most: {levels.join(", ")}. {insideCapWords(timeOf(plan).forecast !== null)}
      </td>
    </tr>
  );
}

function demandWords({ pumping }: Holding, system: UnitSystem): string {
  const { demandM3PerS, capacityM3PerS, rainM3PerS } = pumping;
  const of = rainM3PerS ? "rain inside and seepage" : "seepage alone, rain is not counted";
  return `${formatFlowRange(demandM3PerS, system)}, ${of}. Pumps for ${formatFlowUpTo(capacityM3PerS, system)}.`;
}

function sumpWords(line: SizedLine, inside: Inside, system: UnitSystem): string {
  const near = nearestChainage(line.walk, inside.lowestAt);
  const from = near
    ? `${formatLength(near.awayM, system, 0)} inside ${formatStation(near.chainageM, system)}, `
    : "";
  return `The lowest place, ${from}at ${placeWords(inside.lowestAt)}, ground ${formatElevation(inside.lowestM, system)}.`;
}

function failsWords({ pumping }: Holding, system: UnitSystem): string {
  const start = "Start the spare at once, then look for the fault. Watch the level at the sump.";
  const { oneFails } = pumping;
  if (!oneFails || !(oneFails.excessM3PerS > 0)) {
    return `${start} The others carry what is expected.`;
  }
  const gains = formatFlow(oneFails.excessM3PerS, system);
  const hours = oneFails.hoursToStructure;
  const wet = hours === null ? "" : `, and a building is wet in ${spanWords(hours)}`;
  return `${start} Until it runs the water gains by up to ${gains}${wet}.`;
}
