import { ofSample, type Rule } from "./rule.ts";

/** Metres. */
export interface SurveyFinding {
  readonly kind: "ground-reading";
  /** Reading less elevation data where they differ most. */
  readonly differenceM: number;
  /** Readings that differ by more than the accuracy, and all of the line. */
  readonly count: number;
  readonly of: number;
  readonly accuracyM: number;
}

/** Ground read in the field that differs from the elevation data by more than their accuracy. */
export const groundReading: Rule = {
  id: "ground-reading",
  find: (context) => {
    const { surveyed, accuracyM, samples } = context;
    const readings = surveyed?.readings ?? [];
    const far = readings
      .map(({ chainageM, readM, dataM }) => ({ chainageM, differenceM: readM - dataM }))
      .filter(({ differenceM }) => Math.abs(differenceM) > accuracyM);
    const [worst] = far.sort((a, b) => Math.abs(b.differenceM) - Math.abs(a.differenceM));
    if (!worst) return [];
    const { chainageM, differenceM } = worst;
    const sample = samples.chainageM.findIndex((m) => m >= chainageM);
    const figures = { differenceM, count: far.length, of: readings.length, accuracyM };
    return [
      ofSample("caution", context, Math.max(0, sample), { kind: "ground-reading", ...figures }),
    ];
  },
};
