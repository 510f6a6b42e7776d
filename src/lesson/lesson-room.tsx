import "./lesson.css";
import { useEffect, useMemo, useState } from "preact/hooks";
import { exercisesOn } from "../../shared/lesson/exercises.ts";
import { lessonShape } from "../../shared/lesson/lesson-shape.ts";
import {
  type LessonChoice,
  TEACHING_GROUNDS,
  type TeachingGround,
} from "../../shared/lesson/teaching-ground.ts";
import { LESSON, limitSource } from "../../shared/words/lesson.ts";
import { leaveLesson } from "../live/lesson.ts";
import { unitSystem } from "../live/screen.ts";
import { Mark } from "../ui/icons.tsx";
import { useSize } from "../ui/use-size.ts";
import { CurvePanel } from "./curve-panel.tsx";
import { HandPanel } from "./hand-panel.tsx";
import { Knobs } from "./knobs.tsx";
import { PredictStrip } from "./predict-strip.tsx";
import { ProfilePanel } from "./profile-panel.tsx";
import { SectionPanel } from "./section-panel.tsx";
import type { Shown } from "./shown.ts";
import { typeSizePx } from "./type-size.ts";

/** The lesson over the planning screen: on ground of its own, in the units of the screen. */
export function LessonRoom() {
  const system = unitSystem.value;
  return <Lesson key={system} teaching={TEACHING_GROUNDS[system]} />;
}

type Mode = "explore" | "predict";

function Lesson({ teaching }: { readonly teaching: TeachingGround }) {
  const [ref, size] = useSize<HTMLDivElement>();
  const [mode, setMode] = useState<Mode>("explore");
  const explored = useExplored(teaching);
  const exercises = useMemo(() => exercisesOn(teaching), [teaching]);
  const [index, setIndex] = useState(0);
  const [said, setSaid] = useState<readonly (number | null)[]>(() => exercises.map(() => null));
  const typePx = size ? typeSizePx(size.widthPx, size.heightPx) : 14;
  useEffect(() => {
    ref.current?.focus();
    const onKey = (event: KeyboardEvent) => {
      if (event.key === "Escape") leaveLesson();
    };
    document.addEventListener("keydown", onKey);
    return () => document.removeEventListener("keydown", onKey);
  }, [ref]);
  const isPredicting = mode === "predict";
  const exercise = exercises[index]!;
  const shown: Shown = isPredicting
    ? {
        teaching,
        shape: exercise.after,
        before: exercise.before,
        isShown: said[index] !== null,
      }
    : { teaching, ...explored.shapes, isShown: true };
  const drawn = { ...shown, typePx };
  return (
    <div
      class="lesson"
      ref={ref}
      tabIndex={-1}
      role="dialog"
      aria-label={LESSON.name}
      style={{ fontSize: `${typePx}px` }}
    >
      <Head mode={mode} onMode={setMode} />
      {isPredicting && (
        <PredictStrip
          {...{ teaching, exercises, index, said }}
          onSaid={(figure) => setSaid(said.map((each, i) => (i === index ? figure : each)))}
          onGo={setIndex}
          onDone={() => setMode("explore")}
        />
      )}
      <main class="lesson-body">
        <div class="lesson-drawings">
          <ProfilePanel
            {...drawn}
            onStation={isPredicting ? null : (stationM, touch) => explored.set({ stationM }, touch)}
          />
          <SectionPanel {...drawn} />
          <Knobs
            {...shown}
            onKnob={
              isPredicting ? null : (knob, value, touch) => explored.set({ [knob]: value }, touch)
            }
          />
        </div>
        <div class="lesson-figures-side">
          <HandPanel {...shown} asks={isPredicting ? exercise.asks : "per-length"} />
          <CurvePanel {...drawn} />
        </div>
      </main>
      <footer class="lesson-foot">
        <b>{LESSON.notForBuilding}</b>
        <span>{limitSource(shown.shape.practice.limitM, teaching.system)}</span>
      </footer>
    </div>
  );
}

interface HeadProps {
  readonly mode: Mode;
  readonly onMode: (mode: Mode) => void;
}

function Head({ mode, onMode }: HeadProps) {
  return (
    <header class="lesson-head">
      <Mark />
      <h1>{LESSON.name}</h1>
      <p>{LESSON.about}</p>
      <nav aria-label={LESSON.name}>
        <button
          type="button"
          class="lesson-mode"
          aria-pressed={mode === "explore"}
          onClick={() => onMode("explore")}
        >
          {LESSON.explore}
        </button>
        <button
          type="button"
          class="lesson-mode"
          aria-pressed={mode === "predict"}
          onClick={() => onMode("predict")}
        >
          {LESSON.predict}
        </button>
        <button type="button" class="lesson-mode" onClick={leaveLesson}>
          {LESSON.close}
        </button>
      </nav>
    </header>
  );
}

interface Explored {
  readonly now: LessonChoice;
  readonly before: LessonChoice | null;
  readonly touch: string;
}

/** What is set by hand: now, and before the last touch. A touch is one grip of one slider, or one typed figure. */
function useExplored(teaching: TeachingGround) {
  const [explored, setExplored] = useState<Explored>({
    now: teaching.first,
    before: null,
    touch: "",
  });
  const { now, before } = explored;
  const shape = useMemo(() => lessonShape(teaching, now), [teaching, now]);
  const shapeBefore = useMemo(() => before && lessonShape(teaching, before), [teaching, before]);
  return {
    shapes: { shape, before: shapeBefore },
    set: (change: Partial<LessonChoice>, touch: string) =>
      setExplored((was) => ({
        now: { ...was.now, ...change },
        before: touch === was.touch ? was.before : was.now,
        touch,
      })),
  };
}
