import type { ComponentChildren } from "preact";
import type { Holding } from "../../../shared/holding/types.ts";
import { type HoldingMakeupKey, holdingMakeup } from "../../../shared/words/makeup/holding.ts";
import { plan } from "../../document/store.ts";
import { unitSystem } from "../../live/screen.ts";
import { Figure } from "../../ui/makeup-popover.tsx";

interface HoldingFigureProps {
  readonly make: HoldingMakeupKey;
  readonly title: string;
  readonly holding: Holding;
  readonly children: ComponentChildren;
}

/** One number about holding that shows its make-up. */
export function HoldingFigure({ make, title, holding, children }: HoldingFigureProps) {
  const inputs = () => ({ plan: plan.value, holding, system: unitSystem.value });
  return (
    <Figure title={title} makeup={() => holdingMakeup(make, inputs())}>
      {children}
    </Figure>
  );
}

interface RowProps {
  readonly name: ComponentChildren;
  /** Said under the row, small. */
  readonly note?: ComponentChildren;
  readonly children: ComponentChildren;
}

/** One line of a list of amounts: its name left, its value right, a note below. Lives in a `dl`. */
export function Row({ name, note, children }: RowProps) {
  return (
    <div class="amount holding-row">
      <dt>{name}</dt>
      <dd>{children}</dd>
      {note && <dd class="holding-note">{note}</dd>}
    </div>
  );
}
