import type { ComponentChildren } from "preact";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { plan } from "../document/store.ts";
import { markedM, unitSystem } from "../state.ts";
import { readingAt, spokenWords } from "./profile-reading.ts";

interface ProfileSliderProps {
  readonly line: SizedLine;
  readonly onKeyDown: (event: KeyboardEvent) => void;
  readonly children: ComponentChildren;
}

/** The marked station as a slider for the keyboard and for those who listen. */
export function ProfileSlider({ line, onKeyDown, children }: ProfileSliderProps) {
  const reading = readingAt(line, markedM.value ?? line.totals.greatestHeightAtM);
  const words = reading && spokenWords(reading, plan.value.section, unitSystem.value);
  return (
    <div
      class="profile-slider"
      role="slider"
      tabIndex={0}
      aria-label="Marked station"
      aria-valuemin={0}
      aria-valuemax={toCentimetre(line.totals.lengthM)}
      aria-valuenow={toCentimetre(reading?.chainageM ?? 0)}
      aria-valuetext={words ?? undefined}
      onKeyDown={onKeyDown}
    >
      {children}
    </div>
  );
}

function toCentimetre(chainageM: number): number {
  return Math.round(chainageM * 100) / 100;
}
