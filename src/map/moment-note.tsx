import "./moment-note.css";
import { hourWords } from "../../shared/words/clock.ts";
import { namedLevel } from "../../shared/words/time.ts";
import { plan } from "../document/store.ts";
import { unitSystem } from "../live/screen.ts";
import { leaveMoment, levelAtMomentM, momentH, standsAtMoment, timeNow } from "../live/time-now.ts";

/** On the map: that its water is that of a moment, and the way back; nothing when it is the plan's. */
export function MomentNote() {
  const levelM = levelAtMomentM.value;
  const startAt = timeNow.value?.time.startAt;
  if (levelM === null || momentH.value === null || startAt === undefined) return null;
  const when = hourWords(startAt, momentH.value, unitSystem.value, { long: true, toMin: 1 });
  return (
    <div class="moment-note">
      <p>
        <strong>{when}</strong>, {namedLevel(plan.value, levelM, unitSystem.value)}
        {!standsAtMoment.value && ", without the line: by then it is lower than the water"}
      </p>
      <button type="button" class="text-button" onClick={leaveMoment}>
        Back to the forecast crest
      </button>
    </div>
  );
}
