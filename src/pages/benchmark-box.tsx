import type { Plan } from "../../shared/plan.ts";
import { surveyOf } from "../../shared/survey/leveling.ts";
import { shownInstrument } from "../../shared/survey/rod.ts";
import { lengthIn, type UnitSystem } from "../../shared/units.ts";
import { benchmarkMark } from "../../shared/words/build-sheet.ts";

interface BenchmarkBoxProps {
  readonly plan: Plan;
  readonly system: UnitSystem;
}

/** How close the rod must come when it is read on the benchmark again: 0.02 ft or 0.01 m. Source: judgement. */
const AGAIN: Readonly<Record<UnitSystem, string>> = { us: "0.02", metric: "0.01" };

/** Benchmark plus backsight is the height of instrument; what is not typed is a line to write on. */
export function BenchmarkBox({ plan, system }: BenchmarkBoxProps) {
  const { benchmark, backsightM } = surveyOf(plan);
  const figure = (m: number | null | undefined) =>
    m === null || m === undefined ? null : lengthIn(m, system).toFixed(2);
  const instrument = shownInstrument(plan, system);
  const name = benchmark?.name || null;
  const backsight = figure(backsightM);
  return (
    <div class="benchmark-box">
      <div class="benchmark-sum">
        <div>
          <p class="benchmark-name">{name ?? "Benchmark"}</p>
          <p class="benchmark-figure">{figure(benchmark?.elevationM) ?? <Rule />}</p>
        </div>
        <div class="benchmark-sign">+</div>
        <div>
          <p class="benchmark-name">backsight</p>
          <p class="benchmark-figure">{backsight ?? <Rule />}</p>
        </div>
        <div class="benchmark-sign">=</div>
        <div>
          <p class="benchmark-name">height of instrument</p>
          <p class="benchmark-figure">HI {instrument?.toFixed(2) ?? <Rule />}</p>
        </div>
      </div>
      <div class="benchmark-again">
        <p>
          Back on {benchmark?.name ? benchmarkMark(benchmark) : "the benchmark"}: <Rule />
          {backsight !== null && ` (${backsight} ± ${AGAIN[system]})`}
        </p>
        <p>
          Moved, new HI <Rule /> less {instrument?.toFixed(2) ?? <Rule />}: add <Rule />
        </p>
      </div>
    </div>
  );
}

function Rule() {
  return <span class="stake-rule" />;
}
