import { HOUR_S } from "../../../shared/constants.ts";
import { timeOf } from "../../../shared/defaults.ts";
import { failureOf } from "../../../shared/failure.ts";
import { momentOf, momentText } from "../../../shared/time/forecast-time.ts";
import { startOfWork } from "../../../shared/time/start.ts";
import { zoneWords } from "../../../shared/words/clock.ts";
import { withTime } from "../../document/edits/forecast.ts";
import { apply, plan } from "../../document/store.ts";
import { unitSystem } from "../../live/screen.ts";
import { NumberField } from "../../ui/number-field.tsx";
import type { Quantity } from "../../ui/quantity.ts";

/** A moment on a clock of a stated offset, as seconds since 1970; one without an offset is on that clock. */
export function momentQuantity(offsetMin: number | null): Quantity {
  return {
    format: (atS) => momentText({ atS, offsetMin }).slice(0, 16).replace("T", " "),
    step: () => HOUR_S,
    parse: (text) => {
      const moment = momentOf(text);
      if (moment) {
        const shiftMin = moment.offsetMin === null ? (offsetMin ?? 0) : 0;
        return { ok: true, value: moment.atS - 60 * shiftMin };
      }
      return { ok: false, failure: failureOf("time/start", { came: text }) };
    },
  };
}

/** When work starts, on the forecast's own clock; empty until someone types it or takes the forecast's first row. */
export function StartField() {
  const time = timeOf(plan.value);
  const first = time.forecast ? momentOf(time.forecast.rows[0]!.at) : null;
  const stated = time.startAt === null ? null : startOfWork(time);
  const offsetMin = first ? first.offsetMin : (stated?.offsetMin ?? null);
  const zone = zoneWords({ atS: 0, offsetMin });
  const setStart = (atS: number | null, gesture?: string) =>
    apply({
      note: "Change the start of work",
      gesture,
      change: (now) =>
        withTime(now, { startAt: atS === null ? null : momentText({ atS, offsetMin }) }),
    });
  return (
    <>
      <div class="setting" data-setting="time.startAt">
        <NumberField
          system={unitSystem.value}
          label={zone ? `Start (${zone})` : "Start of work"}
          value={stated?.atS ?? null}
          quantity={momentQuantity(offsetMin)}
          blank="not entered"
          onValue={setStart}
        />
      </div>
      {first && !stated && (
        <button type="button" class="text-button" onClick={() => setStart(first.atS)}>
          Start with the forecast's first row
        </button>
      )}
    </>
  );
}
