import { type PlaneLine, placeAt } from "../alignment.ts";
import { piecesMeet } from "../plane-polygon.ts";
import { type CheckContext, type Finding, ofSample, type Rule } from "./rule.ts";

const MOST_CROSSINGS = 5;
/** A leg that turns back on the one before within this sine of the angle lies on it. */
const DOUBLED_BACK = 0.005;
/** Legs nearer than this touch: a corner meant to lie on a leg is seldom exactly there, and a bag is wider. */
const TOUCHES_M = 0.1;
/** Places nearer than this along the line are one bend, not a meeting. */
const ONE_BEND_M = 1;

/** Metres. */
export type LineFinding =
  | { readonly kind: "crosses-itself"; readonly firstM: number; readonly secondM: number }
  | {
      readonly kind: "tie-in";
      readonly endM: number;
      readonly groundM: number;
      readonly belowTopM: number;
      /** True where the sized-for water goes round the end; else its ground is within the freeboard. */
      readonly belowWater: boolean;
    };

/** Lines that meet themselves. */
export const crossesItself: Rule = {
  id: "crosses-itself",
  find: ({ line, plane }) =>
    apart(meetings(line), line).map(([chainageM, otherM]): Finding => {
      const { xM, yM } = placeAt(line, chainageM);
      return {
        severity: "stop",
        finding: { kind: "crosses-itself", firstM: chainageM, secondM: otherM },
        ...{ where: null, stretch: null, chainageM, sample: null },
        at: plane.toLonLat(xM, yM),
      };
    }),
};

/** The first few meetings that do not lie at one place with one before. */
function apart(meetings: readonly [number, number][], line: PlaneLine): [number, number][] {
  const kept: { readonly pair: [number, number]; readonly xM: number; readonly yM: number }[] = [];
  for (const pair of meetings) {
    if (kept.length === MOST_CROSSINGS) break;
    const { xM, yM } = placeAt(line, pair[0]);
    const isNew = kept.every((each) => Math.hypot(each.xM - xM, each.yM - yM) > ONE_BEND_M);
    if (isNew) kept.push({ pair, xM, yM });
  }
  return kept.map(({ pair }) => pair);
}

/** Pairs of chainages at which two legs meet that are not neighbours, or at which a leg turns back. */
function meetings(line: PlaneLine): [number, number][] {
  const { chainageM } = line;
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
      if (follows || closes || farApart(line, i, j)) continue;
      const meeting = crossing(line, i, j) ?? touching(line, i, j);
      if (meeting) found.push(meeting);
    }
  }
  return found;
}

/** Chainages at which two legs cross or exactly touch. */
function crossing({ xM, yM, chainageM }: PlaneLine, i: number, j: number): [number, number] | null {
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
  if (share === null) return null;
  const meetX = xM[i]! + share * (xM[i + 1]! - xM[i]!);
  const meetY = yM[i]! + share * (yM[i + 1]! - yM[i]!);
  return [
    chainageM[i]! + share * (chainageM[i + 1]! - chainageM[i]!),
    chainageM[j]! + Math.hypot(meetX - xM[j]!, meetY - yM[j]!),
  ];
}

/** Chainages at which an end of one leg comes near enough to the other to touch it. */
function touching(line: PlaneLine, i: number, j: number): [number, number] | null {
  const meetings: [number, number][] = [
    [line.chainageM[i]!, besides(line, i, j)],
    [line.chainageM[i + 1]!, besides(line, i + 1, j)],
    [besides(line, j, i), line.chainageM[j]!],
    [besides(line, j + 1, i), line.chainageM[j + 1]!],
  ];
  return meetings.find(([first, second]) => alongM(line, first, second) > ONE_BEND_M) ?? null;
}

/** Chainage of the place on a leg that a corner touches; NaN where it does not. */
function besides({ xM, yM, chainageM }: PlaneLine, corner: number, leg: number): number {
  const eastM = xM[leg + 1]! - xM[leg]!;
  const northM = yM[leg + 1]! - yM[leg]!;
  const towardX = xM[corner]! - xM[leg]!;
  const towardY = yM[corner]! - yM[leg]!;
  const raw = (towardX * eastM + towardY * northM) / (eastM * eastM + northM * northM);
  const share = Math.min(1, Math.max(0, raw));
  const apartM = Math.hypot(towardX - share * eastM, towardY - share * northM);
  if (apartM > TOUCHES_M) return Number.NaN;
  return chainageM[leg]! + share * (chainageM[leg + 1]! - chainageM[leg]!);
}

/** Shortest way along the line between two chainages. */
function alongM({ closed, lengthM }: PlaneLine, first: number, second: number): number {
  const betweenM = Math.abs(second - first);
  return closed ? Math.min(betweenM, lengthM - betweenM) : betweenM;
}

/** True where the boxes of two legs lie too far apart for the legs to touch. */
function farApart({ xM, yM }: PlaneLine, i: number, j: number): boolean {
  return isApart(xM, i, j) || isApart(yM, i, j);
}

function isApart(m: Float64Array, i: number, j: number): boolean {
  const before = Math.max(m[i]!, m[i + 1]!) + TOUCHES_M < Math.min(m[j]!, m[j + 1]!);
  return before || Math.max(m[j]!, m[j + 1]!) + TOUCHES_M < Math.min(m[i]!, m[i + 1]!);
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
  find: (context) => {
    const last = context.samples.count - 1;
    return context.line.closed ? [] : [...endFindings(context, 0), ...endFindings(context, last)];
  },
};

function endFindings(context: CheckContext, sample: number): Finding[] {
  const { samples, cuts } = context;
  const groundM = cuts.groundM[sample]!;
  const belowTopM = samples.crestM[sample]! - groundM;
  if (!(belowTopM > 0.001)) return [];
  const belowWater = groundM < samples.waterM[sample]!;
  const figures = { endM: samples.chainageM[sample]!, groundM, belowTopM, belowWater };
  const found = ofSample(belowWater ? "stop" : "caution", context, sample, {
    kind: "tie-in",
    ...figures,
  });
  return [{ ...found, where: null }];
}
