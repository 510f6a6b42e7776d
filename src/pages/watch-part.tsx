import "./watch.css";
import type { RefObject } from "preact";
import { useLayoutEffect, useRef, useState } from "preact/hooks";
import type { Exported } from "../../shared/exports/exported.ts";
import type { Holding } from "../../shared/holding/types.ts";
import { leaveElevationM } from "../../shared/leave.ts";
import { planPlane } from "../../shared/plan-plane.ts";
import { isProtected } from "../../shared/protected.ts";
import { formatStation, lengthUnit } from "../../shared/units.ts";
import { stageEvents } from "../../shared/watch/stage-events.ts";
import type { TracedAlternative, TracedStructure } from "../../shared/water-types.ts";
import { leaveLevelWords } from "../../shared/words/leave.ts";
import { NOT_TRACED } from "../../shared/words/line-state.ts";
import { pipeCasesWords, pipeStops } from "../../shared/words/pipes.ts";
import { roadFloodWords } from "../../shared/words/roads.ts";
import { levelWords, shownLevelM } from "../../shared/words/time.ts";
import { fromBuilding, gaugeTitle, HAZARDS, ifItFails } from "../../shared/words/watch.ts";
import { BuildingsPart } from "./buildings-part.tsx";
import { COLUMN_MM } from "./paper.ts";
import { Sheet } from "./sheet.tsx";
import type { SheetFrame } from "./title-block.tsx";
import { LEAST_GAUGE_MM, WatchGauge } from "./watch-gauge.tsx";
import { WatchLog } from "./watch-log.tsx";
import { type WatchPlace, watchPlaces } from "./watch-places.ts";
import { WatchSigns } from "./watch-signs.tsx";

interface WatchSheetProps extends SheetFrame {
  readonly holding: Holding;
  /** The water with the line built; null while that is not known. */
  readonly traced: TracedAlternative | null;
  /** The buildings without any levee; empty while that is not known. */
  readonly structures: readonly TracedStructure[];
}

/** For the crew on the levee: when people leave, what happens when, where to look, what for; then the logs. */
export function WatchSheet({ holding, traced, structures, ...frame }: WatchSheetProps) {
  const { of } = frame;
  const { plan, line, system } = of;
  const places = watchPlaces(line, holding, traced, system);
  const events = stageEvents(plan, line, traced);
  const isLeftOutside = ({ id }: TracedStructure) =>
    plan.structures.some((each) => each.id === id && !isProtected(each));
  const first = events.find(({ kind }) => kind === "first-wet");
  const leave = useRef<HTMLDivElement>(null);
  const stops = useRef<HTMLDivElement>(null);
  const [restMm, setRestMm] = useState(FIRST_REST_MM);
  useLayoutEffect(() => {
    const nowMm = heightMmOf(leave.current) + heightMmOf(stops.current);
    setRestMm((was) => (Math.abs(was - nowMm) < 0.3 ? was : nowMm));
  });
  const begin = first ? levelWords(plan, first.gaugeM, system) : null;
  return (
    <Sheet
      {...frame}
      name="Watch and logs"
      short="Watch"
      pieces={({ heightMm }) => [
        <Leave key="leave" of={of} traced={traced} box={leave} />,
        <div key="signs" class="watch-columns">
          <section>
            <h2>What happens when</h2>
            <p>
              <strong>{gaugeTitle(plan, system)}.</strong> Freeboard is not protection.
            </p>
            <WatchGauge
              plan={plan}
              events={events}
              leaveM={leaveLevelM(of)}
              system={system}
              highMm={gaugeMm(heightMm - restMm)}
            />
          </section>
          <section>
            <h2>What to look for, and do</h2>
            <WatchSigns system={system} />
          </section>
        </div>,
        <div key="places" ref={stops} class="watch-columns watch-halves">
          <section>
            <h2>Stop and look here</h2>
            <Places of={of} places={places} />
            {traced && <PipeCases of={of} traced={traced} />}
            <p>
              Walk the land side, off the bags. Call the post before and after each round. Log it.
            </p>
          </section>
          <section>
            <h2>Hazards, the deadliest first</h2>
            <ul class="watch-hazards">
              {HAZARDS.map(({ what, act }) => (
                <li key={what}>
                  <strong>{what}:</strong> {act}
                </li>
              ))}
            </ul>
          </section>
        </div>,
        <BuildingsPart
          key="buildings"
          plan={plan}
          structures={structures.filter(isLeftOutside)}
          traced={traced}
          system={system}
        />,
        <WatchLog
          key="log"
          of={of}
          holding={holding}
          stops={places.map(({ chainageM }) => chainageM)}
          begin={begin}
          roomMm={heightMm}
        />,
      ]}
    />
  );
}

/** What the heads and margins beside the gauge take of a page, millimetres. */
const BESIDE_GAUGE_MM = 22;
const MOST_GAUGE_MM = 120;
/** What stands over and under the gauge until it is measured, millimetres. */
const FIRST_REST_MM = 110;

/** Height on paper of what is as wide as a page's column. */
function heightMmOf(element: HTMLElement | null): number {
  const box = element?.getBoundingClientRect();
  return box && box.width > 0 ? (box.height / box.width) * COLUMN_MM : 0;
}

/** The gauge fills what the rest leaves of the page. */
function gaugeMm(roomMm: number): number {
  const high = Math.min(MOST_GAUGE_MM, roomMm - BESIDE_GAUGE_MM);
  return Math.max(LEAST_GAUGE_MM, Math.floor(high));
}

/** Level at which people leave as the plan gives water, metres; null where none is set. */
function leaveLevelM({ plan }: Exported): number | null {
  const gaugeM = plan.leave ? leaveElevationM(plan.leave, plan.water) : null;
  return gaugeM === null ? null : shownLevelM(plan, gaugeM);
}

interface LeaveProps {
  readonly of: Exported;
  readonly traced: TracedAlternative | null;
  readonly box: RefObject<HTMLDivElement | null>;
}

/** The box that is read first: when to leave, and why in time. Blank lines until somebody has set it. */
function Leave({ of, traced, box }: LeaveProps) {
  const { plan, checks, system } = of;
  const { leave, water } = plan;
  const isStage = water.by === "stage";
  return (
    <div class="watch-leave" ref={box}>
      <p class="watch-leave-line">
        {leave ? (
          <strong>LEAVE at {leaveLevelWords(leave, system, false)}</strong>
        ) : (
          <>
            <strong>LEAVE when the {isStage ? "river is at stage" : "water is at"}</strong>
            <span class="watch-rule" />
            <strong>{lengthUnit(system)}</strong>
          </>
        )}
        decided by <span class="watch-rule watch-rule-wide" /> at <span class="watch-rule" />
      </p>
      <p>
        {leave?.note && `${leave.note} · `}
        <WayOut of={of} /> Set it by that and the time people need, never by the level the levee
        overtops at. {traced ? ifItFails(checks, system) : NOT_TRACED} Count everyone at{" "}
        <span class="watch-rule watch-rule-wide" />
      </p>
    </div>
  );
}

/** The exit roads as drawn, with what they flood at; blanks to fill in where none is. */
function WayOut({ of: { checks, system } }: { readonly of: Exported }) {
  const roads = checks.flatMap(({ finding }) => (finding.kind === "road-floods" ? [finding] : []));
  if (roads.length > 0) {
    return roads.map((road) => <b key={road.road}>{roadFloodWords(road, system)}. </b>);
  }
  return (
    <>
      Way out <span class="watch-rule watch-rule-wide" /> goes under water at
      <span class="watch-rule" />.
    </>
  );
}

/** What the line does with every pipe plugged, and where the plugs fail. */
function PipeCases({ of, traced }: { readonly of: Exported; readonly traced: TracedAlternative }) {
  const cases = pipeCasesWords(traced, of.checks, of.plan, of.system);
  if (cases.length === 0) return null;
  return <p>{cases.map(({ name, words }) => `${name}: ${words}.`).join(" ")}</p>;
}

interface PlacesProps {
  readonly of: Exported;
  readonly places: readonly WatchPlace[];
}

function Places({ of: { plan, checks, system }, places }: PlacesProps) {
  return (
    <ul class="watch-places">
      {places.map(({ chainageM, at, reasons }) => {
        const from = fromBuilding(plan, at, planPlane(at), system);
        return (
          <li key={chainageM}>
            <strong>{formatStation(chainageM, system)}</strong>
            <span>
              {from && <b>{from}. </b>}
              {reasons.join("; ")}.
            </span>
          </li>
        );
      })}
      {pipeStops(checks).map(({ name, look, at }) => {
        const from = at && fromBuilding(plan, at, planPlane(at), system);
        return (
          <li key={name}>
            <strong>{name}</strong>
            <span>
              {from && <b>{from}. </b>}
              {look}
            </span>
          </li>
        );
      })}
    </ul>
  );
}
