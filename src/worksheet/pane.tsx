import type { ComponentChildren } from "preact";

interface PaneProps {
  readonly id: string;
  readonly title: string;
  /** At the right of the title. */
  readonly note?: ComponentChildren;
  readonly children: ComponentChildren;
}

/** A block of the worksheet that is always open. */
export function Pane({ id, title, note, children }: PaneProps) {
  return (
    <section class="pane" data-block={id} aria-label={title}>
      <div class="pane-head">
        <h2>{title}</h2>
        {note}
      </div>
      {children}
    </section>
  );
}
