import { batch, effect } from "@preact/signals";
import { gapTo } from "../../shared/apart.ts";
import { asFailure, type Failure, failureOf } from "../../shared/failure.ts";
import { longestCellM, typicalAccuracy } from "../../shared/ground-accuracy.ts";
import { choicesFor, isSaid } from "../../shared/ground-marks.ts";
import { leftBehind, planOnGround, speaksOf } from "../../shared/ground-settings.ts";
import type { GroundSummary, OpenTerrainRequest } from "../../shared/messages.ts";
import type { TerrainRef, VerticalUnit } from "../../shared/plan.ts";
import { openAddresses } from "../browser/address-ranges.ts";
import { storeTerrain } from "../document/autosave.ts";
import { tell, withdrawAll } from "../document/notices.ts";
import { apply, plan, replacePlan } from "../document/store.ts";
import { viewing } from "../document/viewing.ts";
import { engine } from "../engine.ts";
import { type DemoSite, example, isTouched, siteOf } from "./demo-sites.ts";
import { addressedIn, FileAt } from "./file-at.ts";
import {
  ground,
  groundFailure,
  groundsOpening,
  markMet,
  openFiles,
  unitQuestion,
} from "./ground.ts";
import { freshPlan } from "./new-plan.ts";
import { busy } from "./screen.ts";
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
  if (failure) tellGround(failure);
}

/**
 * Opens elevation data because the plan names them. Where the plan has named others since, by undo or another file,
 * they are not put into it: `keepGroundOfPlan` opens its own after them.
 */
export async function openTerrainOfPlan(files: readonly File[]): Promise<void> {
  const named = () => JSON.stringify(plan.peek().terrain);
  const before = named();
  const isWanted = () => named() === before;
  const failure = await openGround(files, null, { isWanted });
  if (failure) tellGround(failure);
}

/**
 * Opens the elevation data that the page begins with. What a person opens meanwhile goes first, and what is said of it stays;
 * these come after it where it was none, and where the plan still names them.
 */
export async function openTerrainAtStart(files: readonly File[]): Promise<void> {
  const named = JSON.stringify(plan.peek().terrain);
  const isWanted = () => JSON.stringify(plan.peek().terrain) === named;
  let own: number;
  do {
    while (underWay) await underWay.over;
    if (!isWanted() || ground.peek()) return;
    own = openings + 1;
    const failure = await openGround(files, null, { isWanted, isAside: true });
    if (failure) return tellGround(failure);
  } while (own !== openings);
}

/** Says why elevation data could not be opened: at the first step where that is on screen, else in a notice. */
export function tellGround(failure: Failure): void {
  if (ground.peek() || example.peek()) tell("error", failure);
  else groundFailure.value = failure;
}

/** The opening that is under way: what a person opens next takes its place, however late the first one answers. */
let underWay: { readonly abort: AbortController; readonly over: Promise<unknown> } | null = null;
/** How many were begun. */
let openings = 0;

interface HowOpened {
  /** Whether the files go into the plan when they are open. */
  readonly isWanted?: () => boolean;
  /** True where what is said and put to the person of other files stays: they were opened by a person meanwhile. */
  readonly isAside?: boolean;
}

/** @returns what is to be told: null when the ground is open, was cancelled, or its unit is asked for */
export function openGround(
  files: readonly File[],
  answer: VerticalUnit | null = null,
  how: HowOpened = {},
): Promise<Failure | null> {
  openings += 1;
  underWay?.abort.abort();
  const abort = new AbortController();
  const opening = openUntil(abort, files, answer, how).finally(() => {
    if (underWay?.abort === abort) underWay = null;
  });
  underWay = { abort, over: opening };
  return opening;
}

async function openUntil(
  abort: AbortController,
  files: readonly File[],
  answer: VerticalUnit | null,
  { isWanted = () => true, isAside = false }: HowOpened,
): Promise<Failure | null> {
  const own = speaksOf(plan.value, refsOf(files)) ? plan.value.ground.verticalUnit : null;
  const verticalUnit = answer ?? own;
  const marks = choicesFor(plan.peek().ground.marks, refsOf(files));
  const met = openFiles.peek() === files ? markMet.peek() : null;
  const marksAsked = met && !isSaid(met, marks) ? [met] : [];
  groundsOpening.value += 1;
  groundFailure.value = null;
  openAddresses(hrefsIn([...files, ...openFiles.peek()]));
  try {
    const summary = await engine.openTerrain(
      { ...requestOf(files), verticalUnit, marks, marksAsked },
      {
        signal: abort.signal,
        onProgress: (share, doing) => {
          busy.value = { doing, share, cancel: () => abort.abort() };
        },
      },
    );
    for (const file of addressedIn(files)) file.length = lengthIn(summary, file);
    batch(() => {
      openFiles.value = files;
      markMet.value = met;
      ground.value = summary;
      sizeAgain.value += 1;
      if (!isAside) {
        unitQuestion.value = null;
        withdrawAll("raster/", "ground/", "address/", "plan/other-terrain");
      }
      if (isWanted()) rememberTerrain(files, summary);
    });
    return null;
  } catch (thrown) {
    const failure = asFailure(thrown);
    if (failure.code === "ground/unit-unknown") await askUnit(files, failure);
    else if (failure.code !== "cancelled") return failure;
    return null;
  } finally {
    openAddresses(hrefsIn(unitQuestion.peek()?.files ?? openFiles.peek()));
    busy.value = null;
    groundsOpening.value -= 1;
  }
}

/** The person's answer to `unitQuestion`. */
export async function answerVerticalUnit(unit: VerticalUnit): Promise<void> {
  const asked = unitQuestion.value;
  if (asked) await openTerrainFiles(asked.files, unit);
}

/** Asks again in which unit the heights of the open ground are, where the person said so. */
export function askUnitAgain(): void {
  void askUnit(openFiles.peek(), null);
}

async function askUnit(files: readonly File[], failure: Failure | null): Promise<void> {
  const range = await engine.heightRange(requestOf(files)).catch(() => null);
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

function requestOf(files: readonly File[]): Pick<OpenTerrainRequest, "files" | "addressed"> {
  const addressed = addressedIn(files);
  const here = files.filter((file) => !(file instanceof FileAt));
  return {
    files: here.map((file) => ({ name: file.name, blob: file })),
    addressed: addressed.map(({ at: { name, href, host } }) => ({ name, href, host })),
  };
}

function hrefsIn(files: readonly File[]): string[] {
  return addressedIn(files).map(({ at }) => at.href);
}

function lengthIn({ files }: GroundSummary, { name, length }: FileAt): number {
  return files.find((file) => file.name === name)?.bytes ?? length;
}

/** Files as the plan names them. */
export function refsOf(files: readonly File[]): TerrainRef[] {
  return files.map((file) => ({
    ...{ name: file.name, bytes: file.size },
    ...(file instanceof FileAt ? { address: file.at.href } : {}),
  }));
}

/**
 * Puts the ground into the plan, unless the plan is of another place: that one keeps what was said of its own. A page
 * that only looks on follows the plan as another page edits it.
 */
function rememberTerrain(files: readonly File[], summary: GroundSummary): void {
  if (viewing.peek()) return;
  const here = files.filter((file) => !(file instanceof FileAt));
  storeTerrain(here).catch((thrown) => tell("error", asFailure(thrown)));
  const before = plan.value;
  const terrain = refsOf(files);
  const left = siteOf(before.terrain);
  if (left && siteOf(terrain) !== left) {
    leaveExample(left, terrain, summary);
    return;
  }
  const isNamed = before.terrain.length > 0 && speaksOf(before, terrain);
  if (!isNamed && gapTo(before, summary.bounds)) return;
  const { plan: onIt, left: said } = planOnGround(before, terrain);
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
  const typical = typicalAccuracy(longestCellM(summary));
  const about = said && leftBehind(said, typical.rmseM, true);
  if (about) tell("info", about);
}

/** Ground of one's own under an example starts a plan of one's own; the example comes back with undo. */
function leaveExample(
  site: DemoSite,
  terrain: readonly TerrainRef[],
  summary: GroundSummary,
): void {
  const touched = isTouched(site, plan.peek());
  const outcome = replacePlan(freshPlan(summary, terrain, undefined), `Open ${summary.name}`);
  if (!outcome.ok) tell("error", outcome.failure);
  else if (touched) tell("info", failureOf("plan/example-left", { ground: summary.name }));
}
