import type { ClosureTime } from "../time/types.ts";
import type { Finding, Rule } from "./rule.ts";

/** Metres, hours. */
export type ClosureFinding =
  | ({ readonly kind: "closure" } & ClosureTime)
  | ({ readonly kind: "closure-late" } & ClosureTime)
  | {
      readonly kind: "closure-not-known";
      readonly bags: number;
      readonly missing: "when" | "people" | "forecast";
    };

/** Ways left open for vehicles, and whether each can still be closed. */
export const closures: Rule = {
  id: "closure",
  find: ({ time, samples, levelDoubt }) =>
    (levelDoubt ? [] : (time?.closures ?? [])).map((each): Finding => {
      const { fromM, toM } = each;
      const found = samples.chainageM.findIndex((m) => m >= fromM);
      const worst = found < 0 ? samples.count - 1 : found;
      return {
        severity: each.inTime === null ? "caution" : each.inTime ? "note" : "stop",
        finding: findingOf(each),
        where: { at: "stretch", fromM, toM, overClosing: false },
        stretch: { parts: [{ fromM, toM }], lengthM: toM - fromM, whole: false, worst },
        sample: worst,
      };
    }),
};

function findingOf(each: ClosureTime): ClosureFinding {
  if (each.inTime === true) return { kind: "closure", ...each };
  if (each.inTime === false) return { kind: "closure-late", ...each };
  const { bags, stageM, at, people } = each;
  const missing = stageM === null && at === null ? "when" : people === null ? "people" : "forecast";
  return { kind: "closure-not-known", bags, missing };
}
