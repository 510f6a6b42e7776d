import { useEffect } from "preact/hooks";
import type { CulvertCandidate } from "../../../shared/pipes/candidates.ts";
import type { LonLat, PossibleCulvert } from "../../../shared/plan.ts";
import {
  answerWords,
  CULVERT_QUESTION,
  candidatesNote,
  candidateWords,
} from "../../../shared/words/possible-culverts.ts";
import {
  answerCandidate,
  type CulvertAnswer,
  changeAnswer,
  takeBack,
} from "../../document/edits/possible-culverts.ts";
import { plan } from "../../document/store.ts";
import { culvertsListed, isPointed } from "../../live/culvert-questions.ts";
import { pointedCheck, unitSystem } from "../../live/screen.ts";
import { waterNow } from "../../live/water-now.ts";

const { title, answers, notCounted, show, again } = CULVERT_QUESTION;

/** Places where there may be a culvert: those to answer, and what was said of others. */
export function PossibleCulverts() {
  const traced = waterNow.value?.possibleCulverts;
  const { possibleCulverts: answered = [] } = plan.value;
  useEffect(() => {
    culvertsListed.value = true;
    return () => {
      culvertsListed.value = false;
    };
  }, []);
  const note = traced ? candidatesNote(traced) : null;
  if (!note && (traced?.found.length ?? 0) + answered.length === 0) return null;
  return (
    <section aria-label={title}>
      {traced && traced.found.length > 0 && (
        <>
          <h4>{title}</h4>
          <p class="hint">{notCounted}</p>
        </>
      )}
      <ul class="plain-list">
        {traced?.found.map((candidate) => (
          <Question key={candidate.ends.join()} candidate={candidate} />
        ))}
        {answered.map((place) => (
          <Answered key={place.id} place={place} />
        ))}
      </ul>
      {note && <p class="hint">{note}</p>}
    </section>
  );
}

function Question({ candidate }: { readonly candidate: CulvertCandidate }) {
  const { ends } = candidate;
  return (
    <li class="pipe">
      <p class="possible-culvert">
        <span class="culvert-sign" aria-hidden="true">
          ?
        </span>
        {candidateWords(candidate, unitSystem.value)}
      </p>
      <div class="tool-row">
        <Answers onAnswer={(answer) => answerCandidate(ends, answer)} />
        <ShowButton at={ends[0]} />
      </div>
    </li>
  );
}

function Answered({ place }: { readonly place: PossibleCulvert }) {
  const { name, answer, path } = place;
  return (
    <li class="pipe">
      <p class="possible-culvert">
        <strong>{name}</strong> {answerWords(place)}
      </p>
      <div class="tool-row">
        {answer === "look" ? (
          <Answers onAnswer={(next) => changeAnswer(place, next)} without="look" />
        ) : (
          <button type="button" class="text-button" onClick={() => takeBack(place)}>
            {again}
          </button>
        )}
        <ShowButton at={path[0]!} />
      </div>
    </li>
  );
}

interface AnswersProps {
  readonly onAnswer: (answer: CulvertAnswer) => void;
  readonly without?: CulvertAnswer;
}

function Answers({ onAnswer, without }: AnswersProps) {
  return answers
    .filter(({ value }) => value !== without)
    .map(({ value, words }) => (
      <button key={value} type="button" class="tool-button" onClick={() => onAnswer(value)}>
        {words}
      </button>
    ));
}

/** Marks the place on the map, and moves the map there where it is out of view. */
function ShowButton({ at }: { readonly at: LonLat }) {
  const isShown = isPointed(at);
  return (
    <button
      type="button"
      class="text-button"
      aria-pressed={isShown}
      onClick={() => {
        pointedCheck.value = isShown ? null : { fromM: 0, toM: 0, at };
      }}
    >
      {show}
    </button>
  );
}
