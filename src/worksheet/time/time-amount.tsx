import type { ComponentChildren } from "preact";
import type { LineTime } from "../../../shared/time/types.ts";
import { type TimeMakeupKey, timeMakeup } from "../../../shared/words/makeup/time.ts";
import { plan } from "../../document/store.ts";
import { unitSystem } from "../../live/screen.ts";
import { Figure } from "../../ui/makeup-popover.tsx";

interface TimeAmountProps {
  readonly make: TimeMakeupKey;
  readonly title: string;
  readonly time: LineTime;
  readonly children: ComponentChildren;
}

/** One number about time that shows its make-up. */
export function TimeAmount({ make, title, time, children }: TimeAmountProps) {
  const makeup = () => timeMakeup(make, { plan: plan.value, time, system: unitSystem.value });
  return (
    <Figure title={title} makeup={makeup}>
      {children}
    </Figure>
  );
}
