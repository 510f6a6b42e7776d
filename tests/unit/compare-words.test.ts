import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formatHours, formatVolume, shownHours, shownVolumeM3 } from "../../shared/units.ts";
import { howGoodWords } from "../../shared/words/search.ts";

const SYSTEMS = ["us", "metric"] as const;
const figure = (words: string) => Number(words.replace(/[^\d.-]/g, "").replace(/\.$/, ""));

describe("differences of figures side by side", () => {
  const near = (shown: number, difference: number) =>
    expect(Math.abs(shown - Math.abs(difference))).toBeLessThan(1e-6);

  it.each(SYSTEMS)("add up with the figures shown: volumes, in %s units", (system) => {
    const volumes = fc.double({ min: 20, max: 5000, noNaN: true });
    fc.assert(
      fc.property(volumes, volumes, (a, b) => {
        const [one, other] = [a, b].map((m3) => figure(formatVolume(m3, system).split(" ")[0]!));
        const shown = Math.abs(shownVolumeM3(a, system) - shownVolumeM3(b, system));
        near(figure(formatVolume(shown, system).split(" ")[0]!), one! - other!);
      }),
      { seed: 5, numRuns: 200 },
    );
  });

  it("add up with the figures shown: hours", () => {
    const hours = fc.double({ min: 100, max: 5000, noNaN: true });
    fc.assert(
      fc.property(hours, hours, (a, b) => {
        const [one, other] = [a, b].map((h) => figure(formatHours(h).split(" ")[0]!));
        const shown = Math.abs(shownHours(a) - shownHours(b));
        near(figure(formatHours(shown).split(" ")[0]!), one! - other!);
      }),
      { seed: 6, numRuns: 200 },
    );
  });
});

describe("how good a found line is", () => {
  it("is said in the same measure by estimate and proof, so that the two can be compared", () => {
    expect(howGoodWords({ kind: "estimate", gapShare: 0.25 })).toBe(
      "Estimate, not a proof: the best ring that keeps the rules within this window needs about 20 % fewer bags than this one.",
    );
    expect(howGoodWords({ kind: "proof", gapShare: 0.25 })).toBe(
      "Proven: no ring that keeps the rules within this window needs over 20 % fewer bags than this one.",
    );
    expect(howGoodWords({ kind: "estimate", gapShare: 0.001 })).toContain("less than 1 % fewer");
    expect(howGoodWords({ kind: "proof", gapShare: Number.POSITIVE_INFINITY })).toContain("100 %");
  });
});
