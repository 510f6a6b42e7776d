import {
  type LineContext,
  nameOf,
  type TraceFinding,
  type TraceRule,
  type WaterContext,
} from "./trace-rule.ts";

/** Names are as the person typed them; metres. */
export type PossibleCulvertFinding =
  | {
      /** Places that nobody has looked at yet; the figures are of the nearest. */
      readonly kind: "culverts-possible";
      readonly count: number;
      readonly bankM: number;
      readonly sagDepthM: number;
    }
  | { readonly kind: "culvert-to-look-for"; readonly place: string }
  | {
      /** Buildings that are dry as traced, and wet with an open pipe there, nothing built. */
      readonly kind: "reached-if-culvert";
      readonly reaches: readonly string[];
    }
  | {
      /** A line that keeps the water out as traced: with an open pipe there it comes in above that level. */
      readonly kind: "let-in-if-culvert";
      /** True where that is under the sized-for water. */
      readonly isWet: boolean;
      readonly reaches: readonly string[];
      readonly elevationM: number;
      readonly stageM: number | null;
    };

/** Places where there may be a culvert: those not answered as one check, those to look at in the field each by itself. */
export const possibleCulvert: TraceRule<WaterContext> = {
  id: "possible-culvert",
  find: ({ plan, structures, possibleCulverts: { found, leftOff } }) => {
    const [nearest] = found;
    const reaches = structures.filter(({ wetIfCulvert }) => wetIfCulvert).map(({ name }) => name);
    const reached: TraceFinding[] =
      reaches.length > 0
        ? [
            {
              ...{ severity: "caution", at: nearest?.ends[0] ?? null },
              finding: { kind: "reached-if-culvert", reaches },
            },
          ]
        : [];
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
      ...reached,
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

/** A line that keeps the water out as long as there is no pipe where there may be one. */
export const letInIfCulvert: TraceRule<LineContext> = {
  id: "possible-culvert",
  find: (context) => {
    const { ifCulverts } = context.line;
    if (!ifCulverts) return [];
    const { water } = context.plan;
    const { reaches, elevationM, riseM } = ifCulverts;
    return [
      {
        ...{ severity: "caution", at: null },
        finding: {
          kind: "let-in-if-culvert",
          isWet: reaches.length > 0,
          reaches: reaches.flatMap((id) => nameOf(context, id) ?? []),
          elevationM,
          stageM: water.by === "stage" ? water.stageM + riseM : null,
        },
      },
    ];
  },
};
