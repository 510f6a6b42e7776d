import { useEffect, useRef, useState } from "preact/hooks";
import type { Alignment } from "../../../shared/plan.ts";
import type { SizedLine } from "../../../shared/sizing-types.ts";
import {
  copyAlternative,
  deleteAlternative,
  moveAlternative,
  renameAlternative,
} from "../../document/edits/alternatives.ts";
import { chooseAlternative } from "../../live/actions.ts";
import { planElsewhere } from "../../live/plan-apart.ts";
import { unitSystem } from "../../live/screen.ts";
import { markAsked } from "../../live/uncounted.ts";
import { mustFixOn, tracedNow } from "../../live/water-now.ts";
import { Menu, MenuItem } from "../../ui/menu.tsx";
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

/** One alternative of the strip: pressed, it is the chosen one; its menu renames, moves, copies, deletes. */
export function AlternativeCard(props: AlternativeCardProps) {
  const { alternative, letter, line, isChosen } = props;
  const [renaming, setRenaming] = useState(false);
  const card = useRef<HTMLLIElement>(null);
  const isSized = line !== null;
  useEffect(() => {
    if (isChosen) card.current?.scrollIntoView({ block: "nearest", inline: "nearest" });
  }, [isChosen, isSized]);
  return (
    <li class="alternative" ref={card} data-chosen={isChosen} data-alternative={alternative.id}>
      {renaming ? (
        <div class="alternative-face">
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
      ) : (
        <button
          type="button"
          class="alternative-face"
          aria-current={isChosen}
          onClick={() => chooseAlternative(alternative.id)}
          onDblClick={() => setRenaming(true)}
        >
          <span class="letter">{letter}</span>
          <span class="alternative-words">
            <span class="alternative-name">
              {tracedNow.value.get(alternative.id)?.dry === false && (
                <strong>water gets in </strong>
              )}
              {nameShown(alternative, letter)}
            </span>
            {line ? (
              <CardFigures line={line} mustFix={mustFixOn(line)} system={unitSystem.value} />
            ) : (
              <span class="alternative-figures">{notSized()}</span>
            )}
          </span>
        </button>
      )}
      {isChosen && <CardMenu {...props} onRename={() => setRenaming(true)} />}
    </li>
  );
}

function CardMenu(props: AlternativeCardProps & { readonly onRename: () => void }) {
  const { alternative } = props;
  return (
    <Menu label={`More for ${alternative.name}`} icon="more">
      <MenuItem icon="line" onChoose={props.onRename}>
        Rename
      </MenuItem>
      <MenuItem icon="copy" onChoose={() => copyAlternative(alternative)}>
        Copy
      </MenuItem>
      <MenuItem
        icon="left"
        disabled={props.isFirst}
        onChoose={() => moveAlternative(alternative, -1)}
      >
        Move left
      </MenuItem>
      <MenuItem
        icon="right"
        disabled={props.isLast}
        onChoose={() => moveAlternative(alternative, 1)}
      >
        Move right
      </MenuItem>
      <MenuItem icon="trash" onChoose={() => deleteAlternative(alternative)}>
        Delete
      </MenuItem>
    </Menu>
  );
}

function nameShown(alternative: Alignment, letter: string): string {
  if (alternative.name !== letter) return alternative.name;
  return alternative.kind === "ring" ? "Ring" : "Tied-in line";
}

function notSized(): string {
  if (planElsewhere.value) return "not on this elevation data";
  return markAsked.value ? "waits for your answer in Ground" : "not sized yet";
}
