import "./reaches.css";
import type { Alignment } from "../../../shared/plan.ts";
import { hasOtherSections, isStandard, sectionsOf } from "../../../shared/reaches.ts";
import { chosenLine } from "../../live/results.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { DivideForm } from "./divide-form.tsx";
import { ReachRow } from "./reach-row.tsx";
import { StretchForm } from "./stretch-form.tsx";

/** The line's reaches: where one ends and the next begins, and what each is built as. */
export function ReachList({ alternative }: { alternative: Alignment }) {
  const line = chosenLine.value;
  const lengthM = line?.totals.lengthM ?? null;
  const built = sectionsOf(alternative);
  const ends =
    lengthM === null ? [] : [...alternative.reachBreaksM.filter((m) => m < lengthM), lengthM];
  const others = built.slice(0, ends.length).filter((each) => !isStandard(each)).length;
  return (
    <Disclosure
      id="reaches"
      title="Reaches"
      level="part"
      summary={summaryWords(Math.max(1, ends.length), others)}
    >
      {line && lengthM !== null && (
        <>
          {hasOtherSections(line) && <p class="hint">{namesOf(line.reaches)}</p>}
          <ol class="plain-list reach-list">
            {ends.map((toM, index) => (
              <ReachRow
                key={`${alternative.id} ${index}`}
                alternative={alternative}
                index={index}
                fromM={index === 0 ? 0 : ends[index - 1]!}
                toM={toM}
                lengthM={lengthM}
                built={built[index]!}
                sized={line.reaches[index] ?? null}
              />
            ))}
          </ol>
          <DivideForm alternative={alternative} lengthM={lengthM} />
          <StretchForm alternative={alternative} lengthM={lengthM} />
        </>
      )}
    </Disclosure>
  );
}

function summaryWords(count: number, others: number): string {
  const reaches = count === 1 ? "one" : `${count}`;
  return others === 0 ? reaches : `${reaches}, ${others} built otherwise`;
}

function namesOf(reaches: readonly { section: string; sectionName: string }[]): string {
  const names = reaches.filter((each) => !isStandard(each)).map(({ sectionName }) => sectionName);
  return [...new Set(names)].join(", ");
}
