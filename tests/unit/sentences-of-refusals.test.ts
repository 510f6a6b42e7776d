import { describe, expect, it } from "vitest";
import type { Failure } from "../../shared/failure.ts";
import { failureWords } from "../../shared/words/failure.ts";
import type { REFUSALS } from "../../shared/words/refusals.ts";
import { BRITISH, FOREIGN, NEVER } from "../helpers/never-said.ts";
import { LINE_SAMPLES } from "../helpers/refusal-samples/line.ts";
import { SEARCH_SAMPLES } from "../helpers/refusal-samples/search.ts";

const SAMPLES: { readonly [C in keyof typeof REFUSALS]: "no figures" | readonly object[] } = {
  ...LINE_SAMPLES,
  ...SEARCH_SAMPLES,
};

const CASES = Object.entries(SAMPLES).flatMap(([code, samples]) =>
  (samples === "no figures" ? [{}] : samples).map((given) => ({ code, given }) as Failure),
);

describe("every refusal", () => {
  it.each(["us", "metric"] as const)("says what it means in %s units alone", (system) => {
    for (const failure of CASES) {
      const { message, remedy } = failureWords(failure, system);
      const text = `${message} ${remedy}`.trim();
      expect(text, failure.code).not.toMatch(FOREIGN[system]);
      expect(text, failure.code).not.toMatch(NEVER);
      expect(text, failure.code).not.toMatch(BRITISH);
      expect(text, failure.code).not.toMatch(/undefined|NaN|\[object|\{\d\}| {2}|\.\./);
      expect(message, failure.code).toMatch(/^["A-Z].*[.?:!")]$/s);
    }
  });
});
