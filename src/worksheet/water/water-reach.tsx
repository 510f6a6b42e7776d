import { isAnyWater } from "../../../shared/checks-trace/whole-plan.ts";
import { letterOf } from "../../../shared/line-letter.ts";
import { isProtected } from "../../../shared/protected.ts";
import { formatElevation, type UnitSystem } from "../../../shared/units.ts";
import type { TracedAlternative, TracedStructure } from "../../../shared/water-types.ts";
import { floorWords, leftOutsideWords } from "../../../shared/words/buildings.ts";
import { overtopsButForGap } from "../../../shared/words/ground-gap.ts";
import { pipeCasesWords } from "../../../shared/words/pipes.ts";
import {
  fromWords,
  placeWords,
  reachesWords,
  sillWords,
  WET_IF_CULVERT,
} from "../../../shared/words/water.ts";
import { coarseWaterWords } from "../../../shared/words/water-marks.ts";
import { plan } from "../../document/store.ts";
import { ground } from "../../live/ground.ts";
import { chosenLine, tracingFailure } from "../../live/results.ts";
import { unitSystem } from "../../live/screen.ts";
import { chosenChecks, mustFixOnChosen, tracedLine, waterNow } from "../../live/water-now.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { Fact } from "../../ui/fact.tsx";
import { FailureText } from "../../ui/failure-text.tsx";
import { PipesList } from "./pipes-list.tsx";
import { RoadsList } from "./roads-list.tsx";
import { SourcesList } from "./sources-list.tsx";
import { WaterOver } from "./water-over.tsx";

/** Where the water really goes: what it reaches without a levee, and with the chosen line built. */
export function WaterReach() {
  const trace = waterNow.value;
  return (
    <Disclosure id="reach" title="Where it goes" level="part" summary={summaryWords()}>
      <StandingNote />
      {trace && (
        <p class="hint">
          Water is what lies below the surface and is connected to {fromWords(trace)}, corner to
          corner too.
        </p>
      )}
      <WithLine />
      <WaterOver />
      {trace && trace.structures.length > 0 && <Without structures={trace.structures} />}
      <SourcesList />
      <PipesList />
      <RoadsList />
    </Disclosure>
  );
}

/** Why nothing stands here, or why what stands here is coarse. */
function StandingNote() {
  const failure = tracingFailure.value;
  const trace = waterNow.value;
  if (!ground.value)
    return <p class="hint">Open the elevation data first; water is followed over it.</p>;
  if (!trace && failure) {
    return (
      <p class="field-why" role="alert">
        The tint shows everything lower than the water, whether or not the river can reach it: it
        could not be traced. <FailureText failure={failure} system={unitSystem.value} />
      </p>
    );
  }
  if (!trace) return <p class="hint">Following the water…</p>;
  if (trace.water.everyCell) return null;
  return <p class="hint">{coarseWaterWords(trace, "worksheet", unitSystem.value)}</p>;
}

function WithLine() {
  const line = tracedLine.value;
  if (!line) return null;
  const system = unitSystem.value;
  const { wayIn, firstOver } = line;
  return (
    <dl class="facts" aria-label={`With ${line.name} built`}>
      <Fact name={`With ${letterOf(plan.value.alignments.findIndex(({ id }) => id === line.id))}`}>
        <strong>
          {overtopsButForGap(line, chosenLine.value, plan.value, system, mustFixOnChosen.value)}
        </strong>
      </Fact>
      {wayIn && <Fact name="The water comes in">{placeWords(wayIn, system)}</Fact>}
      {wayIn?.groundM != null && (
        <Fact name="over ground at">{formatElevation(wayIn.groundM, system)}</Fact>
      )}
      {pipeCasesWords(line, chosenChecks.value, plan.value, system).map(({ name, words }) => (
        <Fact key={name} name={name}>
          {words}
        </Fact>
      ))}
      {leftOutside(line, system).map(({ name, words }) => (
        <Fact key={name} name={name}>
          {words}
        </Fact>
      ))}
      {line.dry && firstOver && (
        <Fact name="then first over">
          {firstOver.over === "crest" ? "top of levee" : "ground"} {placeWords(firstOver, system)}
        </Fact>
      )}
    </dl>
  );
}

/** Buildings that are left outside on purpose, and what becomes of them. */
function leftOutside(
  line: TracedAlternative,
  system: UnitSystem,
): { readonly name: string; readonly words: string }[] {
  const left = plan.value.structures.filter((each) => !isProtected(each)).map(({ id }) => id);
  return (waterNow.value?.structures ?? [])
    .filter(({ id }) => left.includes(id))
    .map((each) => ({ name: each.name, words: leftOutsideWords(each, line, system) }));
}

function Without({ structures }: { structures: readonly TracedStructure[] }) {
  const system = unitSystem.value;
  return (
    <section aria-label="Without a levee">
      <h3>Without a levee</h3>
      <dl class="facts">
        {structures.map((each) => (
          <Fact key={each.id} name={each.name}>
            {[
              sillWords(each, plan.value, system),
              each.wetIfCulvert ? WET_IF_CULVERT : null,
              floorWords(each, system),
            ]
              .filter((words) => words !== null)
              .join("; ")}
          </Fact>
        ))}
      </dl>
    </section>
  );
}

function summaryWords(): string {
  const trace = waterNow.value;
  if (!trace) return tracingFailure.value ? "not traced" : "";
  const wet = trace.structures.filter((each) => each.wet).length;
  const all = trace.structures.length;
  if (!isAnyWater(trace.water)) return "no ground at all is under this water";
  const maybe = trace.structures.filter((each) => each.wetIfCulvert).length;
  return all === 0 ? "traced" : reachesWords(wet, all, maybe);
}
