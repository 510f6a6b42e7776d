import { rivalOf } from "../../../shared/compare.ts";
import { isCounted } from "../../../shared/completeness.ts";
import { letterOf } from "../../../shared/line-letter.ts";
import type { SizedLine } from "../../../shared/sizing-types.ts";
import { formatCount } from "../../../shared/units.ts";
import { bagsWords, besideBagsWords } from "../../../shared/words/counted.ts";
import { failureWords } from "../../../shared/words/failure.ts";
import { againstRival } from "../../../shared/words/rival.ts";
import { chosenId } from "../../document/chosen.ts";
import { plan } from "../../document/store.ts";
import { ClassBar } from "../../drawing/class-bar.tsx";
import { LevelNotice } from "../../drawing/level-notice.tsx";
import { ReachTable } from "../../drawing/reach-table.tsx";
import { ground } from "../../live/ground.ts";
import { chosenLine, sized } from "../../live/results.ts";
import { markedM, unitSystem } from "../../live/screen.ts";
import { uncounted } from "../../live/uncounted.ts";
import { mustFixOn } from "../../live/water-now.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { Amount } from "./amount.tsx";
import { Amounts } from "./amounts.tsx";
import { KeptDry } from "./kept-dry.tsx";
import { PublishedTables } from "./published-tables.tsx";

/** What it takes: one large number, the bags, and everything else that is ordered. */
export function QuantitiesBlock() {
  const line = chosenLine.value;
  return (
    <Disclosure
      id="quantities"
      title="Quantities"
      startsOpen
      summary={line ? undefined : "nothing to count yet"}
      line={line && isCounted(line) ? closedWords(line) : undefined}
    >
      {line ? <Counted line={line} /> : <p class="hint">{nextStep()}</p>}
    </Disclosure>
  );
}

function Counted({ line }: { line: SizedLine }) {
  const system = unitSystem.value;
  const inputs = { plan: plan.value, line, totals: line.totals, system };
  return (
    <>
      <LevelNotice doubt={line.levelDoubt} system={system} />
      <div class="bags">
        <Amount make="bags" title="Bags in the levee, spares included" inputs={inputs}>
          {isCounted(line) ? formatCount(line.totals.bags) : "–"}
        </Amount>
        <span>
          {besideBagsWords(line.totals, system)}
          {rivalWords(line)}
        </span>
      </div>
      {!line.levelDoubt?.countsUnknown && (
        <ClassBar line={line} limitM={plan.value.practice.limitM} system={system} />
      )}
      {isCounted(line) && (
        <>
          <Amounts inputs={inputs} />
          <KeptDry />
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
      )}
    </>
  );
}

/** The bags in words, with the other line. */
function closedWords(line: SizedLine): string {
  return bagsWords(line.totals, unitSystem.value) + rivalWords(line);
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

function nextStep(): string {
  if (!ground.value) return "Open the elevation data first.";
  if (uncounted.value)
    return `${failureWords(uncounted.value, unitSystem.value).message} Nothing is counted.`;
  return "Draw a ring or a line to see what it takes.";
}
