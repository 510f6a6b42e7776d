import type { ComponentChildren } from "preact";
import {
  deleteListed,
  type Listed,
  type ListName,
  renameListed,
} from "../document/edits/listed.ts";
import { Icon } from "../ui/icons.tsx";
import { TextField } from "../ui/text-field.tsx";

interface NameRowProps<K extends ListName> {
  readonly list: K;
  readonly entry: Listed<K>;
  /** What the field is called where not by the entry's own name, e.g. "Name of the source". */
  readonly label?: string;
  /** What stands for a name that is empty, e.g. "this source". */
  readonly unnamed?: string;
  /** What stands between the name and its deletion. */
  readonly children?: ComponentChildren;
}

/** An entry of one of the plan's lists: its name to change, and a way to delete it. */
export function NameRow<K extends ListName>(props: NameRowProps<K>) {
  const { list, entry, unnamed = "" } = props;
  const { name } = entry;
  return (
    <div class="named-row">
      <TextField
        label={props.label ?? `Name of ${name}`}
        labelHidden
        value={name}
        placeholder="name"
        onText={(text) => renameListed(list, entry, text)}
      />
      {props.children}
      <button
        type="button"
        class="icon-button"
        aria-label={`Delete ${name || unnamed}`}
        onClick={() => deleteListed(list, entry)}
      >
        <Icon name="trash" />
      </button>
    </div>
  );
}
