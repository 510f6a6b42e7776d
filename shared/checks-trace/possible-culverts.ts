import type { TraceFinding, TraceRule, WaterContext } from "./trace-rule.ts";

/** Names are as the person typed them; metres. */
export type PossibleCulvertFinding =
  | {
      /** Places that nobody has looked at yet; the figures are of the nearest. */
      readonly kind: "culverts-possible";
      readonly count: number;
      readonly bankM: number;
      readonly sagDepthM: number;
    }
  | { readonly kind: "culvert-to-look-for"; readonly place: string };

/** Places where there may be a culvert: those not answered as one check, those to look at in the field each by itself. */
export const possibleCulvert: TraceRule<WaterContext> = {
  id: "possible-culvert",
  find: ({ plan, possibleCulverts: { found, leftOff } }) => {
    const [nearest] = found;
    const asked: TraceFinding[] = nearest
      ? [
          {
            ...{ severity: "caution", at: nearest.ends[0] },
            finding: {
              kind: "culverts-possible",
              count: found.length + leftOff,
              bankM: nearest.bankM,
              sagDepthM: nearest.sagDepthM,
            },
          },
        ]
      : [];
    const toLook = (plan.possibleCulverts ?? []).filter(({ answer }) => answer === "look");
    return [
      ...asked,
      ...toLook.map(
        ({ name: place, path }): TraceFinding => ({
          ...{ severity: "caution", at: path[0]! },
          finding: { kind: "culvert-to-look-for", place },
        }),
      ),
    ];
  },
};
