import { useRef, useState } from "preact/hooks";
import type { LeaveLevel, Plan } from "../../../shared/plan.ts";
import { momentOf, momentText } from "../../../shared/time/forecast-time.ts";
import type { TracedRoad } from "../../../shared/water-types.ts";
import { zoneWords } from "../../../shared/words/clock.ts";
import { leaveWords } from "../../../shared/words/leave.ts";
import { ROAD_WORDS, roadFloodWords } from "../../../shared/words/roads.ts";
import { setLeave } from "../../document/edits/leave.ts";
import { plan } from "../../document/store.ts";
import { unitSystem } from "../../live/screen.ts";
import { waterNow } from "../../live/water-now.ts";
import { NumberField } from "../../ui/number-field.tsx";
import { ELEVATION } from "../../ui/quantity.ts";
import { TextField } from "../../ui/text-field.tsx";
import { momentQuantity } from "../time/time-start-field.tsx";

/** When people leave, always in sight; pressed, it is set or changed in place. What is typed wrong keeps it open. */
export function LeaveLine() {
  const [isOpen, setOpen] = useState(false);
  const { leave } = plan.value;
  const act = leave ? "Change" : "Set it now";
  const whole = useRef<HTMLDivElement>(null);
  const turn = () => {
    const wrong = whole.current?.querySelector<HTMLElement>('[aria-invalid="true"]');
    if (wrong) wrong.focus();
    else setOpen(!isOpen);
  };
  return (
    <div class="leave" ref={whole}>
      <p class="leave-line">
        <strong>{leaveWords(plan.value, unitSystem.value)}</strong>
        <button
          type="button"
          aria-expanded={isOpen}
          aria-label={`${isOpen ? "Done" : act}: leave stage`}
          onClick={turn}
        >
          {isOpen ? "Done" : act}
        </button>
      </p>
      <ExitRoads />
      {isOpen && <LeaveForm />}
    </div>
  );
}

/** When the exit roads flood, and the leave stage that follows; offered where people are not set to leave by then. */
function ExitRoads() {
  const system = unitSystem.value;
  const roads = waterNow.value?.roads ?? [];
  return roads.map(({ id, name: road, isKnown, floodsAboveM, gaugeM, leavesBefore, ...flood }) => {
    if (!isKnown) return <p key={id}>{`Exit road "${road}": ${ROAD_WORDS.notKnown}`}</p>;
    if (floodsAboveM === null || gaugeM === null) return null;
    return (
      <p key={id} class="leave-line">
        <span>{roadFloodWords({ road, elevationM: floodsAboveM, ...flood }, system)}</span>
        {leavesBefore !== true && (
          <button
            type="button"
            aria-label={`Leave by the time exit road ${road} floods`}
            onClick={() => leaveBy(road, gaugeM, flood)}
          >
            Leave by then
          </button>
        )}
      </p>
    );
  });
}

function leaveBy(
  road: string,
  gaugeM: number,
  { stageM, hour }: Pick<TracedRoad, "stageM" | "hour">,
) {
  const { by } = plan.value.water;
  const levelM = stageM ?? gaugeM;
  setLeave({ by, levelM, at: hour, note: `exit road "${road}" floods` });
}

function LeaveForm() {
  const note = useRef("");
  if (plan.value.leave) note.current = plan.value.leave.note;
  const leave = plan.value.leave ?? emptyLeave(plan.value, note.current);
  const change = (next: Partial<LeaveLevel>) => {
    const changed = { ...leave, ...next };
    setLeave(changed.levelM === null && changed.at === null ? null : changed);
    return undefined;
  };
  const at = leave.at === null ? null : momentOf(leave.at);
  const offsetMin = at?.offsetMin ?? forecastOffsetMin(plan.value);
  const zone = zoneWords({ atS: 0, offsetMin });
  return (
    <div class="leave-form">
      <NumberField
        system={unitSystem.value}
        label={leave.by === "stage" ? "Stage to leave at" : "Water elevation to leave at"}
        value={leave.levelM}
        quantity={ELEVATION}
        range={{ least: -500, most: 9000 }}
        blank="not set"
        onValue={(levelM) => change({ levelM })}
      />
      <NumberField
        system={unitSystem.value}
        label={zone ? `Hour to leave (${zone})` : "Hour to leave"}
        value={at?.atS ?? null}
        quantity={momentQuantity(offsetMin)}
        blank="not set"
        onValue={(atS) => change({ at: atS === null ? null : momentText({ atS, offsetMin }) })}
      />
      {plan.value.leave && (
        <TextField
          label="What sets it"
          placeholder="exit road, time people need"
          maxLength={500}
          value={leave.note}
          onText={(note) => change({ note })}
        />
      )}
      <p class="hint">
        Set it by the exit road and the time people need, never by the level the levee overtops at.
      </p>
    </div>
  );
}

/** @param note what was said of a level that was taken out a moment ago, so that another one keeps it */
function emptyLeave({ water }: Plan, note: string): LeaveLevel {
  return { by: water.by, levelM: null, at: null, note };
}

/** The forecast's own clock; null without one. */
function forecastOffsetMin({ time }: Plan): number | null {
  const first = time?.forecast?.rows[0];
  return first ? (momentOf(first.at)?.offsetMin ?? null) : null;
}
