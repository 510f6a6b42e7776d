import type { ComponentChildren } from "preact";
import type { SizedLine } from "../../shared/sizing-types.ts";
import type { LineTime } from "../../shared/time/types.ts";
import { workAt } from "../../shared/time/work-tone.ts";
import { spokenWords } from "../../shared/words/reading.ts";
import { shortWorkWords } from "../../shared/words/work.ts";
import { plan } from "../document/store.ts";
import { builtAt, readingAt } from "../drawing/profile/profile-reading.ts";
import { markedM, unitSystem } from "../live/screen.ts";

interface ProfileSliderProps {
  readonly line: SizedLine;
  readonly time: LineTime | null;
  /** Id of what describes the picture. */
  readonly describedBy: string;
  readonly onKeyDown: (event: KeyboardEvent) => void;
  readonly children: ComponentChildren;
}

/** The marked station as a slider for the keyboard and for those who listen. */
export function ProfileSlider(props: ProfileSliderProps) {
  const { line, time, describedBy, onKeyDown, children } = props;
  const reading = readingAt(line, markedM.value ?? line.totals.greatestHeightAtM);
  const built = reading && builtAt(line, reading.chainageM, plan.value);
  const spoken = reading && built && spokenWords(reading, built, unitSystem.value);
  const work = reading && workAt(time, reading.chainageM);
  const words = [spoken, work && time && shortWorkWords(work, time)]
    .filter((each) => each !== null)
    .join(", ");
  return (
    <div
      class="profile-slider"
      role="slider"
      tabIndex={0}
      aria-label="Marked station"
      aria-valuemin={0}
      aria-valuemax={toCentimetre(line.totals.lengthM)}
      aria-valuenow={toCentimetre(reading?.chainageM ?? 0)}
      aria-valuetext={words || undefined}
      aria-describedby={describedBy}
      onKeyDown={onKeyDown}
    >
      {children}
    </div>
  );
}

function toCentimetre(chainageM: number): number {
  return Math.round(chainageM * 100) / 100;
}
