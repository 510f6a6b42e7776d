import { gridCellWords } from "../../../shared/words/ground-line.ts";
import { ground } from "../../live/ground.ts";
import { unitSystem } from "../../live/screen.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { RowBody } from "../row-body.tsx";

/** What the heights come from, and what their accuracy does to the answer. */
export function GroundBlock() {
  const summary = ground.value;
  return (
    <Disclosure
      id="ground"
      title="Elevation data"
      summary={summary ? gridCellWords(summary, unitSystem.value) : "none open"}
    >
      <RowBody of="GroundBody" />
    </Disclosure>
  );
}
