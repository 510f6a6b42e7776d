import type { ReadonlySignal } from "@preact/signals";

/** Work that takes longer than 300 ms. */
export interface Busy {
  readonly doing: string;
  /** 0 to 1. */
  readonly share: number;
  readonly cancel: () => void;
}

/** What the engine is doing, how far it is, and a way to stop it. */
export function BusyBar({ busy }: { readonly busy: ReadonlySignal<Busy | null> }) {
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
