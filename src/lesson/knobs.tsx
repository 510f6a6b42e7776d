import { failureOf, type Outcome } from "../../shared/failure.ts";
import type { LessonKnob, TeachingGround } from "../../shared/lesson/teaching-ground.ts";
import { amountOf, plainText } from "../../shared/parse-length.ts";
import { lengthIn, parseLength, type UnitSystem } from "../../shared/units.ts";
import { KNOB_KINDS, KNOB_NAMES, knobEnd, knobFigure } from "../../shared/words/lesson.ts";
import { NumberField } from "../ui/number-field.tsx";
import { type KnownQuantity, quantityAs } from "../ui/quantity.ts";
import type { Shown } from "./shown.ts";
import { Slide } from "./slide.tsx";

const KNOBS: readonly LessonKnob[] = ["slope", "riverM", "freeboardM", "baseRatio"];

interface KnobsProps extends Shown {
  /** Takes a new figure with the name of the touch it belongs to; null while nothing can be set. */
  readonly onKnob: ((knob: LessonKnob, value: number, touch: string) => void) | null;
}

/** The four sliders, each with its figure to type; a ring marks where it was before. */
export function Knobs({ teaching, shape, before, onKnob }: KnobsProps) {
  return (
    <div class="lesson-knobs">
      {KNOBS.map((knob) => (
        <Knob
          key={knob}
          {...{ teaching, knob, onKnob }}
          value={shape.choice[knob]}
          was={before?.choice[knob] ?? null}
        />
      ))}
    </div>
  );
}

interface KnobProps extends Pick<KnobsProps, "teaching" | "onKnob"> {
  readonly knob: LessonKnob;
  readonly value: number;
  readonly was: number | null;
}

function Knob({ teaching, knob, value, was, onKnob }: KnobProps) {
  const { system } = teaching;
  const { least, most, step } = teaching.knobs[knob];
  const hasGhost = was !== null && Math.abs(was - value) > step / 1000;
  return (
    <fieldset class="lesson-knob">
      <legend class="unseen">{KNOB_NAMES[knob]}</legend>
      <NumberField
        label={KNOB_NAMES[knob]}
        value={value}
        quantity={quantityOf(teaching, knob)}
        system={system}
        range={{ least, most }}
        disabled={onKnob === null}
        onValue={(next, gesture) => {
          if (next !== null) onKnob?.(knob, next, gesture ?? `typed-${next}`);
          return undefined;
        }}
      />
      <div class="lesson-slide">
        {hasGhost && (
          <i
            class="lesson-slide-ghost"
            style={{ "--was": String((was - least) / (most - least)) }}
          />
        )}
        <Slide
          label={`${KNOB_NAMES[knob]}, slider`}
          {...{ value, least, most, step }}
          unitM={unitsIn(knob, system)}
          spoken={knobFigure(knob, value, system)}
          onValue={onKnob && ((next, touch) => onKnob(knob, next, touch))}
        />
      </div>
      <div class="lesson-ends" aria-hidden="true">
        <span>{knobEnd(knob, least, system)}</span>
        <span>{knobEnd(knob, most, system)}</span>
      </div>
    </fieldset>
  );
}

/** Units a slider moves in, in one SI unit. */
function unitsIn(knob: LessonKnob, system: UnitSystem): number {
  if (knob === "slope") return 100;
  return knob === "baseRatio" ? 1 : lengthIn(1, system);
}

/** The figure of a slider as it is written and read, rounded to what is shown of it. */
function quantityOf(teaching: TeachingGround, knob: LessonKnob): KnownQuantity {
  const isRatio = knob === "slope" || knob === "baseRatio";
  return quantityAs(KNOB_KINDS[knob], {
    step: () => teaching.knobs[knob].step,
    parse: (text, system) => {
      const parsed = isRatio ? parseRatio(knob, text, system) : parseLength(text, system);
      if (!parsed.ok) return parsed;
      const scale = (isRatio ? 10 : 100) * unitsIn(knob, system);
      return { ok: true, value: Math.round(parsed.value * scale) / scale };
    },
  });
}

/** `2.5`, `2.5 in 100`, `3`, `3.0 × height`. */
function parseRatio(knob: LessonKnob, text: string, system: UnitSystem): Outcome<number> {
  const figure = plainText(text).replace(/\s*(in 100|[x×]\s*height|[x×])$/, "");
  const amount = amountOf(figure);
  if (Number.isFinite(amount)) return { ok: true, value: amount / unitsIn(knob, system) };
  return { ok: false, failure: failureOf("lesson/not-a-figure", { knob, came: text }) };
}
