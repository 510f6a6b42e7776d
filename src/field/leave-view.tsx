import type { SizedLine } from "../../shared/sizing-types.ts";
import { cautionsAt } from "../../shared/words/cautions.ts";
import {
  LEAVE_NOT_SET_ASK,
  leaveInFullWords,
  overtopsSentence,
  WHAT_SETS_LEAVE,
} from "../../shared/words/field-leave.ts";
import { leaveWords } from "../../shared/words/leave.ts";
import { ifItFails } from "../../shared/words/watch.ts";
import { plan } from "../document/store.ts";
import { unitSystem } from "../live/screen.ts";
import { chosenChecks, tracedLine } from "../live/water-now.ts";
import { Read } from "./read.tsx";
import { SourcedList } from "./sourced-list.tsx";

/** When people leave, what sets it, and what may kill, in full. */
export function LeaveView({ line }: { readonly line: SizedLine | null }) {
  const system = unitSystem.value;
  const { leave } = plan.value;
  return (
    <Read label="Leave" class="crew-page">
      <h2 class="crew-title">{leaveWords(plan.value, system)}</h2>
      <p class="crew-said">{leave ? leaveInFullWords(leave, system) : LEAVE_NOT_SET_ASK}</p>
      {leave && leave.note !== "" && <p>{leave.note}</p>}
      <p>{WHAT_SETS_LEAVE}</p>
      {line && <p class="crew-said">{ifItFails(chosenChecks.value, system)}</p>}
      {line && (
        <p>{overtopsSentence(tracedLine.value, line, plan.value, chosenChecks.value, system)}</p>
      )}
      <h3>Cautions</h3>
      <SourcedList items={cautionsAt("leave")} />
    </Read>
  );
}
