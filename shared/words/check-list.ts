import { listedOnce } from "../completeness.ts";
import type { Check, Severity } from "../sizing-types.ts";
import type { UnitSystem } from "../units.ts";

const METRIC = String.raw`(?:-?[\d.,]+ to )?-?[\d.,]+ (?:m²|m|kg|L/s)`;
const STATIONS = String.raw`\d+\+[\d.]+(?: to \d+\+[\d.]+)?`;
const US = String.raw`(?:${STATIONS}|(?:-?[\d.,]+ to )?-?[\d.,]+ (?:sq ft|ft|lb|gpm))`;
const PAIR = new RegExp(String.raw`(${US})( over the closing point)? \((${METRIC})\)`, "g");

const ORDER: Readonly<Record<Severity, number>> = { stop: 0, caution: 1, note: 2 };

/** Findings carry figures in feet and in metres: this leaves those of the person's system. */
export function inUnits(text: string, system: UnitSystem): string {
  return text.replace(PAIR, (_, us: string, closing: string | undefined, metric: string) => {
    return (system === "us" ? us : metric) + (closing ?? "");
  });
}

/** Where a finding is, and the rest of what it says; `where` is empty when it speaks of no stretch. */
export function checkWords(check: Check, system: UnitSystem): { where: string; what: string } {
  const text = inUnits(check.message, system);
  const match = /^((?:\d|The whole line)[^:]*): (.*)$/s.exec(text);
  return match ? { where: match[1]!, what: match[2]! } : { where: "", what: text };
}

/**
 * Checks to list: the gravest first, along the line within the same gravity; the two halves of a stretch that
 * runs over a ring's closing point are one.
 */
export function sortedChecks(checks: readonly Check[]): readonly Check[] {
  return listedOnce(checks).sort(
    (a, b) => ORDER[a.severity] - ORDER[b.severity] || a.fromM - b.fromM,
  );
}

/** How many findings there are to settle, to heed and to know. */
export function checksSummary(checks: readonly Check[]): string {
  const listed = sortedChecks(checks);
  const count = (severity: Severity) =>
    listed.filter((check) => check.severity === severity).length;
  const cautions = count("caution");
  const parts = [
    [count("stop"), "to settle"],
    [cautions, cautions === 1 ? "caution" : "cautions"],
    [count("note"), "to know"],
  ] as const;
  const said = parts.filter(([n]) => n > 0).map(([n, words]) => `${n} ${words}`);
  return said.length > 0 ? said.join(", ") : "nothing found";
}
