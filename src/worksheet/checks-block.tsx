import type { SizedLine } from "../../shared/sizing-types.ts";
import { chosenLine, sizingFailure, unitSystem } from "../state.ts";
import { Disclosure } from "../ui/disclosure.tsx";
import { Cautions } from "./cautions.tsx";
import { CheckRow } from "./check-row.tsx";
import { checksSummary, inUnits, sortedChecks } from "./check-words.ts";

/** Will it hold: every finding with what to do, and the cautions that always stand. */
export function ChecksBlock() {
  const line = chosenLine.value;
  return (
    <Disclosure
      id="checks"
      title="Checks"
      startsOpen
      summary={line ? checksSummary(line.checks) : "no line yet"}
      line={line ? firstWords(line) : undefined}
    >
      {sizingFailure.value && (
        <p class="field-why" role="alert">
          {sizingFailure.value.message} {sizingFailure.value.remedy}
        </p>
      )}
      {line && line.checks.length > 0 && (
        <ul class="checks">
          {sortedChecks(line.checks).map((check) => (
            <CheckRow key={`${check.id} ${check.fromM} ${check.message}`} check={check} />
          ))}
        </ul>
      )}
      {line && line.checks.length === 0 && (
        <p class="hint">Nothing found against this line. The cautions below still hold.</p>
      )}
      {!line && <p class="hint">Draw a line and its checks stand here.</p>}
      <Cautions />
    </Disclosure>
  );
}

function firstWords(line: SizedLine): string | undefined {
  const first = sortedChecks(line.checks)[0];
  return first?.severity === "stop" ? inUnits(first.message, unitSystem.value) : undefined;
}
