import { useId, useRef } from "preact/hooks";

interface SlideProps {
  readonly label: string;
  /** SI, as the range. */
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly step: number;
  /** Units of the slider in one SI unit, so that it moves in round figures. */
  readonly unitM: number;
  /** What is read aloud. */
  readonly spoken: string;
  /** Takes the new SI value with the name of the touch it belongs to; null while it cannot be moved. */
  readonly onValue: ((value: number, touch: string) => void) | null;
}

/** A native slider. One grip of it, by pointer or by keys, is one touch. */
export function Slide({ label, value, least, most, step, unitM, spoken, onValue }: SlideProps) {
  const id = useId();
  const touches = useRef(0);
  const begin = () => {
    touches.current += 1;
  };
  const shown = (si: number) => Number((si * unitM).toFixed(6));
  return (
    <input
      type="range"
      aria-label={label}
      aria-valuetext={spoken}
      min={shown(least)}
      max={shown(most)}
      step={shown(step)}
      value={shown(value)}
      disabled={onValue === null}
      style={{ "--share": String((value - least) / (most - least)) }}
      onFocus={begin}
      onPointerDown={begin}
      onInput={(event) =>
        onValue?.(Number(event.currentTarget.value) / unitM, `${id}-${touches.current}`)
      }
    />
  );
}
