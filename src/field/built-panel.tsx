import { useSignal } from "@preact/signals";
import { HOUR_S } from "../../shared/constants.ts";
import { asFailure, type Failure } from "../../shared/failure.ts";
import { type BuiltSoFar, behindNow, builtSoFar } from "../../shared/field/built-so-far.ts";
import { waterElevationAtGauge } from "../../shared/stage.ts";
import { stationsWords } from "../../shared/words/crew-parts.ts";
import { failureText } from "../../shared/words/failure.ts";
import {
  addedWords,
  behindWords,
  markWords,
  notStartedWords,
  otherPlanWords,
  reachedRows,
} from "../../shared/words/field-built.ts";
import { readPlanOf } from "../document/files.ts";
import { plan } from "../document/store.ts";
import { savePlan } from "../live/actions.ts";
import { unitSystem } from "../live/screen.ts";
import { riverNow, timeNow } from "../live/time-now.ts";
import { FileButton } from "../ui/file-button.tsx";
import { type AtStake, goToStake } from "./at.ts";
import { numberNow } from "./marking.ts";
import { closePanel, openPanel } from "./panel.ts";
import { PanelHead } from "./panel-head.tsx";
import { Read } from "./read.tsx";
import { takeMarks } from "./take-marks.ts";

/** What the whole crew has built, against the build sequence and the water, and how it is passed on. */
export function BuiltPanel({ at }: { readonly at: AtStake }) {
  const system = unitSystem.value;
  const number = numberNow.value;
  if (number === null) return null;
  const sum = builtSoFar(at.line, at.staked, plan.value.progress ?? [], number);
  const old = otherPlanWords(sum, number);
  return (
    <Read label="Built so far" class="crew-page">
      <PanelHead title="Built so far" onBack={closePanel} />
      <p class="crew-soft">Plan {number}</p>
      <dl class="crew-reached">
        {reachedRows(sum, system).map(({ name, value, share }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
            <svg viewBox="0 0 100 8" preserveAspectRatio="none" aria-hidden="true">
              <rect width="100" height="8" />
              <rect class="crew-reached-share" width={100 * share} height="8" />
            </svg>
          </div>
        ))}
      </dl>
      {old && <p class="crew-said">{old}</p>}
      <Measured at={at} sum={sum} />
      <PassOn />
      <Marks at={at} sum={sum} />
    </Read>
  );
}

interface OfLine {
  readonly at: AtStake;
  readonly sum: BuiltSoFar;
}

/** Against the build sequence and the forecast, by the clock of this device. */
function Measured({ at: { line }, sum }: OfLine) {
  const system = unitSystem.value;
  const river = riverNow.value;
  const time = timeNow.value?.time ?? null;
  const startS = river?.start.atS ?? null;
  const nowH = startS === null ? null : (Date.now() / 1000 - startS) / HOUR_S;
  const startAt = time?.startAt ?? null;
  const isOver = river !== null && nowH !== null && nowH > river.toH;
  const behind = behindNow(line, sum, {
    work: nowH === null || time === null ? [] : time.stretches,
    river: isOver ? null : river,
    sizedForM: waterElevationAtGauge(plan.value.water),
    nowH: nowH ?? 0,
  });
  return (
    <>
      {nowH !== null && nowH < 0 && startAt && <p>{notStartedWords(startAt, system)}</p>}
      {behindWords(behind, startAt, isOver ? river.toH : null, system).map((each) => (
        <p key={each}>{each}</p>
      ))}
    </>
  );
}

function PassOn() {
  const said = useSignal<string | null>(null);
  const failure = useSignal<Failure | null>(null);
  const take = async ([file]: File[]) => {
    if (!file) return;
    said.value = null;
    failure.value = null;
    const read = await readPlanOf(file).catch((thrown) => ({
      ok: false as const,
      failure: asFailure(thrown),
    }));
    const taken = read.ok ? takeMarks(read.value.plan.progress ?? []) : read;
    if (taken.ok) said.value = addedWords(taken.value);
    else failure.value = taken.failure;
  };
  return (
    <>
      <h3>Pass it on</h3>
      <div class="crew-choices">
        <button type="button" class="crew-key" onClick={() => openPanel("show-codes")}>
          Show codes
        </button>
        <button type="button" class="crew-key" onClick={() => openPanel("read-codes")}>
          Read codes
        </button>
        <button type="button" class="crew-key" onClick={savePlan}>
          Save plan file
        </button>
        <FileButton
          label="Plan file of another phone"
          accept=".geojson,.json"
          class="crew-key"
          onFiles={(files) => void take(files)}
        >
          Add from plan file
        </FileButton>
      </div>
      {said.value && <p role="status">{said.value}</p>}
      {failure.value && (
        <p class="crew-said" role="alert">
          {failureText(failure.value, unitSystem.value)}
        </p>
      )}
    </>
  );
}

/** Every mark along the line; pressed, its stake. */
function Marks({ at, sum }: OfLine) {
  const system = unitSystem.value;
  const marked = sum.stretches.flatMap(({ mark, stretch }) => (mark ? [{ mark, stretch }] : []));
  if (marked.length === 0) return null;
  return (
    <>
      <h3>Stretches</h3>
      {marked.map(({ mark, stretch }) => (
        <button
          key={stretch.fromM}
          type="button"
          class="crew-row"
          onClick={() => {
            const index = at.staked.stakes.findIndex(
              ({ chainageM }) => chainageM === stretch.fromM,
            );
            goToStake(at, index);
            closePanel();
          }}
        >
          <span>{stationsWords(stretch, system)}</span>
          <strong>{markWords(mark, -new Date().getTimezoneOffset(), system)}</strong>
        </button>
      ))}
    </>
  );
}
