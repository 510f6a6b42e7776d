import { nothingBuiltWords } from "../../shared/words/nothing-built.ts";
import "./class-bar.css";
import { useId } from "preact/hooks";
import { HEIGHT_CLASSES } from "../../shared/height-class.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { formatLength, lengthIn, lengthUnit, type UnitSystem } from "../../shared/units.ts";
import { Hatches } from "./hatches.tsx";

interface ClassBarProps {
  readonly line: SizedLine;
  readonly limitM: number;
  readonly system: UnitSystem;
}

/** What a height class is called: "to 1 ft" ... "to 4 ft, the limit", "over it". */
export function classWords(index: number, limitM: number, system: UnitSystem): string {
  if (index === HEIGHT_CLASSES - 1) return "over it";
  const steps = HEIGHT_CLASSES - 1;
  const top = Number(lengthIn((limitM * (index + 1)) / steps, system).toFixed(2));
  const words = `to ${top} ${lengthUnit(system)}`;
  return index === steps - 1 ? `${words}, the limit` : words;
}

/** Length by height class as one bar, and in words under it. */
export function ClassBar({ line, limitM, system }: ClassBarProps) {
  const id = useId();
  const lengths = line.totals.lengthByClassM;
  const total = lengths.reduce((sum, lengthM) => sum + lengthM, 0);
  if (total === 0) return <p class="hint">{nothingBuiltWords(line.totals)}</p>;
  const shares = lengths.map((lengthM) => (100 * lengthM) / total);
  const starts = shares.map((_, index) =>
    shares.slice(0, index).reduce((sum, share) => sum + share, 0),
  );
  return (
    <>
      <div class="class-bar">
        <svg viewBox="0 0 100 7" preserveAspectRatio="none" aria-hidden="true">
          <Hatches id={id} />
          {shares.map((share, index) => (
            <rect
              key={starts[index]! + index / 10}
              x={starts[index]}
              width={Math.max(0, share - 0.3)}
              height="7"
              {...classLook(index, id)}
            />
          ))}
        </svg>
      </div>
      <ul class="class-words" aria-label="Length by height">
        {lengths.map((lengthM, index) =>
          lengthM > 0 ? (
            <li key={classWords(index, limitM, system)}>
              <ClassSwatch index={index} />
              {classWords(index, limitM, system)}: {formatLength(lengthM, system, 0)}
            </li>
          ) : null,
        )}
      </ul>
    </>
  );
}

/** A small field in the look of a height class. */
export function ClassSwatch({ index }: { index: number }) {
  const id = useId();
  return (
    <svg width="14" height="9" aria-hidden="true">
      <Hatches id={id} />
      <rect x="0" y="0" width="14" height="9" {...classLook(index, id)} />
    </svg>
  );
}

/** Fill of a height class: its sand colour, or the hatch over the limit (`id` of the {@link Hatches} in the drawing). */
export function classLook(index: number, id: string) {
  return index === HEIGHT_CLASSES - 1
    ? { fill: `url(#${id}-over)` }
    : { class: `levee-fill-${index + 1}` };
}
