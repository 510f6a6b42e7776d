import { formatCount } from "../units.ts";
import { listed } from "./list.ts";

/** More names than these are counted. */
const MOST_NAMED = 60;

/** That buildings lie lower than water that does not reach them over the ground, and what may let it in. */
export function lowBehindWords(count: number): string {
  const [they, lie] =
    count === 1 ? ["1 building", "lies"] : [`${formatCount(count)} buildings`, "lie"];
  return `${they} not reached over the ground ${lie} lower than this water: a culvert, a drain or a failing bank lets it in. Look there, and warn the people.`;
}

/** Their names, as many as have room. */
export function lowBehindNames(names: readonly string[]): string {
  const more = names.length - MOST_NAMED;
  const named = names.slice(0, MOST_NAMED);
  return `${listed(more > 0 ? [...named, `${formatCount(more)} more`] : named)}.`;
}
