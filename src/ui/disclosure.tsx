import "./disclosure.css";
import { type ReadonlySignal, type Signal, signal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";
import { recall, remember } from "../browser/remember.ts";
import { Icon } from "./icons.tsx";

/** The row of the worksheet that is open, of which there is one at a time; empty when none is. */
const openRow = signal(recall("drystead.open-row", ""));
/** The other parts that open and close, each for itself. */
const parts = new Map<string, Signal<boolean>>();

/** A row that is opened from elsewhere is waited for as long as this, milliseconds. */
const MOST_WAIT_MS = 5000;

const asked = signal(0);

/** Grows when a part is asked for from elsewhere: whoever hides the worksheet shows it then. */
export const disclosuresAsked: ReadonlySignal<number> = asked;

/**
 * Opens a row of the worksheet from elsewhere, as if its title had been pressed, and a part inside it, and brings
 * them into view; with the class of something inside, that, with its first control in focus.
 */
export function openDisclosure(row: string, part?: string, within?: string): void {
  setRow(row);
  if (part) setPart(part, true);
  asked.value += 1;
  bringIntoView(part ?? row, within, performance.now() + MOST_WAIT_MS);
}

/** What is in a row may be fetched first: waited for until then. */
function bringIntoView(block: string, within: string | undefined, untilMs: number): void {
  requestAnimationFrame((nowMs) => {
    const opened = document.querySelector(`[data-block="${block}"]`);
    const inside = within ? opened?.querySelector(`.${within}`) : null;
    if (!(within ? inside : opened) && nowMs < untilMs) {
      bringIntoView(block, within, untilMs);
      return;
    }
    (inside ?? opened)?.scrollIntoView({ block: "start" });
    inside?.querySelector<HTMLElement>("input, select, button")?.focus();
  });
}

function setRow(id: string): void {
  openRow.value = id;
  remember("drystead.open-row", id);
}

function partSignal(id: string, startsOpen: boolean): Signal<boolean> {
  const known = parts.get(id);
  if (known) return known;
  const open = signal(recall(`drystead.open.${id}`, startsOpen ? "yes" : "no") === "yes");
  parts.set(id, open);
  return open;
}

/** Whether a part that opens and closes for itself is open. */
export function partOpen(id: string, startsOpen: boolean): boolean {
  return partSignal(id, startsOpen).value;
}

/** Opens or closes such a part. */
export function setPart(id: string, open: boolean): void {
  partSignal(id, false).value = open;
  remember(`drystead.open.${id}`, open ? "yes" : "no");
}

interface DisclosureProps {
  /** Under what the open state is remembered on this machine. */
  readonly id: string;
  readonly title: string;
  /** Said on the title's line, open or closed; in a row never longer than that line. */
  readonly summary?: ComponentChildren;
  readonly startsOpen?: boolean;
  /** `row` is a line of the worksheet, one open at a time; `part` lies inside one. */
  readonly level?: "row" | "part";
  readonly children: ComponentChildren;
}

/** A part of the worksheet that closes to one line, and remembers whether it was open. */
export function Disclosure(props: DisclosureProps) {
  const bodyId = useId();
  const { id, level = "row" } = props;
  const open = level === "row" ? openRow.value === id : partOpen(id, props.startsOpen ?? false);
  const toggle = () => (level === "row" ? setRow(open ? "" : id) : setPart(id, !open));
  const button = (
    <button type="button" aria-expanded={open} aria-controls={bodyId} onClick={toggle}>
      <span class="disclosure-title">{props.title}</span>
      {props.summary && <span class="disclosure-summary">{props.summary}</span>}
      <Icon name="chevron" />
    </button>
  );
  return (
    <section class={`disclosure disclosure-${level}`} data-open={open} data-block={id}>
      {level === "row" ? <h2>{button}</h2> : <h3>{button}</h3>}
      <div id={bodyId} class="disclosure-body" hidden={!open}>
        {open && props.children}
      </div>
    </section>
  );
}
