import type { SizedLine } from "../../shared/sizing-types.ts";

/** What the totals leave out for want of ground data, a sentence for each line that it touches. */
export function leftOut(lines: readonly SizedLine[]): string[] {
  return lines
    .filter(({ totals }) => totals.lengthNoDataM > 0)
    .map(({ name, totals: { lengthM, lengthNoDataM } }) =>
      lengthNoDataM < lengthM
        ? `"${name}": the totals leave out ${lengthNoDataM.toFixed(1)} m of ${lengthM.toFixed(1)} m, which have no ground data.`
        : `"${name}": nothing is known of it. All its ${lengthM.toFixed(1)} m have no ground data; its 0 bags are no answer.`,
    );
}
