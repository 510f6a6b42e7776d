import type { Reach, SizedLine } from "../../shared/sizing-types.ts";

/** How far before its end a reach is cut across there, metres. */
const END_M = 0.05;
/** Closer than this the marked station is one that is drawn already, metres. */
const SAME_M = 2;

/** A station that is drawn, and why. */
interface Drawn {
  readonly chainageM: number;
  readonly why: "the highest" | "marked";
}

/** Where each section of a line is highest, in their order along it, and the marked station where it is apart. */
export function drawnStations(line: SizedLine, markedM: number | null): readonly Drawn[] {
  const kinds = [...new Set(line.reaches.map(({ section }) => section))];
  const highest = kinds.map((kind): Drawn => {
    const first = line.reaches.find(({ section }) => section === kind)!;
    const own = line.reaches.filter(({ section }) => section === kind);
    const tallest = own.reduce((most, each) =>
      each.totals.greatestHeightM > most.totals.greatestHeightM ? each : most,
    );
    const isBuilt = tallest.totals.greatestHeightM > 0;
    const chainageM = isBuilt ? tallest.totals.greatestHeightAtM : (first.fromM + first.toM) / 2;
    return { chainageM: insideOf(tallest, chainageM), why: "the highest" };
  });
  const isApart =
    markedM !== null && highest.every(({ chainageM }) => Math.abs(chainageM - markedM) > SAME_M);
  return isApart ? [...highest, { chainageM: markedM, why: "marked" }] : highest;
}

/** A station that belongs to a reach: at its end, where the next begins, a little before it. */
function insideOf({ fromM, toM }: Reach, chainageM: number): number {
  const withinM = Math.min(END_M, (toM - fromM) / 2);
  return Math.min(Math.max(chainageM, fromM), toM - withinM);
}
