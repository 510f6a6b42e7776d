import { cautionsAt, watchSigns } from "../../shared/words/cautions.ts";
import { sortedChecks } from "../../shared/words/check-list.ts";
import { checkWords } from "../../shared/words/checks.ts";
import { PUMP_LOG_WORDS, PUMPS_TITLE, pumpBoxes } from "../../shared/words/watch.ts";
import { chosenLine } from "../live/results.ts";
import { unitSystem } from "../live/screen.ts";
import { chosenChecks } from "../live/water-now.ts";
import { Read } from "./read.tsx";
import { SourcedList } from "./sourced-list.tsx";

/** For those who patrol: how, what to look for and what to do, and what the whole line is known for. */
export function WatchView() {
  const system = unitSystem.value;
  const whole = sortedChecks(chosenChecks.value).filter(
    ({ where, severity, finding }) =>
      where === null && severity !== "note" && finding.kind !== "if-it-fails",
  );
  const holding = chosenLine.value?.holding;
  const pumps = holding ? pumpBoxes(holding, system) : [];
  return (
    <Read label="Watch" class="crew-page">
      <h2 class="crew-title">Watch</h2>
      <SourcedList items={cautionsAt("watch")} />
      <h3>What to look for</h3>
      <dl class="crew-signs">
        {watchSigns(system).map(({ sign, act, source }) => (
          <div key={sign}>
            <dt>{sign}</dt>
            <dd>
              {act} <small>{source}</small>
            </dd>
          </div>
        ))}
      </dl>
      {pumps.length > 0 && (
        <>
          <h3>{PUMPS_TITLE}</h3>
          <dl class="crew-signs">
            {pumps.map(({ title, text }) => (
              <div key={title}>
                <dt>{title}</dt>
                <dd>{text}</dd>
              </div>
            ))}
          </dl>
          <p>{PUMP_LOG_WORDS}</p>
        </>
      )}
      {whole.length > 0 && (
        <>
          <h3>The whole line</h3>
          <ul class="crew-list">
            {whole.map((check) => {
              const { message, remedy } = checkWords(check, system);
              return (
                <li key={message}>
                  {message} {remedy}
                </li>
              );
            })}
          </ul>
        </>
      )}
    </Read>
  );
}
