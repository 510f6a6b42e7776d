import "./disclosure.css";
import { signal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { useEffect, useId, useState } from "preact/hooks";
import { recall, remember } from "../browser/remember.ts";
import { Icon } from "./icons.tsx";

const asked = signal<ReadonlySet<string>>(new Set());

/** Opens a part of the worksheet from elsewhere, as if its title had been pressed. */
export function openDisclosure(id: string): void {
  asked.value = new Set([...asked.peek(), id]);
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
  const isAsked = asked.value.has(props.id);
  useEffect(() => {
    if (!isAsked) return;
    asked.value = new Set([...asked.peek()].filter((id) => id !== props.id));
    remember(key, "yes");
    setOpen(true);
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
    <section class={`disclosure disclosure-${level}`} data-open={open} data-block={props.id}>
      {level === "block" ? <h2>{button}</h2> : <h3>{button}</h3>}
      {!open && props.line && <p class="disclosure-line">{props.line}</p>}
      <div id={bodyId} class="disclosure-body" hidden={!open}>
        {open && props.children}
      </div>
    </section>
  );
}
