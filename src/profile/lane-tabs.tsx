import { chooseLane, LANES, type Lane, lane } from "./lane-choice.ts";

const NAMES: Readonly<Record<Lane, string>> = {
  checks: "Checks",
  work: "Build sequence",
  sideways: "Move sideways",
};

/** Chooses what is shown above the profile; arrow keys go from one to the next. */
export function LaneTabs({ panelId }: { readonly panelId: string }) {
  const step = (event: KeyboardEvent & { readonly currentTarget: HTMLElement }) => {
    const by = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
    if (by === undefined) return;
    const to = (LANES.indexOf(lane.peek()) + by + LANES.length) % LANES.length;
    chooseLane(LANES[to]!);
    event.currentTarget.querySelectorAll("button")[to]?.focus();
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <div class="lane-tabs" role="tablist" aria-label="Above the profile" onKeyDown={step}>
      {LANES.map((each) => (
        <button
          key={each}
          type="button"
          role="tab"
          aria-selected={lane.value === each}
          aria-controls={panelId}
          tabIndex={lane.value === each ? 0 : -1}
          onClick={() => chooseLane(each)}
        >
          {NAMES[each]}
        </button>
      ))}
    </div>
  );
}
