import { signal } from "@preact/signals";
import { timeOf } from "../../shared/defaults.ts";
import type { Failure } from "../../shared/failure.ts";
import type { Forecast } from "../../shared/plan.ts";
import { parseForecast } from "../../shared/time/parse-forecast.ts";
import { apply, plan } from "../document/store.ts";
import { tell, unitSystem } from "../state.ts";
import { leaveMoment } from "../time-now.ts";
import { withTime } from "./forecast-edits.ts";

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
      remedy: "It stands in Time.",
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
  const forecast = { ...read.value.forecast, note: from ?? kept };
  const taken = apply({
    note: "Put in the forecast",
    change: (now) => withTime(now, { forecast }),
  });
  if (!taken.ok) return taken.failure;
  leaveMoment();
  takenNotes.value = { of: plan.peek().time?.forecast, notes: read.value.notes };
  return null;
}

function sameTimes(a: Forecast, b: Forecast): boolean {
  return a.rows.length === b.rows.length && a.rows.every(({ at }, k) => at === b.rows[k]!.at);
}
