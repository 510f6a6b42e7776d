import { A_STRETCH_M } from "../completeness.ts";
import { lengthBracedM } from "../holding/bracing.ts";
import { factorWords } from "../holding/factor-words.ts";
import { lineVerdict } from "../holding/line-verdict.ts";
import type { LevelDoubt } from "../level-doubt.ts";
import { reachOverItsLimit } from "../reaches.ts";
import type { SizedLine } from "../sizing-types.ts";
import { endsBeforeTheWork, riseOverPlanM } from "../time/forecast-end.ts";
import { formatLength, formatStation, type UnitSystem } from "../units.ts";
import { missingWords } from "./counted.ts";
import { crewInputWords } from "./crew.ts";
import { verdictWord } from "./holding.ts";
import { levelDoubtShort } from "./level-doubt.ts";
import { mustFixWords } from "./must-fix.ts";
import { elapsedWords, mainVerdict } from "./time.ts";

/** What a cell of the comparison says of a line. */
export interface CompareWords {
  readonly word: string;
  /** What it rests on; empty where there is nothing to add. */
  readonly why: string;
  /** True where it speaks against the line. */
  readonly isBad: boolean;
}

function notKnown(doubt: LevelDoubt): CompareWords {
  return { word: "not known", why: levelDoubtShort(doubt), isBad: true };
}

const COUNTING: CompareWords = { word: "…", why: "", isBad: false };

/** What sliding and overturning calculate at where they are lowest, what that leaves out, and what must be fixed. */
export function stabilityCell(line: SizedLine, system: UnitSystem, mustFix: number): CompareWords {
  const { holding, totals, levelDoubt } = line;
  if (levelDoubt?.countsUnknown) return notKnown(levelDoubt);
  if (!holding) return COUNTING;
  if (totals.lengthNoDataM >= totals.lengthM) return { word: "not known", why: "", isBad: false };
  const bracedM = lengthBracedM(line);
  const overM = totals.lengthOverLimitM;
  const beside = [
    overM > A_STRETCH_M && `${formatLength(overM, system, 0)} over the height limit`,
    totals.lengthNoDataM > 0 &&
      `${formatLength(totals.lengthNoDataM, system, 0)} without elevation data`,
    bracedM > 0 && `${formatLength(bracedM, system, 0)} braced, not calculated`,
    mustFix > 0 && mustFixWords(mustFix),
  ].filter((words) => words !== false);
  if (!holding.standing) {
    const word = bracedM > 0 ? "not known" : "no water against it";
    return { word, why: beside.join(", "), isBad: false };
  }
  const { verdict, by, weakest } = lineVerdict(holding.standing);
  const over = verdict === "below-required" ? null : reachOverItsLimit(line);
  return {
    word: over ? "over a height limit" : verdictWord(verdict),
    why: [
      over?.sectionName.toLowerCase() ?? `${by} ${factorWords(weakest.factor)}`,
      ...beside,
    ].join(", "),
    isBad: over !== null || verdict !== "meets-required",
  };
}

/** Whether a line is finished ahead of the water, at the slow pace against the likely forecast. */
export function inTimeWords(line: SizedLine, system: UnitSystem, mustFix: number): CompareWords {
  const { time, levelDoubt } = line;
  if (levelDoubt) return notKnown(levelDoubt);
  if (!time) return COUNTING;
  if (time.missing.length > 0) {
    return { word: "not known", why: `type ${crewInputWords(time.missing)}`, isBad: true };
  }
  if (time.verdicts.length === 0) return { word: "no forecast", why: "", isBad: false };
  if (time.inTime === null) {
    return { word: "not known", why: missingWords(line.totals, system), isBad: true };
  }
  const riseM = riseOverPlanM(time);
  if (time.inTime && riseM > 0) {
    return {
      word: "too low",
      why: `the forecast crest is ${formatLength(riseM, system)} higher`,
      isBad: true,
    };
  }
  if (time.inTime && endsBeforeTheWork(time)) {
    return { word: "not known", why: "the forecast ends first", isBad: true };
  }
  if (time.inTime) {
    const fix = mustFix > 0 ? `, ${mustFixWords(mustFix)}` : "";
    return { word: "yes", why: elapsedWords(time) + fix, isBad: false };
  }
  const atM = mainVerdict(time)?.behindAtM ?? null;
  const why = atM === null ? "" : `first behind at ${formatStation(atM, system)}`;
  return { word: "no", why, isBad: true };
}
