import { failureOf } from "../../../shared/failure.ts";
import { letterOf } from "../../../shared/line-letter.ts";
import { isWaterGiven } from "../../../shared/stage.ts";
import { failureWords } from "../../../shared/words/failure.ts";
import { chosenAlternative } from "../../document/chosen.ts";
import { copyAlternative } from "../../document/edits/alternatives.ts";
import { plan } from "../../document/store.ts";
import { ground } from "../../live/ground.ts";
import { tool, unitSystem } from "../../live/screen.ts";
import { canFind, findRing } from "../../live/search/find-ring.ts";
import { openDisclosure } from "../../ui/disclosure.tsx";
import { Menu, MenuItem } from "../../ui/menu.tsx";

/** The ways to a line: searched for, drawn, offset from the building, copied. */
export function FindMenu() {
  const chosen = chosenAlternative.value;
  const isGround = ground.value !== null;
  return (
    <Menu label="Find a line" text="Find a line" class="act">
      <MenuItem disabled={!canFind.value} onChoose={() => void findRing()}>
        Find the ring that needs the fewest bags
      </MenuItem>
      <MenuItem disabled={!isGround} onChoose={() => draw("draw-ring")}>
        Draw a ring
      </MenuItem>
      <MenuItem disabled={!isGround} onChoose={() => draw("draw-line")}>
        Draw a tied-in line
      </MenuItem>
      <MenuItem
        disabled={plan.value.structures.length === 0}
        onChoose={() => openDisclosure("line", undefined, "setback-ring")}
      >
        Ring at a setback
      </MenuItem>
      {chosen && (
        <MenuItem onChoose={() => copyAlternative(chosen)}>
          Copy line {letterOf(plan.value.alignments.indexOf(chosen))}
        </MenuItem>
      )}
      {!canFind.value && <p class="menu-note">{firstStep()}</p>}
    </Menu>
  );
}

/** What the search still needs. */
function firstStep(): string {
  if (!ground.value) return "Open elevation data first.";
  return isWaterGiven(plan.value.water)
    ? "Draw the building first."
    : failureWords(failureOf("plan/no-water"), unitSystem.value).remedy;
}

function draw(next: "draw-ring" | "draw-line"): void {
  tool.value = next;
}
