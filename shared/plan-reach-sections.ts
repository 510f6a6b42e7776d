import { type Came, cameOf } from "./plan-text.ts";
import type { EmergencySection } from "./sections/types.ts";
import { SECTIONS, sectionById } from "./sections.ts";

/** As many reaches as an alignment may have breaks, and one. */
const MAX_REACHES = 501;

/** What is wrong with the sections of reaches. */
export type ReachSectionsComplaint =
  | { readonly is: "no-list"; readonly most: number; readonly came: Came }
  | (ReachComplaint & { readonly reach: number });

/** What is wrong with the section of one reach. */
export type ReachComplaint =
  | { readonly is: "no-section" | "other-entry"; readonly came: Came }
  | { readonly is: "unknown-section"; readonly known: readonly string[]; readonly came: Came }
  | {
      readonly is: "unknown-figure";
      readonly of: string;
      readonly known: readonly string[];
      readonly came: Came;
    }
  | {
      readonly is: "figure";
      readonly of: string;
      readonly key: string;
      readonly label: string;
      readonly lowSI: number;
      readonly highSI: number;
      readonly came: Came;
    };

/** What is wrong with the sections of an alignment's reaches; null when nothing is. */
export function reachSectionsComplaint(value: unknown): ReachSectionsComplaint | null {
  if (!Array.isArray(value) || value.length > MAX_REACHES) {
    return { is: "no-list", most: MAX_REACHES, came: cameOf(value) };
  }
  for (const [index, each] of value.entries()) {
    const complaint = complaintOf(each);
    if (complaint !== null) return { ...complaint, reach: index + 1 };
  }
  return null;
}

function complaintOf(value: unknown): ReachComplaint | null {
  if (!isRecord(value) || !isRecord(value.figures)) {
    return { is: "no-section", came: cameOf(value) };
  }
  const other = Object.keys(value).find((key) => key !== "section" && key !== "figures");
  if (other !== undefined) return { is: "other-entry", came: cameOf(other) };
  const found = sectionById(value.section);
  if (!found.ok) {
    const known = SECTIONS.map(({ id }) => id);
    return { is: "unknown-section", known, came: cameOf(value.section) };
  }
  const { figures } = value;
  for (const key of Object.keys(figures)) {
    const complaint = figureComplaint(found.value, key, figures[key]);
    if (complaint !== null) return complaint;
  }
  return null;
}

function figureComplaint(
  { id, figures }: EmergencySection,
  key: string,
  value: unknown,
): ReachComplaint | null {
  const figure = figures.find((each) => each.key === key);
  if (!figure) {
    const known = figures.map((each) => each.key);
    return { is: "unknown-figure", of: id, known, came: cameOf(key) };
  }
  const { label, lowSI, highSI } = figure;
  if (typeof value === "number" && value >= lowSI && value <= highSI) return null;
  return { is: "figure", of: id, key, label, lowSI, highSI, came: cameOf(value) };
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
