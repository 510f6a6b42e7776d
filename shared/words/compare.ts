import { A_STRETCH_M } from "../completeness.ts";
import { lengthBracedM } from "../holding/bracing.ts";
import { factorWords } from "../holding/factor-words.ts";
import { lineVerdict } from "../holding/line-verdict.ts";
import type { LevelDoubt } from "../level-doubt.ts";
import { reachOverItsLimit } from "../reaches.ts";
import type { SizedLine } from "../sizing-types.ts";
import { timeVerdict } from "../time/time-verdict.ts";
import { formatLength, type UnitSystem } from "../units.ts";
import { verdictWord } from "./holding.ts";
import { levelDoubtShort } from "./level-doubt.ts";
import { mustFixWords } from "./must-fix.ts";
import { elapsedWords, whyWords } from "./time.ts";
import { timeVerdictWords } from "./time-verdict.ts";

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

/** Whether a line is finished ahead of the water, and what that rests on. */
export function timeCell(line: SizedLine, system: UnitSystem, mustFix: number): CompareWords {
  const { time, levelDoubt } = line;
  if (levelDoubt) return notKnown(levelDoubt);
  if (!time) return COUNTING;
  const verdict = timeVerdict(line);
  const isGood = verdict.kind === "in-time";
  const why = [
    isGood ? elapsedWords(time) : whyWords(verdict, time, system),
    isGood && mustFix > 0 && mustFixWords(mustFix),
  ].filter((words) => words !== false && words !== "");
  return { word: timeVerdictWords(verdict, system), why: why.join(", "), isBad: !isGood };
}
