import { computed, signal } from "@preact/signals";
import { timeOf } from "../../shared/defaults.ts";
import { asFailure, type Failure, failureOf, type Outcome, Refusal } from "../../shared/failure.ts";
import {
  changeBetween,
  type ForecastChange,
  withForecast,
} from "../../shared/forecasts/history.ts";
import type { ForecastNote, Levels, UnderstoodForecast } from "../../shared/forecasts/types.ts";
import { zoneNamed } from "../../shared/forecasts/zones.ts";
import { loadPart } from "../../shared/load-part.ts";
import type { Forecast, Plan } from "../../shared/plan.ts";
import { isWaterGiven } from "../../shared/stage.ts";
import { textOfBytes } from "../../shared/text-of-bytes.ts";
import { momentText } from "../../shared/time/forecast-time.ts";
import { lacksGaugeZero } from "../../shared/time/hydrograph.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { withTime } from "../document/edits/forecast.ts";
import { tell, withdrawAll } from "../document/notices.ts";
import { apply, plan } from "../document/store.ts";
import { unitSystem } from "./screen.ts";
import { leaveMoment } from "./time-now.ts";

export type { Levels };

/** What is typed, pasted or dropped and not taken yet; stays when the worksheet's block is closed. */
export const draftText = signal("");
/** The file it is from; empty where it is typed or pasted. */
export const draftFile = signal("");
/** What the person says the levels are; null = as the text says, else as the plan gives its water. */
export const draftLevels = signal<Levels | null>(null);
/** Clock the person says times without a zone are on: a name for `zoneNamed`; empty = not said. */
export const draftZone = signal("");
/** Unit the person says levels without one are in; null = not said. */
export const draftUnits = signal<UnitSystem | null>(null);
/** The one of several series the person chose; null = none. */
export const draftSeries = signal<string | null>(null);
/** What is typed as it was understood, or why it was refused; null before it is read, and for nothing. */
export const draftRead = signal<Outcome<UnderstoodForecast> | null>(null);
/** Why what is typed was refused when it was to be taken. */
export const draftFailure = signal<Failure | null>(null);
/** Whether the rows are open for typing although a forecast is there. */
export const isDrafting = signal(false);
/** What was assumed or left out in the forecast taken last, and of which it is said. */
export const takenNotes = signal<{
  readonly of: unknown;
  readonly notes: readonly ForecastNote[];
} | null>(null);

/** What is typed, where it was understood. */
export const draftUnderstood = computed(() => {
  const read = draftRead.value;
  return read?.ok ? read.value : null;
});

/** What the forecast in the draft says otherwise than the plan's; null without both. */
export const draftChange = computed((): ForecastChange | null => {
  const { forecast } = timeOf(plan.value);
  const understood = draftUnderstood.value;
  if (!forecast || !understood || understood.rows.length < 2) return null;
  return changeBetween(plan.value, forecast, rowsAsForecast(understood));
});

/** Stage or elevation, as chosen, as the text says, or as the plan gives its water. */
export function levelsNow(): Levels {
  return draftLevels.value ?? draftUnderstood.value?.levels ?? usualLevels();
}

function usualLevels(): Levels {
  return timeOf(plan.value).forecast?.levels ?? plan.value.water.by;
}

/** Changes what the draft is read with, or its text, and reads it again. */
export function changeDraft(change: () => void): Promise<Outcome<UnderstoodForecast> | null> {
  change();
  draftFailure.value = null;
  return readDraft();
}

let lastTurn = 0;

/** Reads what is typed, null for nothing; what was typed meanwhile is shown instead. */
async function readDraft(): Promise<Outcome<UnderstoodForecast> | null> {
  const text = draftText.peek();
  const turn = ++lastTurn;
  if (text.trim() === "") {
    draftRead.value = null;
    return null;
  }
  const read = await understand(text);
  if (turn === lastTurn) draftRead.value = read;
  return read;
}

const READER = () => import("../../shared/forecasts/read-forecast.ts");
const loadReader = () => loadPart("the reader of forecasts", READER);

async function understand(text: string): Promise<Outcome<UnderstoodForecast>> {
  try {
    const { readForecast } = await loadReader();
    return readForecast(
      text,
      {
        zone: zoneNamed(draftZone.peek()),
        ...{ units: draftUnits.peek(), system: unitSystem.peek() },
        ...{ levels: draftLevels.peek(), usualLevels: usualLevels() },
        ...{ series: draftSeries.peek(), nowS: Date.now() / 1000 },
      },
      (xml) => new DOMParser().parseFromString(xml, "text/xml"),
    );
  } catch (thrown) {
    return { ok: false, failure: asFailure(thrown) };
  }
}

/** Takes what is typed as the forecast, one step; what is refused stays where it is, with the reason. */
export async function takeDraft(): Promise<void> {
  const read = await understand(draftText.peek());
  draftRead.value = read;
  const failure = read.ok ? await take(read.value) : read.failure;
  draftFailure.value = failure;
  if (!failure) closeDraft();
}

/** Forgets what is typed. */
export function closeDraft(): void {
  withdrawAll("forecast/");
  isDrafting.value = false;
  draftFailure.value = null;
  draftRead.value = null;
  draftText.value = "";
  draftFile.value = "";
  draftSeries.value = null;
}

/** Whether a file begins as a forecast does, whatever it is called. */
export async function startsAsForecast(file: File): Promise<boolean> {
  const { looksLikeForecast } = await loadReader();
  return looksLikeForecast(await textOf(file.slice(0, 20_000)), file.name);
}

/** Puts a file where forecasts are typed, with what is understood of it; it counts once it is taken there. */
export async function openForecastFile(file: File): Promise<void> {
  const { MOST_CHARACTERS } = await loadReader();
  const { name } = file;
  withdrawAll("forecast/");
  if (file.size > 4 * MOST_CHARACTERS) {
    return tell("error", failureOf("forecast/rows", { bytes: file.size, name }));
  }
  if (draftText.peek().trim() !== "" && draftFile.peek() === "") {
    return tell("error", failureOf("forecast/draft", { name }));
  }
  const text = await textOf(file);
  const read = await changeDraft(() => {
    draftText.value = text;
    draftFile.value = name;
    draftSeries.value = null;
    isDrafting.value = true;
  });
  if (read && !read.ok) {
    draftFailure.value = read.failure;
    return tell("error", failureOf("forecast/in-file", { name, why: read.failure }));
  }
  tell("info", failureOf("forecast/read", { name }));
}

async function textOf(file: Blob): Promise<string> {
  return textOfBytes(new Uint8Array(await file.arrayBuffer()));
}

async function take(understood: UnderstoodForecast): Promise<Failure | null> {
  const { planForecast } = await import("../../shared/forecasts/understood.ts");
  const before = timeOf(plan.peek()).forecast;
  const isEdited = before !== null && sameTimes(before, understood);
  const from = draftFile.peek() === "" ? understood.series : `From ${draftFile.peek()}`;
  const note = isEdited && draftFile.peek() === "" ? before.note : (from ?? "").slice(0, 120);
  try {
    const forecast = planForecast(understood, note);
    if (isWaterGiven(plan.peek().water) && lacksGaugeZero(plan.peek(), forecast)) {
      return failureOf("forecast/no-gauge-zero");
    }
    const taken = apply({
      note: "Put in the forecast",
      change: (now) =>
        withWaterOf(
          forecast,
          withTime(now, withForecast(timeOf(now), forecast, Date.now() / 1000)),
        ),
    });
    if (!taken.ok) return taken.failure;
  } catch (thrown) {
    if (thrown instanceof Refusal) return asFailure(thrown);
    throw thrown;
  }
  leaveMoment();
  takenNotes.value = {
    of: plan.peek().time?.forecast,
    notes: understood.notes,
  };
  return null;
}

/** Where nobody has given the water yet, it is given as the forecast is: a stage needs the gauge zero, which is then asked for. */
function withWaterOf({ levels }: Forecast, now: Plan): Plan {
  return isWaterGiven(now.water) ? now : { ...now, water: { ...now.water, by: levels } };
}

function rowsAsForecast({ levels, rows }: UnderstoodForecast): Forecast {
  return {
    ...{ levels, note: "" },
    rows: rows.map(({ moment, levelM, lowM, highM }) => ({
      ...{ at: momentText(moment), levelM, lowM, highM },
    })),
  };
}

function sameTimes({ rows }: Forecast, understood: UnderstoodForecast): boolean {
  const others = rowsAsForecast(understood).rows;
  return rows.length === others.length && rows.every(({ at }, k) => same(at, others[k]!.at));
}

function same(a: string, b: string): boolean {
  return Date.parse(a) === Date.parse(b);
}
