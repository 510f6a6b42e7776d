import type { Check } from "../../../shared/sizing-types.ts";

/**
 * Checks with the keys of their rows, by what and where they are: an opened row stays open when another check comes
 * before it.
 */
export function keyedChecks(checks: readonly Check[]): { key: string; check: Check }[] {
  const times = new Map<string, number>();
  return checks.map((check) => {
    const what = `${check.id} ${check.fromM}`;
    const nth = (times.get(what) ?? 0) + 1;
    times.set(what, nth);
    return { key: `${what} ${nth}`, check };
  });
}
