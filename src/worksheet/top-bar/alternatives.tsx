import { useState } from "preact/hooks";
import { letterOf } from "../../../shared/line-letter.ts";
import { chosenAlternative, chosenId } from "../../document/chosen.ts";
import { copyAlternative } from "../../document/edits/alternatives.ts";
import { plan } from "../../document/store.ts";
import { ground } from "../../live/ground.ts";
import { sized } from "../../live/results.ts";
import { showAll, tool } from "../../live/screen.ts";
import { canFind, findRing } from "../../live/siting/find-ring.ts";
import { IconButton } from "../../ui/icon-button.tsx";
import { Menu, MenuItem } from "../../ui/menu.tsx";
import { AlternativeCard } from "./alternative-card.tsx";
import { CompareDialog } from "./compare-dialog.tsx";

/** The alternatives side by side across the top, each with its bags, greatest height and hours. */
export function Alternatives() {
  const [comparing, setComparing] = useState(false);
  const { alignments } = plan.value;
  return (
    <nav class="alternatives" aria-label="Lines">
      {alignments.length === 0 && <p class="alternatives-none">No line drawn yet</p>}
      <ol>
        {alignments.map((alternative, index) => (
          <AlternativeCard
            key={alternative.id}
            alternative={alternative}
            letter={letterOf(index)}
            line={sized.value.get(alternative.id) ?? null}
            isChosen={alternative.id === chosenId.value}
            isFirst={index === 0}
            isLast={index === alignments.length - 1}
          />
        ))}
      </ol>
      <div class="alternatives-acts">
        {canFind.value && (
          <IconButton
            icon="find"
            label="Find the ring that needs the fewest bags"
            onPress={() => void findRing()}
          />
        )}
        <AddMenu />
        {alignments.length > 1 && (
          <>
            <IconButton
              icon={showAll.value ? "all" : "one"}
              label={showAll.value ? "Show the chosen line alone" : "Show all lines on the map"}
              onPress={() => {
                showAll.value = !showAll.value;
              }}
            />
            <IconButton
              icon="compare"
              label="Compare side by side"
              onPress={() => setComparing(true)}
            />
          </>
        )}
      </div>
      <CompareDialog open={comparing} onClose={() => setComparing(false)} />
    </nav>
  );
}

function AddMenu() {
  const chosen = chosenAlternative.value;
  if (!ground.value) {
    return <IconButton icon="plus" label="Add a line" disabled onPress={() => undefined} />;
  }
  return (
    <Menu label="Add a line" icon="plus">
      <MenuItem icon="ring" onChoose={() => hold("draw-ring")}>
        Draw a ring
      </MenuItem>
      <MenuItem icon="line" onChoose={() => hold("draw-line")}>
        Draw a tied-in line
      </MenuItem>
      {canFind.value && (
        <MenuItem icon="find" onChoose={() => void findRing()}>
          Find the ring
        </MenuItem>
      )}
      {chosen && (
        <MenuItem icon="copy" onChoose={() => copyAlternative(chosen)}>
          Copy {chosen.name}
        </MenuItem>
      )}
    </Menu>
  );
}

function hold(next: "draw-ring" | "draw-line"): void {
  tool.value = next;
}
