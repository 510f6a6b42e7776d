import "./disclosure.css";
import { computed, type ReadonlySignal, signal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { useEffect, useId, useRef, useState } from "preact/hooks";
import { recall, remember } from "../browser/remember.ts";
import { Icon } from "./icons.tsx";

const asked = signal<ReadonlyMap<string, string | null>>(new Map());

/** True while a part is asked for that is not open yet: whoever hides the worksheet shows it then. */
export const disclosureAsked: ReadonlySignal<boolean> = computed(() => asked.value.size > 0);

/**
 * Opens a part of the worksheet from elsewhere, as if its title had been pressed, and brings it into view; with the
 * class of something inside, that, with its first control in focus.
 */
export function openDisclosure(id: string, within: string | null = null): void {
  asked.value = new Map([...asked.peek(), [id, within]]);
}

/** Brings a part of the worksheet into view once it is laid out, or the first of a class inside it. */
function reveal(part: HTMLElement | null, within: string | null): void {
  requestAnimationFrame(() => {
    const inside = within === null ? null : part?.querySelector(`.${within}`);
    (inside ?? part)?.scrollIntoView({ block: "nearest" });
    inside?.querySelector<HTMLElement>("input, select, button")?.focus();
  });
}

interface DisclosureProps {
  /** Under what the open state is remembered on this machine. */
  readonly id: string;
  readonly title: string;
  /** Said on the title's line, open or closed. */
  readonly summary?: ComponentChildren;
  /** A second line, shown while closed. */
  readonly line?: ComponentChildren;
  readonly startsOpen?: boolean;
  /** `block` is a room of the worksheet; `part` lies inside one. */
  readonly level?: "block" | "part";
  readonly children: ComponentChildren;
}

/** A part of the worksheet that closes to one line, and remembers whether it was open. */
export function Disclosure(props: DisclosureProps) {
  const bodyId = useId();
  const key = `drystead.open.${props.id}`;
  const [open, setOpen] = useState(() => recall(key, props.startsOpen ? "yes" : "no") === "yes");
  const level = props.level ?? "block";
  const section = useRef<HTMLElement>(null);
  const isAsked = asked.value.has(props.id);
  useEffect(() => {
    if (!isAsked) return;
    const within = asked.peek().get(props.id) ?? null;
    asked.value = new Map([...asked.peek()].filter(([id]) => id !== props.id));
    remember(key, "yes");
    setOpen(true);
    reveal(section.current, within);
  }, [isAsked, key, props.id]);
  const toggle = () => {
    remember(key, open ? "no" : "yes");
    setOpen(!open);
  };
  const button = (
    <button type="button" aria-expanded={open} aria-controls={bodyId} onClick={toggle}>
      <Icon name="chevron" />
      <span class="disclosure-title">{props.title}</span>
      {props.summary && <span class="disclosure-summary">{props.summary}</span>}
    </button>
  );
  return (
    <section
      ref={section}
      class={`disclosure disclosure-${level}`}
      data-open={open}
      data-block={props.id}
    >
      {level === "block" ? <h2>{button}</h2> : <h3>{button}</h3>}
      {!open && props.line && <p class="disclosure-line">{props.line}</p>}
      <div id={bodyId} class="disclosure-body" hidden={!open}>
        {open && props.children}
      </div>
    </section>
  );
}
