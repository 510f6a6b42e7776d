import { type Came, cameOf } from "../plan-text.ts";

/** A value of a file as it is named in a sentence: short, on one line. */
export function cameWords(came: Came): string {
  if (came === null) return "nothing";
  if (typeof came === "string") return `"${came}"`;
  if (typeof came !== "object") return String(came);
  if (Array.isArray(came)) return `[${came.join(", ")}]`;
  return "listOf" in came ? `a list of ${came.listOf}` : "an object";
}

/** The same of a value as it came. */
export function shown(value: unknown): string {
  return cameWords(cameOf(value));
}
