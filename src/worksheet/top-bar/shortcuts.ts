import { neighbourOf } from "../../document/edits/alternatives.ts";
import { plan, redo, undo } from "../../document/store.ts";
import { chooseAlternative, savePlan } from "../../live/actions.ts";
import { buildingsOpen } from "../../live/buildings/open.ts";
import { fieldOpen } from "../../live/field.ts";
import { lessonOpen } from "../../live/lesson.ts";
import { flipTheme, pagesOpen, showAll, tool, unitSystem } from "../../live/screen.ts";
import { leaveMoment, momentH } from "../../live/time-now.ts";
import { chooseUnits } from "../../live/units-choice.ts";

/** The button that asks for a plan or elevation data. */
export const OPEN_BUTTON_ID = "open-files";
/** The button that shows the list of keys. */
export const KEYS_BUTTON_ID = "show-keys";

/** One key the whole screen listens to. */
export interface Shortcut {
  /** As shown in the list of keys. */
  readonly keys: string;
  readonly does: string;
  readonly fits: (event: KeyboardEvent) => boolean;
  readonly run: () => void;
}

const withControl =
  (key: string, shift = false) =>
  (event: KeyboardEvent) =>
    (event.ctrlKey || event.metaKey) &&
    !event.altKey &&
    event.shiftKey === shift &&
    event.key.toLowerCase() === key;

const alone = (key: string) => (event: KeyboardEvent) =>
  !event.ctrlKey && !event.metaKey && !event.altKey && event.key === key;

/** Every key of the screen, in the order they are listed. */
export const SHORTCUTS: readonly Shortcut[] = [
  { keys: "Ctrl Z", does: "Undo", fits: withControl("z"), run: undo },
  {
    keys: "Ctrl Shift Z, Ctrl Y",
    does: "Redo",
    fits: (event) => withControl("z", true)(event) || withControl("y")(event),
    run: redo,
  },
  {
    keys: "Ctrl O",
    does: "Open a plan or elevation data",
    fits: withControl("o"),
    run: () => document.getElementById(OPEN_BUTTON_ID)?.click(),
  },
  { keys: "Ctrl S", does: "Save the plan as a file", fits: withControl("s"), run: savePlan },
  { keys: "[", does: "Previous line", fits: alone("["), run: () => flip(-1) },
  { keys: "]", does: "Next line", fits: alone("]"), run: () => flip(1) },
  {
    keys: "a",
    does: "Show one line or all",
    fits: alone("a"),
    run: () => {
      showAll.value = !showAll.value;
    },
  },
  {
    keys: "u",
    does: "Feet or meters",
    fits: alone("u"),
    run: () => chooseUnits(unitSystem.value === "us" ? "metric" : "us"),
  },
  {
    keys: "n",
    does: "Night or day",
    fits: alone("n"),
    run: flipTheme,
  },
  {
    keys: "p",
    does: "Print pages",
    fits: alone("p"),
    run: () => {
      pagesOpen.value = true;
    },
  },
  {
    keys: "?",
    does: "List of keys",
    fits: alone("?"),
    run: () => document.getElementById(KEYS_BUTTON_ID)?.click(),
  },
  {
    keys: "Escape",
    does: "Put the drawing tool away",
    fits: (event) => event.key === "Escape" && tool.value !== "move",
    run: () => {
      tool.value = "move";
    },
  },
  {
    keys: "Escape",
    does: "Leave the moment of the forecast",
    fits: (event) => event.key === "Escape" && momentH.value !== null,
    run: leaveMoment,
  },
];

function flip(by: -1 | 1): void {
  const id = neighbourOf(plan.value, by);
  if (id !== null) chooseAlternative(id);
}

const PRESSED = new Set(["radio", "checkbox", "range", "button", "file"]);

/** True where a key belongs to the text under it; Ctrl keys do only while that text waits to be taken. */
function isTyping(event: KeyboardEvent): boolean {
  const target = event.target;
  if (target instanceof HTMLInputElement) {
    if (PRESSED.has(target.type)) return false;
    const withControl = event.ctrlKey || event.metaKey;
    return !withControl || target.dataset.pending === "true";
  }
  return target instanceof HTMLElement && /^(?:textarea|select)$/i.test(target.tagName);
}

/** Runs the shortcut a key asks for. While text is typed, and over a dialog, the pages, the field views, the lesson or all buildings, it leaves keys alone. */
export function runShortcut(event: KeyboardEvent): void {
  if (event.defaultPrevented || isTyping(event)) return;
  const isCovered = pagesOpen.value || fieldOpen.value || lessonOpen.value || buildingsOpen.value;
  if (isCovered || document.querySelector("dialog[open]")) return;
  const shortcut = SHORTCUTS.find((each) => each.fits(event));
  if (!shortcut) return;
  event.preventDefault();
  shortcut.run();
}
