import { signal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";
import type { Makeup } from "../../shared/words/makeup/inputs.ts";
import { placeBeside } from "./place-beside.ts";

const POPOVER_ID = "makeup";
const HOVER_MS = 140;

interface Shown {
  readonly anchor: HTMLElement;
  readonly title: string;
  readonly makeup: Makeup;
}

const shown = signal<Shown | null>(null);
let timer: ReturnType<typeof setTimeout> | undefined;
let turn = 0;

function show(next: Shown | null, delayMs: number): void {
  turn += 1;
  clearTimeout(timer);
  timer = setTimeout(() => {
    shown.value = next;
  }, delayMs);
}

interface FigureProps {
  /** What the number is, for its make-up's title and for screen readers. */
  readonly title: string;
  /** Made, and fetched where need be, when it is to be shown. */
  readonly makeup: () => Makeup | Promise<Makeup>;
  readonly children: ComponentChildren;
}

/** A number that shows what it is made of when it is pointed at, focused or tapped. */
export function Figure({ title, makeup, children }: FigureProps) {
  const open = async (anchor: HTMLElement, delayMs: number) => {
    turn += 1;
    const wanted = turn;
    const made = await makeup();
    if (turn === wanted) show({ anchor, title, makeup: made }, delayMs);
  };
  return (
    <button
      type="button"
      class="figure"
      aria-describedby={POPOVER_ID}
      onPointerEnter={(event) => open(event.currentTarget, HOVER_MS)}
      onPointerLeave={() => show(null, HOVER_MS)}
      onFocus={(event) => open(event.currentTarget, 0)}
      onBlur={() => show(null, 0)}
      onClick={(event) => open(event.currentTarget, 0)}
    >
      {children}
    </button>
  );
}

/** The one place where make-ups appear; rendered once, above everything. */
export function MakeupPopover() {
  const box = useRef<HTMLDivElement>(null);
  const current = shown.value;
  useEffect(() => {
    const element = box.current;
    if (!element) return;
    element.togglePopover(current !== null);
    if (current) placeBeside(element, current.anchor);
  }, [current]);
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key === "Escape") show(null, 0);
    };
    document.addEventListener("keydown", onKey);
    return () => document.removeEventListener("keydown", onKey);
  }, []);
  return (
    <div
      id={POPOVER_ID}
      class="makeup"
      popover="manual"
      ref={box}
      onPointerEnter={() => clearTimeout(timer)}
      onPointerLeave={() => show(null, HOVER_MS)}
    >
      {current && <MakeupText title={current.title} makeup={current.makeup} />}
    </div>
  );
}

function MakeupText({ title, makeup }: { readonly title: string; readonly makeup: Makeup }) {
  return (
    <>
      <strong>{title}</strong>
      <p class="makeup-formula">{makeup.formula}</p>
      <dl>
        {makeup.inputs.map((input) => (
          <div key={input.name}>
            <dt>{input.name}</dt>
            <dd>{input.value}</dd>
          </div>
        ))}
      </dl>
      <p class="makeup-source">{makeup.source}</p>
    </>
  );
}
