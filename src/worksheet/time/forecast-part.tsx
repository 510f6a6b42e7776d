import { timeOf } from "../../../shared/defaults.ts";
import { isToHeight } from "../../../shared/field/progress.ts";
import { forecastChange } from "../../../shared/forecasts/history.ts";
import type { Forecast } from "../../../shared/plan.ts";
import { waterElevationAtGauge } from "../../../shared/stage.ts";
import type { RiverClock } from "../../../shared/time/river-clock.ts";
import type { BandCrest, LineTime } from "../../../shared/time/types.ts";
import {
  changedWorkWords,
  forecastChangeWords,
  forecastNoteWords,
  NO_GAUGE_ZERO,
  pastForecastsWords,
} from "../../../shared/words/forecast.ts";
import { forecastRowsWords, riverPeakWords } from "../../../shared/words/river.ts";
import { namedLevel } from "../../../shared/words/time.ts";
import { edit } from "../../document/edits/alternatives.ts";
import { forecastText, sizeForLevel, withTime } from "../../document/edits/forecast.ts";
import { plan } from "../../document/store.ts";
import { ForecastChart, ForecastKey } from "../../drawing/forecast-chart.tsx";
import { draftFailure, draftText, isDrafting, takenNotes } from "../../live/forecast-draft.ts";
import { chosenLine } from "../../live/results.ts";
import { unitSystem } from "../../live/screen.ts";
import { levelAtMomentM, momentH, riverNow } from "../../live/time-now.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { TextField } from "../../ui/text-field.tsx";
import { useSize } from "../../ui/use-size.ts";
import { ForecastDraft } from "./forecast-draft-form.tsx";

const CHART_PX = 172;
/** Water levels nearer than this are the same: bags counted for another crest are not shown for this one. */
const SAME_M = 0.005;

/** The river to come: typed, pasted or from a file, and drawn. */
export function ForecastPart({ time }: { readonly time: LineTime | null }) {
  const { forecast } = timeOf(plan.value);
  const river = riverNow.value;
  const summary = river
    ? riverPeakWords(plan.value, river, unitSystem.value)
    : forecast
      ? "no gauge zero"
      : "none yet";
  return (
    <Disclosure id="time-forecast" title="Forecast" level="part" startsOpen summary={summary}>
      {forecast && river && <Given forecast={forecast} time={time} river={river} />}
      {forecast && !river && (
        <>
          <p class="field-why">{NO_GAUGE_ZERO}</p>
          {!isDrafting.value && <OtherRows forecast={forecast} />}
        </>
      )}
      {(!forecast || isDrafting.value) && <ForecastDraft replaces={forecast !== null} />}
    </Disclosure>
  );
}

function Given({
  forecast,
  time,
  river,
}: {
  readonly forecast: Forecast;
  readonly time: LineTime | null;
  readonly river: RiverClock;
}) {
  const [ref, size] = useSize<HTMLDivElement>();
  const system = unitSystem.value;
  const notes = takenNotes.value?.of === forecast ? takenNotes.value.notes : [];
  return (
    <>
      <div class="time-chart-place" ref={ref} style={{ height: CHART_PX }}>
        {size && (
          <ForecastChart
            plan={plan.value}
            time={time}
            system={system}
            widthPx={size.widthPx}
            heightPx={CHART_PX}
            momentH={levelAtMomentM.value === null ? null : momentH.value}
          />
        )}
      </div>
      <ForecastKey plan={plan.value} time={time} />
      <p class="hint">{forecastRowsWords(forecast, plan.value, river, system)}</p>
      <Changed time={time} />
      {notes.map(forecastNoteWords).map((words) => (
        <p key={words} class="hint">
          {words}
        </p>
      ))}
      <TextField
        label="Given by"
        value={forecast.note}
        placeholder="who, and when it was issued"
        onText={(note) =>
          edit({
            note: "Say who gave the forecast",
            change: (now) => withTime(now, { forecast: { ...forecast, note } }),
          })
        }
      />
      {!isDrafting.value && <OtherRows forecast={forecast} />}
    </>
  );
}

function OtherRows({ forecast }: { readonly forecast: Forecast }) {
  return (
    <p class="tool-row">
      <button type="button" class="text-button" onClick={() => openRows(forecast)}>
        Edit or replace the rows
      </button>
      <button type="button" class="text-button" onClick={takeOut}>
        Take it out
      </button>
    </p>
  );
}

/** What the forecast says otherwise than the one before it, and what that asks of the work. */
function Changed({ time }: { readonly time: LineTime | null }) {
  const change = forecastChange(plan.value);
  const system = unitSystem.value;
  const line = chosenLine.value;
  const past = pastForecastsWords(plan.value, system);
  if (!change || !past) return null;
  const overPlanM = change.now.elevationM - waterElevationAtGauge(plan.value.water);
  const isThis = ({ band, riseM }: BandCrest) =>
    band === "likely" && Math.abs(riseM - overPlanM) < SAME_M;
  const crest = time?.crests.find(isThis) ?? null;
  const work = line && {
    ...{ overPlanM, bags: line.totals.bags, bagsAtCrest: crest?.bags ?? null },
    ...{ toHeightM: toHeightM(line.id), toBuildM: line.totals.builtLengthM },
  };
  return (
    <section class="forecast-changed" aria-label="What changed">
      <h3>What changed</h3>
      <p>{forecastChangeWords(plan.value, change, system)}</p>
      {work && changedWorkWords(work, system).map((words) => <p key={words}>{words}</p>)}
      {Math.abs(overPlanM) > SAME_M && (
        <button
          type="button"
          class="text-button"
          onClick={() => sizeForLevel(change.now.elevationM)}
        >
          Size for {namedLevel(plan.value, change.now.elevationM, system)}
        </button>
      )}
      <p class="hint">{past}</p>
    </section>
  );
}

function toHeightM(lineId: string): number {
  return (plan.value.progress ?? [])
    .filter((mark) => mark.lineId === lineId && isToHeight(mark.state))
    .reduce((sum, { fromM, toM }) => sum + toM - fromM, 0);
}

function openRows(forecast: Forecast): void {
  if (draftText.value.trim() === "") draftText.value = forecastText(forecast, unitSystem.value);
  draftFailure.value = null;
  isDrafting.value = true;
}

function takeOut(): void {
  edit({ note: "Take the forecast out", change: (now) => withTime(now, { forecast: null }) });
}
