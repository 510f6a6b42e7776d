import { DAY_H, HOUR_S } from "../../../shared/constants.ts";
import { workAtHour } from "../../../shared/words/work.ts";
import "./moment-slider.css";
import { midnights } from "../../../shared/time/clock.ts";
import type { RiverClock } from "../../../shared/time/river-clock.ts";
import { dayWords } from "../../../shared/words/clock.ts";
import { momentHintWords, riverAtWords } from "../../../shared/words/river.ts";
import { sizeForLevel } from "../../document/edits/forecast.ts";
import { plan } from "../../document/store.ts";
import { unitSystem } from "../../live/screen.ts";
import {
  hourAtMoment,
  leaveMoment,
  levelAtMomentM,
  momentH,
  riverNow,
  standsAtMoment,
  timeNow,
} from "../../live/time-now.ts";

const MOST_TICKS = 7;
/** A day that begins beyond this share of the slider has no room for its name. */
const LAST_SHARE = 0.86;

/**
 * Steps through the forecast by the hour: map and profile show its water at that moment. A view alone, the plan
 * stays as it is until the line is sized for what is looked at.
 */
export function MomentSlider() {
  const river = riverNow.value;
  if (!river) return null;
  const [least, most] = [Math.ceil(river.fromH), Math.floor(river.toH)];
  if (most - least < 1) return null;
  const isOn = levelAtMomentM.value !== null;
  const hour = Math.min(most, Math.max(least, momentH.value ?? Math.round(river.crestH)));
  return (
    <div class="stage-slider moment-slider" data-on={isOn}>
      <p class="moment-name" aria-hidden="true">
        Through the forecast
      </p>
      <input
        type="range"
        aria-label="Through the forecast"
        aria-valuetext={riverAtWords(plan.value, river, hour, unitSystem.value)}
        min={least}
        max={most}
        step={1}
        value={hour}
        style={{ "--filled": `${((hour - least) / (most - least)) * 100}%` }}
        onInput={(event) => {
          momentH.value = event.currentTarget.valueAsNumber;
        }}
      />
      <DayTicks river={river} least={least} most={most} />
      {isOn ? (
        <Moment river={river} hour={hour} />
      ) : (
        <p class="hint">{momentHintWords(plan.value, river, unitSystem.value)}</p>
      )}
    </div>
  );
}

function Moment({ river, hour }: { river: RiverClock; hour: number }) {
  const levelM = river.levelAtH(hour);
  const row = hourAtMoment.value;
  const bags = timeNow.value?.time.bags ?? null;
  return (
    <>
      <p class="moment-words" role="status">
        <strong>{riverAtWords(plan.value, river, hour, unitSystem.value)}</strong>
        {row && bags !== null && (
          <span>
            {workAtHour(
              row,
              { hour, bags, startAt: timeNow.value!.time.startAt, stands: standsAtMoment.value },
              unitSystem.value,
            )}
          </span>
        )}
      </p>
      <p class="tool-row">
        <button type="button" class="text-button" onClick={leaveMoment}>
          Back to the forecast crest
        </button>
        <button
          type="button"
          class="text-button"
          onClick={() => {
            if (sizeForLevel(levelM)) leaveMoment();
          }}
        >
          Size the line for this level
        </button>
      </p>
    </>
  );
}

function DayTicks({ river, least, most }: { river: RiverClock; least: number; most: number }) {
  const every = Math.ceil((most - least) / DAY_H / MOST_TICKS);
  const { atS } = river.start;
  const at = midnights(river.start, atS + least * HOUR_S, atS + most * HOUR_S, Math.max(1, every));
  return (
    <div class="moment-ticks" aria-hidden="true">
      {at.map((midnightS) => {
        const share = ((midnightS - atS) / HOUR_S - least) / (most - least);
        return (
          <span key={midnightS} style={{ left: `${share * 100}%` }}>
            {share <= LAST_SHARE && dayWords({ ...river.start, atS: midnightS })}
          </span>
        );
      })}
    </div>
  );
}
