import {
  asFailure,
  type Failure,
  type FailureCode,
  failureOf,
  givenOf,
} from "../../shared/failure.ts";
import { speaksOf } from "../../shared/ground-settings.ts";
import { SHAPE_NAME } from "../../shared/imports/shape-files.ts";
import { loadPart } from "../../shared/load-part.ts";
import { isGroundName } from "../../shared/raster-files.ts";
import { droppedFiles } from "../browser/dropped-files.ts";
import { readPlanOf, savePlanFile } from "../document/files.ts";
import { tell, withdrawAll } from "../document/notices.ts";
import { apply, plan, replacePlan } from "../document/store.ts";
import { ground, groundsOpening, unitQuestion } from "./ground.ts";
import { importShapes } from "./import-shapes.ts";
import { openGround, tellGround } from "./open-ground.ts";
import { planElsewhere } from "./plan-apart.ts";

const PLAN_NAME = /\.(geojson|json)$/i;
const FORECAST_NAME = /\.(csv|tsv|rdb|shef|wml)$/i;

const forecastDraft = () =>
  loadPart("the reader of forecasts", () => import("./forecast-draft.ts"));

/**
 * Opens plan files one after the other. A damaged, foreign or newer file is refused and the present plan
 * stays; several refusals are told as one.
 */
async function openPlanFiles(files: readonly File[]): Promise<void> {
  const refused: { readonly name: string; readonly why: Failure }[] = [];
  for (const { file, read } of await readAll(files)) {
    const { name } = file;
    if (!read.ok) {
      const why = await whyNot(file, read.failure);
      if (why) refused.push({ name, why });
      continue;
    }
    withdrawAll("plan/");
    for (const note of read.value.notes) tell("info", note);
    replacePlan(read.value.plan, `Open ${name}`);
  }
  const [first, ...others] = refused;
  if (!first) return;
  if (others.length === 0) return tell("error", first.why);
  tell("error", failureOf("plan/several", { first, others: others.map(({ name }) => name) }));
}

function readAll(files: readonly File[]) {
  return Promise.all(files.map(async (file) => ({ file, read: await readPlanOf(file) })));
}

/** Reasons why a file of shapes is not taken; any other says that it has none to take. */
const OF_SHAPES = new Set<string>([
  ...(["footprints/elsewhere", "footprints/other-grid"] satisfies FailureCode[]),
  ...(["shapes/axis-order", "shapes/no-ground"] satisfies FailureCode[]),
]);

/**
 * Why a file that could not be read as a plan is refused: nothing where it has shapes on the ground that is open, of
 * which the person is then asked what they are; why its shapes are not taken; else why it is no plan.
 */
async function whyNot(file: File, failure: Failure): Promise<Failure | null> {
  const foreign = givenOf("plan/foreign", failure);
  if (!foreign) return failure;
  const asShapes = await importShapes(file, null);
  if (asShapes === null) return null;
  return foreign.how !== "settings-lost" && OF_SHAPES.has(asShapes.code) ? asShapes : failure;
}

/** Says it where a plan just opened names other elevation data than the one that is open. */
function tellOtherTerrain(): void {
  const open = ground.value;
  const { terrain } = plan.value;
  if (terrain.length === 0 || planElsewhere.value) return;
  if (open && speaksOf(plan.value, open.files)) return;
  tell("info", failureOf("plan/other-terrain", { names: terrain.map(({ name }) => name) }));
}

/**
 * Whatever was dropped or chosen: plan files open as plans, a CSV file as the forecast, KML, GPX and zip files as
 * shapes, everything else as ground; a file whose name is none of elevation data and that begins as a forecast is one. A GeoJSON file that is no plan is taken for shapes too.
 */
export async function openAny(files: readonly File[]): Promise<void> {
  groundsOpening.value += 1;
  await openEach(files).finally(() => {
    groundsOpening.value -= 1;
  });
}

/** The same for what was dropped: of a folder the elevation data in it. */
export async function openDropped(transfer: DataTransfer): Promise<void> {
  try {
    const files = await droppedFiles(transfer);
    if (files.length > 0) await openAny(files);
  } catch (thrown) {
    tellGround(asFailure(thrown));
  }
}

async function openEach(files: readonly File[]): Promise<void> {
  const plans = files.filter((file) => PLAN_NAME.test(file.name));
  const shapes = files.filter((file) => SHAPE_NAME.test(file.name));
  const named = new Set([...plans, ...shapes]);
  const forecasts = await forecastsIn(files.filter((file) => !named.has(file)));
  const known = new Set([...named, ...forecasts]);
  const rasters = files.filter((file) => !known.has(file));
  await openPlanFiles(plans);
  const failure = rasters.length > 0 ? await openGround(rasters) : null;
  if (plans.length > 0 && !unitQuestion.value) tellOtherTerrain();
  for (const file of forecasts) await (await forecastDraft()).openForecastFile(file);
  for (const file of shapes) {
    const refused = await importShapes(file, null);
    if (refused) tell("error", refused);
  }
  if (failure) tellGround(failure);
}

async function forecastsIn(files: readonly File[]): Promise<File[]> {
  const isForecast = async (file: File) =>
    FORECAST_NAME.test(file.name) ||
    (!isGroundName(file.name) && (await forecastDraft()).startsAsForecast(file));
  const are = await Promise.all(files.map(isForecast));
  return files.filter((_, k) => are[k]);
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
