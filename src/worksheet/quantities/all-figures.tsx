import { rivalOf } from "../../../shared/compare.ts";
import { letterOf } from "../../../shared/line-letter.ts";
import type { SizedLine } from "../../../shared/sizing-types.ts";
import { besideBagsWords } from "../../../shared/words/counted.ts";
import { againstRival } from "../../../shared/words/rival.ts";
import { chosenId } from "../../document/chosen.ts";
import { plan } from "../../document/store.ts";
import { ClassBar } from "../../drawing/class-bar.tsx";
import { ReachTable } from "../../drawing/reach-table.tsx";
import { sized } from "../../live/results.ts";
import { markedM, unitSystem } from "../../live/screen.ts";
import { simulatedLine } from "../../live/simulated.ts";
import { mustFixOn } from "../../live/water-now.ts";
import { Amounts } from "./amounts.tsx";
import { BehindLine } from "./behind-line.tsx";
import { GroundChances } from "./ground-chances.tsx";
import { PublishedTables } from "./published-tables.tsx";

/** Everything that is counted of the chosen line, each figure with its make-up. */
export function AllFigures() {
  const line = simulatedLine.value;
  if (!line) return null;
  const system = unitSystem.value;
  const rival = rivalWords(line);
  const inputs = { plan: plan.value, line, totals: line.totals, system };
  return (
    <>
      {rival && (
        <p class="bags-rival">
          {besideBagsWords(line.totals, system)}
          {rival}
        </p>
      )}
      <ClassBar line={line} limitM={plan.value.practice.limitM} system={system} />
      <Amounts inputs={inputs} />
      <GroundChances inputs={inputs} />
      <BehindLine />
      <PublishedTables line={line} system={system} />
      {line.reaches.length > 1 && (
        <ReachTable
          line={line}
          system={system}
          onReach={(middleM) => {
            markedM.value = middleM;
          }}
        />
      )}
    </>
  );
}

/** The chosen line against the first other one; nothing when it stands alone. */
function rivalWords(line: SizedLine): string {
  const alternatives = plan.value.alignments;
  const results = alternatives.flatMap((each) => sized.value.get(each.id) ?? []);
  const rival = rivalOf(results, chosenId.value);
  if (!rival) return "";
  const letter = letterOf(alternatives.findIndex((each) => each.id === rival.id));
  return againstRival(line, { line: rival, letter }, mustFixOn);
}
