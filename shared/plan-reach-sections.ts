import { shown } from "./plan-text.ts";
import type { EmergencySection } from "./sections/types.ts";
import { sectionById } from "./sections.ts";
import { failureWords } from "./words/failure.ts";

/** As many reaches as an alignment may have breaks, and one. */
const MAX_REACHES = 501;

/** What is wrong with the sections of an alignment's reaches; null when nothing is. */
export function reachSectionsComplaint(value: unknown): string | null {
  if (!Array.isArray(value) || value.length > MAX_REACHES) {
    return `Expected what each reach is built as (reachSections) as a list of at most ${MAX_REACHES}; came ${shown(value)}.`;
  }
  for (const [index, each] of value.entries()) {
    const complaint = complaintOf(each);
    if (complaint !== null) return `Reach ${index + 1}: ${complaint}`;
  }
  return null;
}

function complaintOf(value: unknown): string | null {
  if (!isRecord(value) || !isRecord(value.figures)) {
    return `Expected an object with section and figures; came ${shown(value)}.`;
  }
  const other = Object.keys(value).find((key) => key !== "section" && key !== "figures");
  if (other !== undefined) {
    return `Expected only section and figures; came the unknown entry ${shown(other)}.`;
  }
  const found = sectionById(value.section);
  if (!found.ok) return failureWords(found.failure, "metric").message;
  const { figures } = value;
  for (const key of Object.keys(figures)) {
    const complaint = figureComplaint(found.value, key, figures[key]);
    if (complaint !== null) return complaint;
  }
  return null;
}

function figureComplaint(section: EmergencySection, key: string, value: unknown): string | null {
  const figure = section.figures.find((each) => each.key === key);
  if (!figure) {
    const known = section.figures.map((each) => each.key).join(", ");
    return `Expected figures of "${section.id}" among ${known}; came ${shown(key)}.`;
  }
  const { label, lowSI, highSI } = figure;
  if (typeof value === "number" && value >= lowSI && value <= highSI) return null;
  return `Expected "${label}" (${key}) of "${section.id}" from ${lowSI} to ${highSI}; came ${shown(value)}.`;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
