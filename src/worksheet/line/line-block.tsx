import type { Alignment } from "../../../shared/plan.ts";
import { formatArea, formatLength } from "../../../shared/units.ts";
import { chosenAlternative } from "../../document/chosen.ts";
import { plan } from "../../document/store.ts";
import { ground } from "../../live/ground.ts";
import { chosenLine } from "../../live/results.ts";
import { unitSystem } from "../../live/screen.ts";
import { canFind, findRing } from "../../live/siting/find-ring.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { CornersTable } from "./corners-table.tsx";
import { FindRing } from "./find-ring.tsx";
import { LineTools } from "./line-tools.tsx";
import { NoGoList } from "./no-go-list.tsx";
import { OwnSetback } from "./own-setback.tsx";
import { ReachList } from "./reach-list.tsx";
import { SetbackRing } from "./setback-ring.tsx";
import { StructuresList } from "./structures-list.tsx";

/** Where the levee runs, what it goes round and what it keeps away from. */
export function LineBlock() {
  const alternative = chosenAlternative.value;
  return (
    <Disclosure
      id="line"
      title="Line"
      summary={alternative ? <LineSummary alternative={alternative} /> : "none yet"}
      line={
        <>
          {alternative ? <SetbackLine alternative={alternative} /> : <NextStep />}
          <FindButton />
        </>
      }
    >
      {!alternative && (
        <p class="hint">
          <NextStep />
        </p>
      )}
      <LineTools />
      <FindRing />
      <SetbackRing />
      {alternative && <OwnSetback alternative={alternative} />}
      <StructuresList />
      {alternative && <CornersTable alternative={alternative} />}
      {alternative && <ReachList alternative={alternative} />}
      <NoGoList />
    </Disclosure>
  );
}

function LineSummary({ alternative }: { alternative: Alignment }) {
  const line = chosenLine.value;
  const system = unitSystem.value;
  const length = line ? `${formatLength(line.totals.lengthM, system, 0)} · ` : "";
  const area = line?.enclosedM2 ? ` · ${formatArea(line.enclosedM2, system)}` : "";
  return (
    <>
      {length}
      {alternative.corners.length} corners{area}
    </>
  );
}

function SetbackLine({ alternative }: { alternative: Alignment }) {
  const setbackM = alternative.setbackM ?? plan.value.practice.setbackM;
  const setback = formatLength(setbackM, unitSystem.value);
  return <>Setback of the landside toe: {setback}</>;
}

function FindButton() {
  if (!canFind.value) return null;
  return (
    <>
      {" "}
      <button type="button" class="text-button find-word" onClick={() => void findRing()}>
        Find the ring
      </button>
    </>
  );
}

function NextStep() {
  if (!ground.value) return <>Open the elevation data first; then draw on it.</>;
  if (plan.value.structures.length === 0) {
    return (
      <>Draw the building, or import its footprint. Then make a ring around it with one press.</>
    );
  }
  return (
    <>
      Draw a ring around the building, a line tied in to high ground, or make a ring at a setback.
    </>
  );
}
