import { asFailure, type Failure } from "../shared/failure.ts";
import type { Plan, VerticalUnit } from "../shared/plan.ts";
import { readPlanOf, savePlanFile } from "./document/files.ts";
import { keepTerrain } from "./document/keeping.ts";
import { apply, plan, replacePlan } from "./document/store.ts";
import { engine } from "./engine.ts";
import { sizeAgain } from "./sizing-clock.ts";
import { busy, ground, tell, unitQuestion } from "./state.ts";
import { openForecastFile } from "./worksheet/forecast-draft.ts";

const PLAN_NAME = /\.(geojson|json)$/i;
const FORECAST_NAME = /\.csv$/i;

/**
 * Opens a raster, or the tiles of one survey with their side-car files. On failure the ground that was
 * open stays open. When the file states no vertical unit the person is asked through `unitQuestion`.
 */
export async function openTerrainFiles(
  files: readonly File[],
  verticalUnit: VerticalUnit | null = null,
): Promise<void> {
  const failure = await openGround(files, verticalUnit);
  if (failure) tell("error", failure);
}

/** @returns what is to be told: null when the ground is open, was cancelled, or its unit is asked for */
async function openGround(
  files: readonly File[],
  verticalUnit: VerticalUnit | null = null,
): Promise<Failure | null> {
  const abort = new AbortController();
  try {
    const summary = await engine.openTerrain(
      { files: files.map((file) => ({ name: file.name, blob: file })), verticalUnit },
      {
        signal: abort.signal,
        onProgress: (share, doing) => {
          busy.value = { doing, share, cancel: () => abort.abort() };
        },
      },
    );
    unitQuestion.value = null;
    ground.value = summary;
    sizeAgain.value += 1;
    rememberTerrain(files, summary.verticalUnitFrom === "person" ? summary.verticalUnit : null);
    return null;
  } catch (thrown) {
    const failure = asFailure(thrown);
    if (failure.code === "ground/unit-unknown") unitQuestion.value = { files, failure };
    else if (failure.code !== "cancelled") return failure;
    return null;
  } finally {
    busy.value = null;
  }
}

/** The person's answer to `unitQuestion`. */
export async function answerVerticalUnit(unit: VerticalUnit): Promise<void> {
  const asked = unitQuestion.value;
  if (asked) await openTerrainFiles(asked.files, unit);
}

function rememberTerrain(files: readonly File[], verticalUnit: VerticalUnit | null): void {
  keepTerrain([...files]).catch((thrown) => tell("error", asFailure(thrown)));
  const terrain = files.map((file) => ({ name: file.name, bytes: file.size }));
  const before = plan.value;
  const same =
    before.ground.verticalUnit === verticalUnit &&
    JSON.stringify(before.terrain) === JSON.stringify(terrain);
  if (same) return;
  report(
    apply({
      note: "Open ground",
      change: (now) => ({ ...now, terrain, ground: { ...now.ground, verticalUnit } }),
    }),
  );
}

/**
 * Opens plan files one after the other. A damaged, foreign or newer file is refused and the present plan
 * stays; several refusals are told as one.
 */
async function openPlanFiles(files: readonly File[]): Promise<void> {
  const refused: { readonly name: string; readonly failure: Failure }[] = [];
  for (const { name, read } of await readAll(files)) {
    if (!read.ok) {
      refused.push({ name, failure: read.failure });
      continue;
    }
    for (const note of read.value.notes) {
      tell("info", { code: "plan/note", message: note, remedy: "" });
    }
    adopt(read.value.plan, `Open ${name}`);
  }
  const [first, ...others] = refused;
  if (!first) return;
  if (others.length === 0) return tell("error", first.failure);
  const named = others.slice(0, MOST_NAMED).map(({ name }) => `"${name}"`);
  const more = others.length - named.length;
  const list = more > 0 ? `${named.join(", ")} and ${more} more` : named.join(", ");
  const message = `"${first.name}": ${first.failure.message} Not opened as plans either: ${list}.`;
  tell("error", { ...first.failure, message });
}

/** Most files named in one notice beside the first. */
const MOST_NAMED = 5;

function readAll(files: readonly File[]) {
  return Promise.all(
    files.map(async (file) => ({ name: file.name, read: await readPlanOf(file) })),
  );
}

function adopt(next: Plan, note: string): void {
  replacePlan(next, note);
  const open = ground.value;
  const missing = next.terrain.filter(
    (ref) => !open?.files.some((file) => file.name === ref.name && file.bytes === ref.bytes),
  );
  if (missing.length === 0) return;
  tell("info", {
    code: "plan/other-terrain",
    message: `This plan was drawn on ${missing.map((ref) => ref.name).join(", ")}, which is not the ground now open.`,
    remedy: "Open that raster in Ground, or check that the one now open covers the same place.",
  });
}

/** Whatever was dropped or chosen: plan files open as plans, a CSV file as the forecast, everything else as ground. */
export async function openAny(files: readonly File[]): Promise<void> {
  const plans = files.filter((file) => PLAN_NAME.test(file.name));
  const forecasts = files.filter((file) => FORECAST_NAME.test(file.name));
  const rasters = files.filter((file) => !plans.includes(file) && !forecasts.includes(file));
  const failure = rasters.length > 0 ? await openGround(rasters) : null;
  await openPlanFiles(plans);
  for (const file of forecasts) await openForecastFile(file);
  if (failure) tell("error", failure);
}

export function savePlan(): void {
  savePlanFile(plan.value);
}

/** Makes an alternative the one that totals, profile and section speak of. */
export function chooseAlternative(id: string): void {
  if (plan.value.chosenId === id) return;
  const name = plan.value.alignments.find((each) => each.id === id)?.name ?? "alternative";
  report(apply({ note: `Choose ${name}`, change: (now) => ({ ...now, chosenId: id }) }));
}

function report(outcome: { ok: true } | { ok: false; failure: Failure }): void {
  if (!outcome.ok) tell("error", outcome.failure);
}
