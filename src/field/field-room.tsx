import "./field.css";
import { type Signal, useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { addTexts, failureText } from "../../shared/words/failure.ts";
import type { FieldView } from "../../shared/words/field-views.ts";
import { FIELD_REFUSALS } from "../../shared/words/refusals/field.ts";
import { sizedIsCurrent } from "../live/current.ts";
import { leaveField } from "../live/field.ts";
import { chosenLine, sizingFailure } from "../live/results.ts";
import { unitSystem } from "../live/screen.ts";
import { uncounted } from "../live/uncounted.ts";
import { atStake } from "./at.ts";
import { BuildView } from "./build-view.tsx";
import { BuiltPanel } from "./built-panel.tsx";
import { keepFollowing } from "./gps.ts";
import { LeaveBand } from "./leave-band.tsx";
import { LeaveView } from "./leave-view.tsx";
import { type FieldMap, MapView } from "./map-view.tsx";
import { MarkPanel } from "./mark-panel.tsx";
import { closePanel, panel } from "./panel.ts";
import { Read } from "./read.tsx";
import { ReadCodes } from "./read-codes.tsx";
import { SectionView } from "./section-view.tsx";
import { ShowCodes } from "./show-codes.tsx";
import { Tabs } from "./tabs.tsx";
import { UnlockPanel } from "./unlock-panel.tsx";
import { WatchView } from "./watch-view.tsx";

addTexts(FIELD_REFUSALS);

/** The plan for those who build it: one stake at a time, read only, when people leave always on top. */
export function FieldRoom({ map }: { readonly map: FieldMap }) {
  const view = useSignal<FieldView>("build");
  const room = useRef<HTMLDivElement>(null);
  useEffect(() => {
    room.current?.focus();
    return keepFollowing();
  }, []);
  const shown = `${view.value} ${panel.value}`;
  useEffect(() => keepFocusIn(room.current), [shown]);
  return (
    <div
      class="crew-room"
      ref={room}
      tabIndex={-1}
      role="dialog"
      aria-label="Field views"
      data-counting={!sizedIsCurrent.value}
    >
      <LeaveBand
        onOpen={() => {
          view.value = "leave";
        }}
      />
      <main class="crew-view">
        <View view={view} map={map} />
      </main>
      <Tabs view={view} />
    </div>
  );
}

/** What had the focus may be gone with the view it was in: the keyboard goes on at the top of the new one. */
function keepFocusIn(room: HTMLElement | null): void {
  if (room?.contains(document.activeElement)) return;
  room?.querySelector<HTMLElement>(".crew-read")?.focus();
}

interface ViewProps {
  readonly view: Signal<FieldView>;
  readonly map: FieldMap;
}

function View({ view, map }: ViewProps) {
  const at = atStake.value;
  if (view.value === "leave") return <LeaveView line={chosenLine.value} />;
  if (view.value === "watch") return <WatchView />;
  if (!at) return <NothingYet />;
  if (view.value === "map")
    return <MapView at={at} map={map} onStake={() => goTo(view, "build")} />;
  if (view.value === "section") return <SectionView at={at} />;
  switch (panel.value) {
    case "mark":
      return <MarkPanel key={at.index} at={at} />;
    case "built":
      return <BuiltPanel at={at} />;
    case "show-codes":
      return <ShowCodes at={at} />;
    case "read-codes":
      return <ReadCodes />;
    case "unlock":
      return <UnlockPanel />;
    case null:
      return <BuildView at={at} />;
  }
}

/** Shows a view; what lay over the build view is put away. */
function goTo(view: Signal<FieldView>, next: FieldView): void {
  closePanel();
  view.value = next;
}

function NothingYet() {
  const why = uncounted.value ?? sizingFailure.value;
  return (
    <Read label="Field views" class="crew-page">
      <p role="status">
        {why
          ? failureText(why, unitSystem.value)
          : "No line is sized yet. Open a plan with its elevation data, or draw a line."}
      </p>
      <button type="button" class="crew-key" onClick={leaveField}>
        Planning screen
      </button>
    </Read>
  );
}
