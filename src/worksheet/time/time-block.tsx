import "./time.css";
import { isLate, timeVerdict } from "../../../shared/time/time-verdict.ts";
import { butMustFix } from "../../../shared/words/must-fix.ts";
import { timeVerdictBrief } from "../../../shared/words/time-verdict.ts";
import { plan } from "../../document/store.ts";
import { chosenLine } from "../../live/results.ts";
import { unitSystem } from "../../live/screen.ts";
import { timeNow } from "../../live/time-now.ts";
import { mustFixOnChosen } from "../../live/water-now.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { RowBody } from "../row-body.tsx";

/** Whether the line is built before the water comes, by whom and in which order. */
export function TimeBlock() {
  return (
    <Disclosure id="time" title="Crew and time" summary={<TimeSummary />}>
      <RowBody of="TimeBody" />
    </Disclosure>
  );
}

function TimeSummary() {
  const time = timeNow.value?.time;
  if (!time) return <>{plan.value.time?.forecast ? "" : "no forecast"}</>;
  const verdict = timeVerdict({ time, levelDoubt: chosenLine.value?.levelDoubt ?? null });
  const words = timeVerdictBrief(verdict, unitSystem.value);
  if (verdict.kind === "in-time") {
    return (
      <>
        {words}
        {butMustFix(mustFixOnChosen.value)}
      </>
    );
  }
  return <span class={isLate(verdict) ? "time-late" : "time-unsure"}>{words}</span>;
}
