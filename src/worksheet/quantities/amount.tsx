import type { ComponentChildren } from "preact";
import { type MakeupInputs, type MakeupKey, makeup } from "../../../shared/words/makeup/line.ts";
import { Figure } from "../../ui/makeup-popover.tsx";

interface AmountProps {
  /** Which make-up the number shows. */
  readonly make: MakeupKey;
  readonly title: string;
  readonly inputs: MakeupInputs;
  readonly children: ComponentChildren;
}

/** One computed number that shows its make-up. */
export function Amount({ make, title, inputs, children }: AmountProps) {
  return (
    <Figure title={title} makeup={() => makeup(make, inputs)}>
      {children}
    </Figure>
  );
}
