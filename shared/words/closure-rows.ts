import type { SizedLine } from "../sizing-types.ts";
import type { ClosureTime } from "../time/types.ts";
import { formatArea, formatCount, formatHours, type UnitSystem } from "../units.ts";
import { doneWords, neededWords, type SequenceSaid } from "./build-sequence.ts";
import { closeByWords } from "./closures.ts";
import { stationsWords } from "./crew-parts.ts";

/** A way left open as a row of the build sequence. */
export interface ClosureRow {
  readonly name: string;
  readonly stations: string;
  readonly bags: string;
  readonly people: string;
  readonly closeFrom: string;
  readonly takes: string;
  readonly closed: string;
  readonly neededBy: string;
  readonly state: string;
  readonly isLate: boolean;
}

/** Heads of such rows, in their order. */
export const CLOSURE_HEADS = {
  title: "Ways left open: lay last, by the people kept there",
  name: "Way",
  stations: "Stations",
  bags: "Bags",
  people: "People",
  closeFrom: "Close from",
  takes: "Takes, slow",
  closed: "Closed, slow",
  neededBy: "Needed by",
  state: "At slow pace",
} as const;

/** `Way 1`. */
export function wayName(index: number): string {
  return `Way ${index + 1}`;
}

/** The ways of a line that are left open, in order along it. */
export function closureRows(said: SequenceSaid): ClosureRow[] {
  const { time, system } = said;
  return time.closures.map((each, index) => {
    const { bags, people, takesSlowH, closeH, neededM, neededH, inTime } = each;
    const closedH = closeH === null || takesSlowH === null ? null : closeH + takesSlowH;
    return {
      name: wayName(index),
      stations: stationsWords(each, system),
      bags: formatCount(bags),
      people: people === null ? "not entered" : formatCount(people),
      closeFrom: closeByWords(each, system) ?? "not set",
      takes: takesSlowH === null ? "not known" : formatHours(takesSlowH),
      closed: closedH === null ? "not known" : doneWords(closedH, said),
      neededBy: neededM === null ? "not known" : neededWords({ neededM, neededH }, said),
      state: stateWords(inTime),
      isLate: inTime === false,
    };
  });
}

function stateWords(inTime: ClosureTime["inTime"]): string {
  if (inTime === null) return "not known";
  return inTime ? "in time" : "LATE";
}

/** What is set beside the ways left open; null where there are none. */
export function asideWords(
  { totals, time }: Pick<SizedLine, "totals" | "time">,
  system: UnitSystem,
): { readonly amount: string; readonly note: string } | null {
  const closures = time?.closures ?? [];
  if (closures.length === 0) return null;
  const bags = closures.reduce((sum, each) => sum + each.bags, 0);
  const lengthM = closures.reduce((sum, { fromM, toM }) => sum + toM - fromM, 0);
  const places = closures.map((each) => stationsWords(each, system)).join("; ");
  return {
    amount: `${formatCount(bags)} bags`,
    note: `Filled, with up to ${formatArea(lengthM * totals.sheetWidthM, system)} of poly sheeting, beside ${places}. They are in the bags and the sheeting above.`,
  };
}
