import { useState } from "preact/hooks";
import { NO_PIPE_COLUMNS, type PipeColumns } from "../../../shared/imports/into-ways.ts";
import { columnsOf } from "../../../shared/plan-footprints.ts";
import {
  PIPE_COLUMN_WORDS,
  pipeColumnsLead,
  SHAPE_USE_WORDS,
  type ShapeUse,
  shapesQuestionWords,
} from "../../../shared/words/shapes.ts";
import {
  answered,
  type ShapesQuestion as Question,
  shapesQuestions,
} from "../../live/import-shapes.ts";
import { PipeColumnPicks } from "./pipe-columns.tsx";

/** What the person is to say of a file of shapes that came: what they are, or whether they lie on this grid. */
export function ShapesQuestion() {
  const [asked] = shapesQuestions.value;
  if (!asked) return null;
  return (
    <section class="notice question" role="alert" aria-label="Shapes of a file">
      {asked.about === "grid" ? (
        <AboutGrid asked={asked} />
      ) : (
        <AboutUse key={asked.name} asked={asked} />
      )}
    </section>
  );
}

/** Takes a question away, then acts on its answer. */
function answer(asked: Question, act: () => void): void {
  answered(asked);
  act();
}

function AboutGrid({ asked }: { readonly asked: Extract<Question, { about: "grid" }> }) {
  return (
    <>
      <p>{asked.words}</p>
      <div class="tool-row">
        <button type="button" class="tool-button" onClick={() => answer(asked, asked.accept)}>
          Take them so
        </button>
        <button type="button" class="text-button" onClick={() => answered(asked)}>
          Leave them
        </button>
      </div>
    </>
  );
}

/** Whether every column that was picked has its unit. */
function isUnitSaid({ firstInvert, lastInvert, invertUnit, size, sizeUnit }: PipeColumns): boolean {
  const hasInverts = firstInvert !== null || lastInvert !== null;
  return (!hasInverts || invertUnit !== null) && (size === null || sizeUnit !== null);
}

function AboutUse({ asked }: { readonly asked: Extract<Question, { about: "use" }> }) {
  const [pipes, setPipes] = useState<PipeColumns | null>(null);
  const { figures } = columnsOf(asked.placed.paths);
  if (pipes) {
    return (
      <>
        <p>
          <strong>{pipeColumnsLead(asked.name, asked.placed.paths.length)}</strong>
        </p>
        <p class="hint">{PIPE_COLUMN_WORDS.hint}</p>
        <PipeColumnPicks figures={figures} picked={pipes} onPick={setPipes} />
        <div class="tool-row">
          <button
            type="button"
            class="start-button"
            disabled={!isUnitSaid(pipes)}
            onClick={() => answer(asked, () => asked.take("culverts", pipes))}
          >
            {PIPE_COLUMN_WORDS.take}
          </button>
          <button type="button" class="text-button" onClick={() => answered(asked)}>
            Leave them
          </button>
        </div>
      </>
    );
  }
  const { outlines, paths } = asked.placed;
  const { lead, rest } = shapesQuestionWords(asked.name, outlines.length, paths.length);
  const button = (use: ShapeUse, index: number) => (
    <button
      key={use}
      type="button"
      class={index === 0 ? "start-button" : "tool-button"}
      onClick={() =>
        use === "culverts" && figures.length > 0
          ? setPipes(NO_PIPE_COLUMNS)
          : answer(asked, () => asked.take(use))
      }
    >
      {SHAPE_USE_WORDS[use]}
    </button>
  );
  return (
    <>
      <p>
        <strong>{lead}</strong> {rest}
      </p>
      <div class="tool-row">
        {asked.uses.map(button)}
        <button type="button" class="text-button" onClick={() => answered(asked)}>
          Leave them
        </button>
      </div>
    </>
  );
}
