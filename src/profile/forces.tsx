import "./free-body.css";
import { signal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { useEffect } from "preact/hooks";
import { asFailure } from "../../shared/failure.ts";
import { loadPart } from "../../shared/load-part.ts";
import type { CrossSection } from "../../shared/sizing-types.ts";
import { recall, remember } from "../browser/remember.ts";
import { tell } from "../document/notices.ts";
import type { PlacedLabel } from "../drawing/place-labels.ts";
import type { SectionFrame } from "../drawing/section/section-frame.ts";

const KEY = "drystead.forces";

/** Whether the section shows the forces on it; remembered on this machine. */
const forcesShown = signal(recall(KEY, "no") === "yes");
/** What draws them, fetched when they are first shown. */
const part = signal<typeof import("./free-body.tsx") | null>(null);

function setShown(shown: boolean): void {
  forcesShown.value = shown;
  remember(KEY, shown ? "yes" : "no");
}

async function fetchPart(): Promise<void> {
  try {
    part.value ??= await loadPart("the forces", () => import("./free-body.tsx"));
  } catch (thrown) {
    setShown(false);
    tell("error", asFailure(thrown));
  }
}

/** Shows the forces on the section, or its dimensions. */
export function ForcesToggle() {
  const shown = forcesShown.value;
  useEffect(() => {
    if (shown) void fetchPart();
  }, [shown]);
  return (
    <button
      type="button"
      class="forces-toggle"
      aria-pressed={shown}
      title="Water's thrust, uplift and weight at this station"
      onClick={() => setShown(!shown)}
    >
      Forces
    </button>
  );
}

/** The factors of safety at this station, in words; nothing while forces are not shown. */
export function ForcesWords({ cross }: { readonly cross: CrossSection }) {
  const Factors = part.value?.Factors;
  return forcesShown.value && Factors ? <Factors cross={cross} /> : null;
}

type Over = (frame: SectionFrame, labels: readonly PlacedLabel[]) => ComponentChildren;

/** What is drawn over a section in place of its dimensions; undefined while forces are not shown. */
export function forcesOver(cross: CrossSection): Over | undefined {
  const FreeBody = part.value?.FreeBody;
  if (!forcesShown.value || !FreeBody) return undefined;
  return (frame, labels) => <FreeBody cross={cross} frame={frame} labels={labels} />;
}
