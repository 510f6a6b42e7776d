import type { ComponentChildren } from "preact";

/** One line of a list of facts: its name left, its value right. Lives in a `dl`. */
export function Fact({ name, children }: { name: string; children: ComponentChildren }) {
  return (
    <div class="fact">
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}
