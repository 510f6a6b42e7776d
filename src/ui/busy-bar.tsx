import { busy } from "../live/state.ts";

/** What the engine is doing, how far it is, and a way to stop it. */
export function BusyBar() {
  const work = busy.value;
  if (!work) return null;
  return (
    <div class="busy" role="status">
      <label>
        {work.doing} <progress value={work.share} max={1} />
      </label>
      <button type="button" class="text-button" onClick={work.cancel}>
        Cancel
      </button>
    </div>
  );
}
