import { fstatSync } from "node:fs";
import { readFile, stat } from "node:fs/promises";
import type { CheckedBuilding } from "../../shared/buildings/types.ts";
import { type Refusal, refusal } from "../../shared/failure.ts";
import { momentOf } from "../../shared/time/forecast-time.ts";
import { differences } from "./check-name.ts";

/** What an interrupted check has written. */
interface Resumed {
  readonly known: readonly CheckedBuilding[];
  /** Lines that are cut off, as by a run that was ended in one. */
  readonly cutOff: number;
  /** Lines of a building that is in the file before. */
  readonly repeated: number;
}

/**
 * The buildings that interrupted runs of the same check have answered, each once; of several answers the last counts.
 * Lines that are cut off, groups and choice are left out, and buildings that failed: they are tried again.
 * @param check name of the check that goes on
 * @throws Refusal `sweep/no-file`, `sweep/own-output`, `sweep/bad-line`, `sweep/other-check`
 */
export async function readResumed(path: string, check: string): Promise<Resumed> {
  await refuseOwnOutput(path);
  const text = await readFile(path, "utf8").catch(() => {
    throw refusal("sweep/no-file", { path });
  });
  const known = new Map<string, CheckedBuilding>();
  let [cutOff, repeated] = [0, 0];
  for (const [index, line] of text.split("\n").entries()) {
    if (line.trim() === "") continue;
    const value = parsed(line);
    if (!value) {
      if (!line.startsWith("{")) throw badLine(path, index);
      cutOff++;
      continue;
    }
    if (!("id" in value)) continue;
    if (value.check !== check) {
      const differ = differences(check, value.check);
      throw refusal("sweep/other-check", { path, line: index + 1, differ });
    }
    if (value.failed !== null) continue;
    const found = checkedOf(path, index, value);
    if (known.has(found.id)) repeated++;
    known.set(found.id, found);
  }
  return { known: [...known.values()], cutOff, repeated };
}

/** A shell empties the file that output goes to before the program starts. */
async function refuseOwnOutput(path: string): Promise<void> {
  const found = await stat(path).catch(() => null);
  const output = fstatSync(process.stdout.fd);
  const isOutput = found?.ino === output.ino && found.dev === output.dev;
  if (!found?.isFile() || !isOutput || found.size > 0) return;
  throw refusal("sweep/own-output", { path });
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
  return refusal("sweep/bad-line", { path, line: index + 1 });
}
