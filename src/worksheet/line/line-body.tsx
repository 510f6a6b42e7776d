import { enclosedWords } from "../../../shared/words/line.ts";
import { nextStepWords } from "../../../shared/words/next-steps.ts";
import { chosenAlternative } from "../../document/chosen.ts";
import { plan } from "../../document/store.ts";
import { ground } from "../../live/ground.ts";
import { chosenLine } from "../../live/results.ts";
import { unitSystem } from "../../live/screen.ts";
import { ClosuresList } from "./closures-list.tsx";
import { CornersTable } from "./corners-table.tsx";
import { FindRing } from "./find-ring.tsx";
import { LineTools } from "./line-tools.tsx";
import { NoGoList } from "./no-go-list.tsx";
import { OwnSetback } from "./own-setback.tsx";
import { ReachList } from "./reach-list.tsx";
import { SetbackRing } from "./setback-ring.tsx";
import { StructuresList } from "./structures-list.tsx";
import { WorkPlacesList } from "./work-places-list.tsx";

/** What there is to draw, find and change of the line, the buildings and the areas to stay out of. */
export function LineBody() {
  const alternative = chosenAlternative.value;
  return (
    <>
      {!alternative && <p class="hint">{nextStep()}</p>}
      <EnclosedHint />
      <LineTools />
      <FindRing />
      <SetbackRing />
      {alternative && <OwnSetback alternative={alternative} />}
      <StructuresList />
      {alternative && <CornersTable alternative={alternative} />}
      {alternative && <ReachList alternative={alternative} />}
      {alternative && <ClosuresList alternative={alternative} />}
      <NoGoList />
      <WorkPlacesList />
    </>
  );
}

/** What the ring goes round, and how far it stays away from it. */
function EnclosedHint() {
  const alternative = chosenAlternative.value;
  if (!alternative) return null;
  const setbackM = alternative.setbackM ?? plan.value.practice.setbackM;
  const areaM2 = chosenLine.value?.enclosedM2 ?? null;
  return <p class="hint">{enclosedWords(areaM2, setbackM, unitSystem.value)}</p>;
}

function nextStep(): string {
  if (!ground.value) return nextStepWords("line", "ground");
  return nextStepWords("line", plan.value.structures.length === 0 ? "building" : "line");
}
