import { signal } from "@preact/signals";
import { timeOf } from "../../shared/defaults.ts";
import type { Failure } from "../../shared/failure.ts";
import type { Forecast } from "../../shared/plan.ts";
import { momentOf } from "../../shared/time/forecast-time.ts";
import { parseForecast } from "../../shared/time/parse-forecast.ts";
import { zoneWords } from "../../shared/words/clock.ts";
import { withTime } from "../document/edits/forecast.ts";
import { tell } from "../document/notices.ts";
import { apply, plan } from "../document/store.ts";
import { unitSystem } from "./screen.ts";
import { leaveMoment } from "./time-now.ts";

export type Levels = "stage" | "elevation";

/** What is typed or pasted and not taken yet; stays when the worksheet's block is closed. */
export const draftText = signal("");
/** What the typed levels are; null = as the plan gives its water. */
export const draftLevels = signal<Levels | null>(null);
/** Why what is typed was refused. */
export const draftFailure = signal<Failure | null>(null);
/** Whether the rows are open for typing although a forecast is there. */
export const isDrafting = signal(false);
/** What was assumed or left out in the forecast taken last, and of which it is said. */
export const takenNotes = signal<{
  readonly of: unknown;
  readonly notes: readonly string[];
} | null>(null);

/** Stage or elevation, as chosen or as the plan gives its water. */
export function levelsNow(): Levels {
  return draftLevels.value ?? timeOf(plan.value).forecast?.levels ?? plan.value.water.by;
}

/** Takes what is typed as the forecast, one step; what is refused stays where it is, with the reason. */
export function takeDraft(): void {
  const failure = take(draftText.peek(), null);
  draftFailure.value = failure;
  if (failure) return;
  draftText.value = "";
  isDrafting.value = false;
}

/** Takes a file as the forecast; one that is refused can be put right where forecasts are typed. */
export async function openForecastFile(file: File): Promise<void> {
  const text = await file.text();
  const failure = take(text, `From ${file.name}`.slice(0, 120));
  if (!failure) {
    tell("info", {
      code: "forecast/taken",
      message: `The forecast is taken from ${file.name}.`,
      remedy: "It is in Crew and time.",
    });
    return;
  }
  tell("error", { ...failure, message: `${file.name}: ${failure.message}` });
  if (draftText.peek().trim() !== "" || text.length > MOST_SHOWN) return;
  draftText.value = text;
  draftFailure.value = failure;
  isDrafting.value = true;
}

/** Longer texts are not put before the person, characters. */
const MOST_SHOWN = 200_000;

/** @param from who gave it; null = typed here, so that who gave the same times before is kept */
function take(text: string, from: string | null): Failure | null {
  const read = parseForecast(text, levelsNow(), unitSystem.peek());
  if (!read.ok) return read.failure;
  const before = timeOf(plan.peek()).forecast;
  const kept = before && sameTimes(before, read.value.forecast) ? before.note : "";
  const clock = onClockOfStart(read.value.forecast);
  const forecast = { ...clock.forecast, note: from ?? kept };
  const taken = apply({
    note: "Put in the forecast",
    change: (now) => withTime(now, { forecast }),
  });
  if (!taken.ok) return taken.failure;
  leaveMoment();
  takenNotes.value = {
    of: plan.peek().time?.forecast,
    notes: [...read.value.notes, ...clock.notes],
  };
  return null;
}

/**
 * A forecast whose times state no offset from UTC, beside a start of work that does, is on the clock of that
 * start: else its hours would count as UTC, and the water would come hours early or late.
 */
function onClockOfStart(forecast: Forecast): {
  readonly forecast: Forecast;
  readonly notes: readonly string[];
} {
  const { startAt } = timeOf(plan.peek());
  const start = startAt === null ? null : momentOf(startAt);
  const zone = start && zoneWords(start);
  const isLocal = momentOf(forecast.rows[0]!.at)?.offsetMin === null;
  if (!zone || !isLocal) return { forecast, notes: [] };
  const offset = zone.slice("UTC".length);
  const rows = forecast.rows.map((row) => ({ ...row, at: `${row.at.trim()}${offset}` }));
  return {
    forecast: { ...forecast, rows },
    notes: [
      `That clock is the one of the start of work, ${zone}. Check that it is the forecast's.`,
    ],
  };
}

function sameTimes(a: Forecast, b: Forecast): boolean {
  return a.rows.length === b.rows.length && a.rows.every(({ at }, k) => at === b.rows[k]!.at);
}
