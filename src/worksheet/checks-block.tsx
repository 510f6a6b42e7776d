import type { Check, Severity, SizedLine } from "../../shared/sizing-types.ts";
import { chosenLine, sizingFailure } from "../state.ts";
import { Disclosure } from "../ui/disclosure.tsx";
import { Cautions } from "./cautions.tsx";
import { CheckRow } from "./check-row.tsx";

const ORDER: Readonly<Record<Severity, number>> = { stop: 0, caution: 1, note: 2 };

/** Checks with the gravest first, along the line within the same gravity. */
export function sortedChecks(checks: readonly Check[]): readonly Check[] {
  return [...checks].sort((a, b) => ORDER[a.severity] - ORDER[b.severity] || a.fromM - b.fromM);
}

/** Will it hold: every finding with what to do, and the cautions that always stand. */
export function ChecksBlock() {
  const line = chosenLine.value;
  return (
    <Disclosure
      id="checks"
      title="Checks"
      startsOpen
      summary={line ? checksSummary(line) : "no line yet"}
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

/** How many findings there are to settle, to heed and to know. */
export function checksSummary(line: SizedLine): string {
  const count = (severity: Severity) =>
    line.checks.filter((check) => check.severity === severity).length;
  const parts = [
    [count("stop"), "to settle"],
    [count("caution"), count("caution") === 1 ? "caution" : "cautions"],
    [count("note"), "to know"],
  ] as const;
  const said = parts.filter(([n]) => n > 0).map(([n, words]) => `${n} ${words}`);
  return said.length > 0 ? said.join(", ") : "nothing found";
}

function firstWords(line: SizedLine): string | undefined {
  const first = sortedChecks(line.checks)[0];
  return first?.severity === "stop" ? first.message : undefined;
}
