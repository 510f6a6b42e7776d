import { leaveWords } from "../../shared/words/leave.ts";
import { plan } from "../document/store.ts";
import { unitSystem } from "../live/screen.ts";

/** When people leave, on top of every view; pressed, all that is known of it. */
export function LeaveBand({ onOpen }: { readonly onOpen: () => void }) {
  return (
    <button type="button" class="crew-leave-band" onClick={onOpen}>
      {leaveWords(plan.value, unitSystem.value)}
      <svg class="crew-arrow" width="10" height="16" viewBox="0 0 10 16" aria-hidden="true">
        <path d="M2 2l6 6-6 6" />
      </svg>
    </button>
  );
}
