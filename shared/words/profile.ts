import { hasOtherSections } from "../reaches.ts";
import type { Reach, SizedLine } from "../sizing-types.ts";
import type { LineTime } from "../time/types.ts";
import { doneShare } from "../time/work-tone.ts";
import { formatLength, formatStation, type UnitSystem } from "../units.ts";
import { stationsWords } from "./crew-parts.ts";

/** Where a rising river overtops first, for those who listen. */
export function overtopsFirstWords(
  marks: readonly { readonly chainageM: number }[],
  system: UnitSystem,
): string[] {
  if (marks.length === 0) return [];
  const stations = marks.map(({ chainageM }) => formatStation(chainageM, system));
  return [`A rising river overtops first at ${stations.join(", then ")}.`];
}

/** Each reach with its levee type and limit; nothing where all are alike. */
export function reachListWords(line: SizedLine, system: UnitSystem): string[] {
  if (!hasOtherSections(line)) return [];
  return line.reaches.map(({ fromM, toM, sectionName, limitM }, index) => {
    const place = `${formatStation(fromM, system)} to ${formatStation(toM, system)}`;
    return `Reach ${index + 1}, ${place}: ${sectionName}, limit ${formatLength(limitM, system)}.`;
  });
}

/** What the profile shows of a moment of the forecast. */
export function momentSaid(
  { hour, words }: { readonly hour: number; readonly words: string },
  time: LineTime | null,
): string {
  if (!time) return `Water drawn for ${words}.`;
  const built = time.stretches.filter(({ isOnHold }) => !isOnHold);
  const done = built.filter((each) => doneShare(each, hour) >= 1).length;
  return `Water drawn for ${words}; ${done} of ${built.length} stretches are finished by then.`;
}

/** What a reach is built as and to which limit. */
export function reachTitle(reach: Reach, number: number, system: UnitSystem): string {
  const { sectionName, limitM, totals } = reach;
  const over =
    totals.lengthOverLimitM > 0
      ? `, over it on ${formatLength(totals.lengthOverLimitM, system, 0)}`
      : "";
  return `Reach ${number}, ${stationsWords(reach, system)}: ${sectionName}, limit ${formatLength(limitM, system)}${over}.`;
}
