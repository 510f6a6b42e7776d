import type { FoundChoice } from "../../shared/buildings/choice-types.ts";
import { lateLines } from "../../shared/buildings/crew-list.ts";
import { floodedCount } from "../../shared/buildings/shown-states.ts";
import {
  BUILDINGS,
  canBeRingedWords,
  checkedWords,
  crewsLateWords,
  floodedWords,
  groupsWords,
  leftTimeWords,
  notTimedWords,
  proofWords,
  ringedOf,
  withWords,
} from "../../shared/words/buildings-answer.ts";
import { offWords } from "../../shared/words/buildings-forecasts.ts";
import { failureText } from "../../shared/words/failure.ts";
import {
  checkingNow,
  goOnChecking,
  secondsLeft,
  stopChecking,
  sweepWhole,
} from "../live/buildings/checking.ts";
import { choiceFailure, choiceShown, isChoosing, offRinged } from "../live/buildings/choosing.ts";
import { workersNow } from "../live/buildings/crew.ts";
import { ringList } from "../live/buildings/ring-list.ts";
import { countsNow } from "../live/buildings/shown.ts";
import { stock } from "../live/buildings/stock.ts";
import { closedByWords } from "../live/buildings/times.ts";
import { unitSystem } from "../live/screen.ts";
import { uncounted } from "../live/uncounted.ts";
import { MustDoLeft } from "./must-do-left.tsx";

/** The question and its answer; while buildings are checked how far that is. */
export function Answer() {
  const why = uncounted.value;
  const shown = choiceShown.value;
  const now = checkingNow.value;
  return (
    <section class="county-answer" aria-label={BUILDINGS.question}>
      <h2>{BUILDINGS.question}</h2>
      {why ? (
        <p role="alert">{failureText(why, unitSystem.value)}</p>
      ) : (
        <>
          {shown ? <Chosen /> : now?.phase !== "checking" && <NotChosen />}
          <Progress isFirst={!shown} />
        </>
      )}
    </section>
  );
}

function Chosen() {
  const shown = choiceShown.value;
  if (!shown) return null;
  const counts = countsNow.value;
  const flooded = floodedCount(counts);
  const { bags } = stock.value;
  const people = workersNow.value?.people ?? null;
  const { by, rest } = withWords({ bags, people, by: closedByWords(unitSystem.value) });
  const [first, second] = floodedWords(flooded);
  return (
    <>
      <p class="county-figure">
        <strong>{ringedOf(counts.chosen, flooded)}</strong>
        <span>
          {first}
          <br />
          {second}
        </span>
      </p>
      <p class="county-with">
        can be ringed
        {by !== null && (
          <>
            {" "}
            by <b>{by}</b>
          </>
        )}
        {rest}
      </p>
      {isChoosing.value ? (
        <p class="county-proof" role="status">
          {BUILDINGS.choosing}
        </p>
      ) : (
        <Proof choice={shown.choice} />
      )}
      <MustDoLeft choice={shown.choice} />
    </>
  );
}

/** How good the choice is, what the error of the ground makes of it, and what was not counted. */
function Proof({ choice }: { readonly choice: FoundChoice }) {
  const off = offRinged.value;
  const notTimed = notTimedWords(choice);
  const late = crewsLateWords(lateLines(ringList.value?.crews ?? []).length);
  return (
    <>
      <p class="county-proof">
        {proofWords(choice)} {off && offWords(off, unitSystem.value)}
      </p>
      {notTimed && <p class="county-proof county-proof-doubt">{notTimed}</p>}
      {late && <p class="county-proof county-proof-doubt">{late}</p>}
    </>
  );
}

/** All are checked, and nothing is typed to choose with. */
function NotChosen() {
  const failure = choiceFailure.value;
  if (failure) return <p role="alert">{failureText(failure, unitSystem.value)}</p>;
  if (!sweepWhole.value) return null;
  const counts = countsNow.value;
  return (
    <>
      <p class="county-title">{canBeRingedWords(counts["can-be-ringed"], floodedCount(counts))}</p>
      <p class="county-with">{isChoosing.value ? BUILDINGS.choosing : BUILDINGS.typeStock}</p>
    </>
  );
}

function Progress({ isFirst }: { readonly isFirst: boolean }) {
  const now = checkingNow.value;
  if (!now || now.phase === "done") return null;
  const [figure, rest] = checkedWords(now.sweep.checked.size, now.total);
  const isRunning = now.phase === "checking";
  const areAllChecked = now.sweep.checked.size === now.total;
  return (
    <div class="county-progress" role="status">
      {isFirst && <p class="county-title">{isRunning ? BUILDINGS.checking : BUILDINGS.stopped}</p>}
      {now.failure && <p role="alert">{failureText(now.failure, unitSystem.value)}</p>}
      <p class="county-with">
        <b>{figure}</b> {rest} {isRunning && areAllChecked && groupsWords(now.sweep.groups.length)}{" "}
        {isRunning && leftTimeWords(secondsLeft(now))}
      </p>
      <progress value={now.share} max={1} aria-label={BUILDINGS.checking} />
      <p class="county-progress-foot">
        <span>{BUILDINGS.later}</span>
        <button
          type="button"
          class="county-text-act"
          onClick={isRunning ? stopChecking : goOnChecking}
        >
          {isRunning ? BUILDINGS.stop : BUILDINGS.goOn}
        </button>
      </p>
    </div>
  );
}
