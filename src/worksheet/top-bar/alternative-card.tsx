import { useEffect, useId, useRef, useState } from "preact/hooks";
import type { Alignment } from "../../../shared/plan.ts";
import type { SizedLine } from "../../../shared/sizing-types.ts";
import { isWaterGiven } from "../../../shared/stage.ts";
import { NOT_KNOWN_NO_STAGE } from "../../../shared/words/no-stage.ts";
import {
  copyAlternative,
  deleteAlternative,
  moveAlternative,
  renameAlternative,
} from "../../document/edits/alternatives.ts";
import { plan } from "../../document/store.ts";
import { chooseAlternative } from "../../live/actions.ts";
import { planElsewhere } from "../../live/plan-apart.ts";
import { unitSystem } from "../../live/screen.ts";
import { markAsked } from "../../live/uncounted.ts";
import { verdicts } from "../../live/verdict-now.ts";
import { Icon } from "../../ui/icons.tsx";
import { MenuItem, MenuList } from "../../ui/menu.tsx";
import { TextField } from "../../ui/text-field.tsx";
import { CardFigures } from "./card-figures.tsx";

interface AlternativeCardProps {
  readonly alternative: Alignment;
  readonly letter: string;
  readonly line: SizedLine | null;
  readonly isChosen: boolean;
  readonly isFirst: boolean;
  readonly isLast: boolean;
}

/**
 * One line of the strip. Pressed, it is the chosen one; pressed again, or by the other mouse button, it opens its
 * menu, which renames, moves, copies, deletes.
 */
export function AlternativeCard(props: AlternativeCardProps) {
  const { alternative, letter, line, isChosen } = props;
  const [renaming, setRenaming] = useState(false);
  const menuId = useId();
  const card = useRef<HTMLLIElement>(null);
  const verdict = verdicts.value.get(alternative.id);
  const isSized = line !== null;
  useEffect(() => {
    if (isChosen) card.current?.scrollIntoView({ block: "nearest", inline: "nearest" });
  }, [isChosen, isSized]);
  const openMenu = (event: Event) => {
    event.preventDefault();
    chooseAlternative(alternative.id);
    document.getElementById(menuId)?.showPopover();
  };
  return (
    <li class="alternative" ref={card} data-chosen={isChosen} data-alternative={alternative.id}>
      {renaming ? (
        <div class="alternative-face">
          <div class="alternative-name">
            <span class="letter">{letter}</span>
            <TextField
              label="Name of the line"
              labelHidden
              autoFocus
              value={alternative.name}
              onText={(name) => renameAlternative(alternative, name)}
              onDone={() => setRenaming(false)}
            />
          </div>
        </div>
      ) : (
        <button
          type="button"
          class="alternative-face"
          aria-current={isChosen}
          popovertarget={isChosen ? menuId : undefined}
          onClick={() => chooseAlternative(alternative.id)}
          onContextMenu={openMenu}
          onDblClick={() => setRenaming(true)}
        >
          <span class="alternative-name">
            <span class="letter">{letter}</span>
            <span class="alternative-named">{nameShown(alternative, letter)}</span>
            {isChosen && <Icon name="chevron" />}
          </span>
          {line && verdict ? (
            <CardFigures line={line} verdict={verdict} system={unitSystem.value} />
          ) : (
            <span class="alternative-figures">{notSized()}</span>
          )}
        </button>
      )}
      <MenuList id={menuId} beside={card}>
        <CardActs {...props} onRename={() => setRenaming(true)} />
      </MenuList>
    </li>
  );
}

function CardActs(props: AlternativeCardProps & { readonly onRename: () => void }) {
  const { alternative } = props;
  return (
    <>
      <MenuItem onChoose={props.onRename}>Rename</MenuItem>
      <MenuItem onChoose={() => copyAlternative(alternative)}>Copy</MenuItem>
      <MenuItem disabled={props.isFirst} onChoose={() => moveAlternative(alternative, -1)}>
        Move left
      </MenuItem>
      <MenuItem disabled={props.isLast} onChoose={() => moveAlternative(alternative, 1)}>
        Move right
      </MenuItem>
      <MenuItem onChoose={() => deleteAlternative(alternative)}>Delete</MenuItem>
    </>
  );
}

function nameShown(alternative: Alignment, letter: string): string {
  if (alternative.name !== letter) return alternative.name;
  return alternative.kind === "ring" ? "Ring" : "Tied-in line";
}

function notSized(): string {
  if (planElsewhere.value) return "not on this elevation data";
  if (!isWaterGiven(plan.value.water)) return NOT_KNOWN_NO_STAGE;
  return markAsked.value ? "waits for your answer in Elevation data" : "not sized yet";
}
