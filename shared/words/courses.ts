import { formatCount } from "../units.ts";

/** `1 course`, `8 courses`. */
export function courseWords(courses: number): string {
  return courses === 1 ? "1 course" : `${formatCount(courses)} courses`;
}
