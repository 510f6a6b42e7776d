import { letterOfLine } from "../../../shared/line-letter.ts";
import type { Plan } from "../../../shared/plan.ts";
import { hasOtherSections } from "../../../shared/reaches.ts";
import type { LineTime } from "../../../shared/time/types.ts";
import { mostWork, soonerLines } from "../../../shared/time/ways-out.ts";
import { formatCount } from "../../../shared/units.ts";
import { besidePeople, mostWorkWords } from "../../../shared/words/checks/time.ts";
import { butMustFix } from "../../../shared/words/must-fix.ts";
import { timeVerdictWords } from "../../../shared/words/time-verdict.ts";
import { edit } from "../../document/edits/alternatives.ts";
import { withPeople, withPeopleDayAndNight } from "../../document/edits/forecast.ts";
import { plan } from "../../document/store.ts";
import { chooseAlternative } from "../../live/actions.ts";
import { chosenLine, sized } from "../../live/results.ts";
import { unitSystem } from "../../live/screen.ts";
import { mustFixOn } from "../../live/water-now.ts";
import { TimeAmount } from "./time-amount.tsx";

/** What would make a late line possible: people, other alternatives, a smaller ring. */
export function WaysOutList({ time }: { readonly time: LineTime }) {
  const late = chosenLine.value;
  const ways = time.waysOut;
  if (!late || !ways) return null;
  const { people, peopleDayAndNight } = ways;
  const most = mostWork(time, !hasOtherSections(late));
  const others = soonerLines(late, [...sized.value.values()]);
  const isHopeless = people === null && peopleDayAndNight === null && others.length === 0;
  return (
    <div class="time-ways">
      <h3>What would make it possible</h3>
      <ul>
        {others.map(({ line: other, verdict }) => (
          <li key={other.id}>
            <span>
              <strong>{letterOfLine(plan.value, other.id)}</strong> {other.name},{" "}
              {formatCount(other.totals.bags)} bags, {timeVerdictWords(verdict, unitSystem.value)}
              {butMustFix(mustFixOn(other))}
            </span>
            <Do words="Choose it" onDo={() => chooseAlternative(other.id)} />
          </li>
        ))}
        {people !== null && (
          <Way
            time={time}
            count={people}
            words="people instead"
            beside={besidePeople(ways)}
            apply={withPeople}
          />
        )}
        {peopleDayAndNight !== null && peopleDayAndNight < (people ?? Infinity) && (
          <Way
            time={time}
            count={peopleDayAndNight}
            words="people at work at every hour, day and night under lights; as many again for each further shift"
            apply={withPeopleDayAndNight}
          />
        )}
        {most && (
          <li>
            <span>
              A line on higher ground or a smaller ring: at most{" "}
              <TimeAmount make="waysOut" title="Bags at most" time={time}>
                {mostWorkWords(most)}
              </TimeAmount>
            </span>
          </li>
        )}
        {isHopeless && <li>No number of people is enough: start sooner, or prepare to leave.</li>}
      </ul>
      <p class="hint">Do not save time on freeboard.</p>
    </div>
  );
}

interface WayProps {
  readonly time: LineTime;
  readonly count: number;
  readonly words: string;
  /** Other numbers that are to be read beside this one. */
  readonly beside?: string;
  readonly apply: (plan: Plan, people: number) => Plan;
}

function Way({ time, count, words, beside = "", apply }: WayProps) {
  const people = formatCount(count);
  return (
    <li>
      <span>
        <TimeAmount make="waysOut" title="People enough" time={time}>
          {people}
        </TimeAmount>{" "}
        {words}
        {beside}
      </span>
      <Do
        words={`Plan with ${people}`}
        onDo={() =>
          edit({ note: `Plan with ${people} ${words}`, change: (now) => apply(now, count) })
        }
      />
    </li>
  );
}

function Do({ words, onDo }: { readonly words: string; readonly onDo: () => void }) {
  return (
    <button type="button" class="text-button" onClick={onDo}>
      {words}
    </button>
  );
}
