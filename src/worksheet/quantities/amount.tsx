import type { ComponentChildren } from "preact";
import { loadPart } from "../../../shared/load-part.ts";
import type { MakeupInputs } from "../../../shared/words/makeup/inputs.ts";
import type { MakeupKey } from "../../../shared/words/makeup/line.ts";
import { Figure } from "../../ui/makeup-popover.tsx";

const MAKEUPS = () => import("../../../shared/words/makeup/line.ts");

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
    <Figure
      title={title}
      makeup={async () =>
        (await loadPart("what a figure is made of", MAKEUPS)).makeup(make, inputs)
      }
    >
      {children}
    </Figure>
  );
}
