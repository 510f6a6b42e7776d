import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import type {
  AtStage,
  Building,
  CheckedBuilding,
  CheckedGroup,
} from "../../shared/buildings/types.ts";
import { timeOf } from "../../shared/defaults.ts";
import { Refusal } from "../../shared/failure.ts";
import type { OpenTerrainRequest } from "../../shared/messages.ts";
import type { Plan } from "../../shared/plan.ts";
import { waterElevationAtGauge } from "../../shared/stage.ts";
import { momentOf, momentText } from "../../shared/time/forecast-time.ts";
import { startOfWork } from "../../shared/time/start.ts";
import { rounded } from "./json.ts";

/** A check of many buildings, as the lines name it. */
export interface SweepOf {
  readonly plan: Plan;
  /** Tells one check from another: the same where plan, buildings, levels and elevation data are the same. */
  readonly check: string;
}

interface Asked {
  readonly plan: Plan;
  readonly buildings: readonly Building[];
  readonly levelsM: readonly number[];
  readonly mostOnOneLine: number;
  readonly ground: Omit<OpenTerrainRequest, "files"> & {
    readonly files: readonly {
      readonly name: string;
      readonly bytes: number;
      readonly at: number;
    }[];
  };
}

const DIGITS = 16;

/** A name for a check that follows from all that its answers follow from. */
export function checkName({ plan, ...rest }: Asked): string {
  const { title: _, alignments: __, chosenId: ___, progress: ____, carried: _____, ...read } = plan;
  const asked = JSON.stringify([read, rest]);
  return createHash("sha256").update(asked).digest("hex").slice(0, DIGITS);
}

/** One building as a line of output. Times are of the forecast's clock. */
export function buildingLine({ plan, check }: SweepOf, checked: CheckedBuilding): string {
  const { id, name, state, depthM, line, at, failed } = checked;
  const { floorM, weight, priority, sillM } = checked;
  return lineOf({
    ...{ id, name, state, depthM },
    ...timesOf(plan, checked),
    ...shapeOf(line),
    byStage: stagesOf(plan, checked.byStage),
    ...{ sillM, floorM, weight, priority, at, failed, check },
  });
}

/** One group as a line of output. */
export function groupLine({ plan, check }: SweepOf, group: CheckedGroup): string {
  const { id, members, state, line } = group;
  return lineOf({
    ...{ group: id, members, state },
    ...timesOf(plan, group),
    ...shapeOf(line),
    byStage: stagesOf(plan, group.byStage),
    check,
  });
}

/** Any line of output: numbers rounded as in all answers of the program. */
export function lineOf(value: unknown): string {
  return `${JSON.stringify(rounded(value))}\n`;
}

function timesOf(plan: Plan, { firstWetAtS, latestStartAtS, closedByAtS }: Times) {
  const start = startOfWork(timeOf(plan));
  const text = (atS: number | null) =>
    atS === null ? null : momentText({ atS, offsetMin: start?.offsetMin ?? null });
  return {
    firstWetAt: text(firstWetAtS),
    latestStartAt: text(latestStartAtS),
    closedByAt: text(closedByAtS),
  };
}

type Times = Pick<CheckedBuilding, "firstWetAtS" | "latestStartAtS" | "closedByAtS">;

const NO_LINE = {
  ...{ kind: null, coordinates: null, bags: null, leveeBags: null, sandM3: null, sheetM2: null },
  ...{ personHours: null, greatestHeightM: null, lengthM: null, lengthOverLimitM: null },
  mustFix: null,
};

function shapeOf(line: CheckedBuilding["line"]): object {
  return line ?? NO_LINE;
}

function stagesOf({ water }: Plan, stages: readonly AtStage[]) {
  const byM = water.by === "stage" ? waterElevationAtGauge(water) - water.stageM : null;
  return stages.map(({ atGaugeM, ...rest }) => ({
    stageM: byM === null ? null : atGaugeM - byM,
    atGaugeM,
    ...rest,
  }));
}

/** What an interrupted check has written. */
export interface Resumed {
  readonly known: readonly CheckedBuilding[];
}

/**
 * The buildings that an interrupted run of the same check has answered. A last line that is cut off, groups and
 * choice are left out, and buildings that failed: they are tried again.
 * @throws Refusal `sweep/bad-line`, `sweep/other-check`, `sweep/no-file`
 */
export async function readResumed(path: string, { check }: SweepOf): Promise<Resumed> {
  const text = await readFile(path, "utf8").catch(() => {
    throw new Refusal(
      "sweep/no-file",
      `Expected the output of an interrupted run; ${path} cannot be read.`,
      "Check the name and the folder, or leave --resume out to start anew.",
    );
  });
  const lines = text.split("\n");
  const known: CheckedBuilding[] = [];
  for (const [index, line] of lines.entries()) {
    if (line.trim() === "") continue;
    const value = parsed(line);
    if (!value) {
      if (index === lines.length - 1) continue;
      throw badLine(path, index);
    }
    if (!("id" in value)) continue;
    if (value.check !== check) throw otherCheck(path);
    if (value.failed === null) known.push(checkedOf(path, index, value));
  }
  return { known };
}

type Fields = Readonly<Record<string, unknown>>;

function parsed(line: string): Fields | null {
  try {
    const value: unknown = JSON.parse(line);
    return value !== null && typeof value === "object" ? (value as Fields) : null;
  } catch {
    return null;
  }
}

function checkedOf(path: string, index: number, value: Fields): CheckedBuilding {
  const {
    firstWetAt,
    latestStartAt,
    closedByAt,
    kind,
    coordinates,
    byStage,
    check: _,
    ...rest
  } = value;
  const { bags, leveeBags, sandM3, sheetM2, personHours, ...others } = rest;
  const { greatestHeightM, lengthM, lengthOverLimitM, mustFix, ...own } = others;
  if (typeof value.id !== "string" || !Array.isArray(byStage)) throw badLine(path, index);
  const secondsOf = (text: unknown) =>
    typeof text === "string" ? (momentOf(text)?.atS ?? null) : null;
  const figures = {
    ...{ bags, leveeBags, sandM3, sheetM2, personHours },
    ...{ greatestHeightM, lengthM, lengthOverLimitM, mustFix },
  };
  return {
    ...own,
    firstWetAtS: secondsOf(firstWetAt),
    latestStartAtS: secondsOf(latestStartAt),
    closedByAtS: secondsOf(closedByAt),
    line: kind === null ? null : { kind, coordinates, ...figures },
    byStage: byStage.map(({ stageM: __, ...stage }) => stage),
  } as unknown as CheckedBuilding;
}

function badLine(path: string, index: number): Refusal {
  return new Refusal(
    "sweep/bad-line",
    `${path}, line ${index + 1}: expected one JSON object, as "sweep" writes them.`,
    "Give the file as it was written, or leave --resume out to start anew.",
  );
}

function otherCheck(path: string): Refusal {
  return new Refusal(
    "sweep/other-check",
    `${path} holds answers of another check: its plan, buildings, stages or elevation data are not these.`,
    "Name the same files and stages again, or leave --resume out to start anew.",
  );
}
