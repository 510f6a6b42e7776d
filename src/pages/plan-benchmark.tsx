import type { Benchmark, Plan } from "../../shared/plan.ts";
import { surveyOf } from "../../shared/survey/leveling.ts";
import type { PlanFrame } from "./plan-frame.ts";
import type { Spot } from "./plan-paths.ts";

/** Nearer to the edge of the drawing a mark is not on it, millimetres. */
const EDGE_MM = 2;

/** The benchmark and where it is on a drawing; null where it is not placed, or off the drawing. */
export function benchmarkOn(
  plan: Pick<Plan, "survey">,
  { widthMm, heightMm, toSpot }: PlanFrame,
): { readonly benchmark: Benchmark; readonly spot: Spot } | null {
  const { benchmark } = surveyOf(plan);
  if (!benchmark?.at) return null;
  const spot = toSpot(benchmark.at);
  const isOn = [widthMm, heightMm].every(
    (span, axis) => spot[axis]! > EDGE_MM && spot[axis]! < span - EDGE_MM,
  );
  return isOn ? { benchmark, spot } : null;
}

interface BenchmarkMarkProps {
  readonly plan: Pick<Plan, "survey">;
  readonly frame: PlanFrame;
}

/** The triangle that surveyors draw for a benchmark; nothing where it is not on the drawing. */
export function BenchmarkMark({ plan, frame }: BenchmarkMarkProps) {
  const mark = benchmarkOn(plan, frame);
  if (!mark) return null;
  const [x, y] = mark.spot;
  return (
    <path
      class="plan-benchmark"
      d="M0-1.9 1.8 1.2H-1.8Z"
      transform={`translate(${x.toFixed(2)} ${y.toFixed(2)})`}
    />
  );
}
