import { sortedChecks } from "../../../shared/words/check-list.ts";
import { Cautions } from "../../drawing/cautions.tsx";
import { ground } from "../../live/ground.ts";
import { chosenLine, sizingFailure, tracingFailure } from "../../live/results.ts";
import { unitSystem } from "../../live/screen.ts";
import { chosenChecks, waterNow } from "../../live/water-now.ts";
import { FailureText } from "../../ui/failure-text.tsx";
import { CheckRow } from "./check-row.tsx";
import { keyedChecks } from "./keyed-checks.ts";

/** The checks of the chosen line, the worst first, and the cautions under them. */
export function ChecksBody() {
  const line = chosenLine.value;
  const checks = chosenChecks.value;
  const isTraced = waterNow.value !== null;
  return (
    <>
      {sizingFailure.value && (
        <p class="field-why" role="alert">
          <FailureText failure={sizingFailure.value} system={unitSystem.value} />
        </p>
      )}
      {line && checks.length > 0 && (
        <ul class="checks">
          {keyedChecks(sortedChecks(checks)).map(({ key, check }) => (
            <CheckRow key={key} check={check} />
          ))}
        </ul>
      )}
      {line && isTraced && checks.length === 0 && (
        <p class="hint">
          No Must fix and no caution found on this line. The cautions below still apply.
        </p>
      )}
      {line && ground.value && !isTraced && <NotTraced />}
      {!line && !sizingFailure.value && <p class="hint">Draw a line to see its checks here.</p>}
      <Cautions />
    </>
  );
}

/** Said while it is not known whether water comes around the line. */
function NotTraced() {
  const failure = tracingFailure.value;
  if (!failure) return <p class="hint">Following the water: its checks come next…</p>;
  return (
    <p class="field-why" role="alert">
      Whether water comes around the line could not be traced.{" "}
      <FailureText failure={failure} system={unitSystem.value} />
    </p>
  );
}
