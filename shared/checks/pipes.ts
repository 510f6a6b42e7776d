import { crossingsOf } from "../pipes/crossings.ts";
import type { Culvert, Drain } from "../plan.ts";
import { isInside, planePolygon } from "../plane-polygon.ts";
import { isProtected } from "../protected.ts";
import { type CheckContext, type Finding, ofSample, ofWholePlan, type Rule } from "./rule.ts";

/** Names are as the person typed them; metres. */
export type PipeFinding =
  | {
      /** The line crosses an open pipe. */
      readonly kind: "culvert-open";
      readonly pipeId: string;
      readonly culvert: string;
      readonly gate: Culvert["gate"];
      readonly sizeM: number | null;
      /** The higher of two inverts that were typed; null where one is not. */
      readonly invertM: number | null;
    }
  | { readonly kind: "culvert-plugged"; readonly culvert: string }
  | {
      /** Its inverts, both typed, are over the top of levee. */
      readonly kind: "culvert-above";
      readonly culvert: string;
      readonly aboveM: number;
    }
  | {
      readonly kind: "drain-open" | "drain-not-known";
      readonly pipeId: string;
      readonly drain: string;
      readonly type: Drain["kind"];
    }
  | { readonly kind: "drain-plugged"; readonly drain: string; readonly type: Drain["kind"] };

/** Pipes under the line. */
export const culvert: Rule = {
  id: "culvert",
  find: (context) =>
    (context.plan.culverts ?? []).flatMap((each) =>
      crossingsOf(each.path, context.line, context.plane).map((chainageM) =>
        crossingFinding(context, each, chainageM),
      ),
    ),
};

function crossingFinding(context: CheckContext, pipe: Culvert, chainageM: number): Finding {
  const sample = sampleAt(context, chainageM);
  const { id: pipeId, name, gate, sizeM, invertsM, plugged } = pipe;
  const [first, last] = invertsM;
  const invertM = first === null || last === null ? null : Math.max(first, last);
  if (plugged)
    return ofSample("caution", context, sample, { kind: "culvert-plugged", culvert: name });
  const aboveM = invertM === null ? 0 : invertM - context.samples.crestM[sample]!;
  if (aboveM > 0) {
    return ofSample("caution", context, sample, { kind: "culvert-above", culvert: name, aboveM });
  }
  const figures = { pipeId, culvert: name, gate, sizeM, invertM };
  return ofSample("stop", context, sample, { kind: "culvert-open", ...figures });
}

/** The first sample at or past a chainage. */
function sampleAt({ samples }: CheckContext, chainageM: number): number {
  const found = samples.chainageM.findIndex((m) => m >= chainageM);
  return found < 0 ? samples.count - 1 : found;
}

/** Openings behind the line through which water may come up. */
export const drain: Rule = {
  id: "drain",
  find: (context) =>
    (context.plan.drains ?? [])
      .filter((each) => each.joinsOutside !== false && isBehind(context, each))
      .flatMap(({ id: pipeId, name, kind: type, at, joinsOutside, plugged }) => {
        const found = { pipeId, drain: name, type };
        const findings = plugged
          ? ofWholePlan("caution", { kind: "drain-plugged", drain: name, type })
          : joinsOutside
            ? ofWholePlan("stop", { kind: "drain-open", ...found })
            : ofWholePlan("caution", { kind: "drain-not-known", ...found });
        return findings.map((finding) => ({ ...finding, at }));
      }),
};

/** Inside a ring; for a line, between it and the chord of its ends, or in a building that it is for. */
function isBehind({ plan, line, plane }: CheckContext, { at }: Drain): boolean {
  const [x, y] = plane.toPlane(at);
  if (isInside({ xM: Array.from(line.xM), yM: Array.from(line.yM) }, x, y)) return true;
  if (line.closed) return false;
  return plan.structures.some(
    (each) => isProtected(each) && isInside(planePolygon(each.outline, plane), x, y),
  );
}
