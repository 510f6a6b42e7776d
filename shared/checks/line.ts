import { type PlaneLine, placeAt } from "../alignment.ts";
import { piecesMeet } from "../plane-polygon.ts";
import type { CheckContext, Finding, Rule } from "./rule.ts";
import { elevationWords, lengthWords, stationWords } from "./words.ts";

const MOST_CROSSINGS = 5;
/** A leg that turns back on the one before within this sine of the angle lies on it. */
const DOUBLED_BACK = 0.005;

/** Lines that meet themselves. */
export const crossesItself: Rule = {
  id: "crosses-itself",
  rule: "The line neither crosses nor touches itself.",
  source: "judgement",
  find: ({ line, plane }) =>
    meetings(line)
      .slice(0, MOST_CROSSINGS)
      .map(([chainageM, otherM]): Finding => {
        const { xM, yM } = placeAt(line, chainageM);
        return {
          severity: "stop",
          stretch: null,
          chainageM,
          sample: null,
          at: plane.toLonLat(xM, yM),
          message: `The line meets itself at ${stationWords(chainageM)} and ${stationWords(otherM)}: bags there are counted twice, and what is inside is not clear.`,
          remedy: "Move the corners so that the legs lie apart.",
        };
      }),
};

/** Pairs of chainages at which two legs meet that are not neighbours, or at which a leg turns back. */
function meetings(line: PlaneLine): [number, number][] {
  const { xM, yM, chainageM } = line;
  const legs = Array.from({ length: line.legs }, (_, i) => i).filter(
    (i) => chainageM[i + 1]! > chainageM[i]!,
  );
  const found: [number, number][] = [];
  for (let a = 0; a < legs.length; a++) {
    for (let b = a + 1; b < legs.length; b++) {
      const [i, j] = [legs[a]!, legs[b]!];
      const follows = b === a + 1;
      const closes = line.closed && a === 0 && b === legs.length - 1;
      if (follows && turnsBack(line, i, j)) found.push([chainageM[j]!, chainageM[j]!]);
      else if (closes && turnsBack(line, j, i)) found.push([chainageM[i]!, line.lengthM]);
      if (follows || closes) continue;
      const share = piecesMeet(
        xM[i]!,
        yM[i]!,
        xM[i + 1]!,
        yM[i + 1]!,
        xM[j]!,
        yM[j]!,
        xM[j + 1]!,
        yM[j + 1]!,
      );
      if (share === null) continue;
      const meetX = xM[i]! + share * (xM[i + 1]! - xM[i]!);
      const meetY = yM[i]! + share * (yM[i + 1]! - yM[i]!);
      found.push([
        chainageM[i]! + share * (chainageM[i + 1]! - chainageM[i]!),
        chainageM[j]! + Math.hypot(meetX - xM[j]!, meetY - yM[j]!),
      ]);
    }
  }
  return found;
}

function turnsBack({ xM, yM }: PlaneLine, before: number, after: number): boolean {
  const beforeX = xM[before + 1]! - xM[before]!;
  const beforeY = yM[before + 1]! - yM[before]!;
  const afterX = xM[after + 1]! - xM[after]!;
  const afterY = yM[after + 1]! - yM[after]!;
  const lengths = Math.hypot(beforeX, beforeY) * Math.hypot(afterX, afterY);
  const sine = (beforeX * afterY - beforeY * afterX) / lengths;
  return Math.abs(sine) < DOUBLED_BACK && beforeX * afterX + beforeY * afterY < 0;
}

/** Ends of an open line on high ground. */
export const tieIn: Rule = {
  id: "tie-in",
  rule: "Both ends of an open line reach ground at the crest.",
  source: "NDSU-11",
  find: (context) => {
    const last = context.trace.count - 1;
    return context.line.closed ? [] : [...endFindings(context, 0), ...endFindings(context, last)];
  },
};

function endFindings({ trace, cuts }: CheckContext, sample: number): Finding[] {
  const groundM = cuts.groundM[sample]!;
  const shortM = trace.crestM[sample]! - groundM;
  if (!(shortM > 0.001)) return [];
  const belowWater = groundM < trace.waterM[sample]!;
  const chainageM = trace.chainageM[sample]!;
  const water = belowWater
    ? "The forecast water goes round it"
    : "Its ground is above the forecast water but within the freeboard";
  return [
    {
      severity: belowWater ? "stop" : "caution",
      stretch: null,
      chainageM,
      sample,
      message: `The end at ${stationWords(chainageM)} stands on ground at ${elevationWords(groundM)}, ${lengthWords(shortM)} below the crest. ${water}.`,
      remedy: "Lead this end on until the ground reaches the crest, as short and low as possible.",
    },
  ];
}
