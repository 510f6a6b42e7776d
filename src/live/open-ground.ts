import { batch, effect } from "@preact/signals";
import { apartFrom } from "../../shared/apart.ts";
import { asFailure, type Failure } from "../../shared/failure.ts";
import { typicalAccuracy } from "../../shared/ground-accuracy.ts";
import { choicesFor, isSaid } from "../../shared/ground-marks.ts";
import { planOnGround, speaksOf } from "../../shared/ground-settings.ts";
import type { GroundSummary, TerrainFile } from "../../shared/messages.ts";
import type { TerrainRef, VerticalUnit } from "../../shared/plan.ts";
import { formatLength } from "../../shared/units.ts";
import { leftBehind } from "../../shared/words/left-behind.ts";
import { keepTerrain } from "../document/keeping.ts";
import { tell } from "../document/notices.ts";
import { apply, plan } from "../document/store.ts";
import { engine } from "../engine.ts";
import { ground, markMet, openFiles, unitQuestion } from "./ground.ts";
import { busy, unitSystem } from "./screen.ts";
import { sizeAgain } from "./sizing-clock.ts";

/**
 * Opens a raster, or the tiles of one survey with their side-car files. On failure the ground that was
 * open stays open. Where the file states no vertical unit the plan's own answer counts when it names this very
 * file; else the person is asked through `unitQuestion`.
 */
export async function openTerrainFiles(
  files: readonly File[],
  answer: VerticalUnit | null = null,
): Promise<void> {
  const failure = await openGround(files, answer);
  if (failure) tell("error", failure);
}

/** @returns what is to be told: null when the ground is open, was cancelled, or its unit is asked for */
export async function openGround(
  files: readonly File[],
  answer: VerticalUnit | null = null,
): Promise<Failure | null> {
  const own = speaksOf(plan.value, refsOf(files)) ? plan.value.ground.verticalUnit : null;
  const verticalUnit = answer ?? own;
  const marks = choicesFor(plan.peek().ground.marks, refsOf(files));
  const met = openFiles.peek() === files ? markMet.peek() : null;
  const marksAsked = met && !isSaid(met, marks) ? [met] : [];
  const abort = new AbortController();
  try {
    const summary = await engine.openTerrain(
      { files: blobsOf(files), verticalUnit, marks, marksAsked },
      {
        signal: abort.signal,
        onProgress: (share, doing) => {
          busy.value = { doing, share, cancel: () => abort.abort() };
        },
      },
    );
    batch(() => {
      openFiles.value = files;
      markMet.value = met;
      unitQuestion.value = null;
      ground.value = summary;
      sizeAgain.value += 1;
      rememberTerrain(files, summary);
    });
    return null;
  } catch (thrown) {
    const failure = asFailure(thrown);
    if (failure.code === "ground/unit-unknown") await askUnit(files, failure);
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

/** Asks again in which unit the heights of the open ground are, where the person said so. */
export function askUnitAgain(): void {
  void askUnit(openFiles.peek(), {
    code: "ground/unit-unknown",
    message: "In which unit are the heights?",
    remedy: "",
  });
}

async function askUnit(files: readonly File[], failure: Failure): Promise<void> {
  const range = await engine.heightRange({ files: blobsOf(files) }).catch(() => null);
  unitQuestion.value = { files, failure, range };
}

/**
 * Keeps the unit of the ground as the plan says that names it: a plan opened, and an answer taken back or done
 * again, count at once.
 */
export function keepGroundUnit(): () => void {
  let isOpening = false;
  const reopen = async (files: readonly File[], unit: VerticalUnit) => {
    isOpening = true;
    await openTerrainFiles(files, unit);
    isOpening = false;
  };
  return effect(() => {
    const { verticalUnit } = plan.value.ground;
    const [open, asked] = [ground.value, unitQuestion.value];
    const isNamed = (files: readonly TerrainRef[]) =>
      plan.value.terrain.length > 0 && speaksOf(plan.value, files);
    if (verticalUnit === null || isOpening) return;
    const isOther = open?.verticalUnitFrom === "person" && open.verticalUnit !== verticalUnit;
    if (isOther && isNamed(open.files)) void reopen(openFiles.peek(), verticalUnit);
    else if (isAskedFirst(asked?.files) && isNamed(refsOf(asked!.files))) {
      void reopen(asked!.files, verticalUnit);
    }
  });
}

/** Whether files wait for their unit that are not open with another answer already. */
function isAskedFirst(files: readonly File[] | undefined): boolean {
  return files !== undefined && files !== openFiles.peek();
}

function blobsOf(files: readonly File[]): TerrainFile[] {
  return files.map((file) => ({ name: file.name, blob: file }));
}

/** Files as the plan names them. */
export function refsOf(files: readonly File[]): TerrainRef[] {
  return files.map((file) => ({ name: file.name, bytes: file.size }));
}

/** Puts the ground into the plan, unless the plan is of another place: that one keeps what was said of its own. */
function rememberTerrain(files: readonly File[], summary: GroundSummary): void {
  keepTerrain([...files]).catch((thrown) => tell("error", asFailure(thrown)));
  const before = plan.value;
  const terrain = refsOf(files);
  const isNamed = before.terrain.length > 0 && speaksOf(before, terrain);
  if (!isNamed && apartFrom(before, summary.bounds)) return;
  const { plan: onIt, left } = planOnGround(before, terrain);
  const verticalUnit = summary.verticalUnitFrom === "person" ? summary.verticalUnit : null;
  const same =
    before.ground.verticalUnit === verticalUnit &&
    JSON.stringify(before.terrain) === JSON.stringify(terrain);
  if (same) return;
  const { ground: settings, water } = onIt;
  const outcome = apply({
    note: "Open elevation data",
    change: (now) => ({ ...now, terrain, water, ground: { ...settings, verticalUnit } }),
  });
  if (!outcome.ok) tell("error", outcome.failure);
  const length = (m: number) => formatLength(m, unitSystem.value, 2);
  const typical = typicalAccuracy(Math.max(summary.cellXM, summary.cellYM));
  const told = left && leftBehind(left, typical.rmseM, length);
  if (told) tell("info", { ...told, remedy: `${told.remedy} Undo brings them back.` });
}
