import type { Structure } from "./plan.ts";

/** Whether a building may be one that a levee is for: all are but those set to be left outside. */
export function isProtected({ protect }: Structure): boolean {
  return protect !== false;
}

/**
 * The buildings a ring is for: those it encloses and those that must be protected, without the ones left outside
 * on purpose; where that is none, all that are not left outside.
 */
export function aimsOfRing(
  structures: readonly Structure[],
  isEnclosed: (structure: Structure, index: number) => boolean,
): Structure[] {
  const aims = structures.filter(
    (each, index) => each.protect === true || (isProtected(each) && isEnclosed(each, index)),
  );
  return aims.length > 0 ? aims : structures.filter(isProtected);
}
