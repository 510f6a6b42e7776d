import "./app.css";
import "./ui/ui.css";
import "./ui/fields.css";
import "./ui/layers.css";
import "./ui/touch.css";
import "./stale.css";
import { useEffect, useState } from "preact/hooks";
import { dismiss, notices } from "./document/notices.ts";
import { plan } from "./document/store.ts";
import { openDropped } from "./live/actions.ts";
import { announced } from "./live/announced.ts";
import { buildingsOpen, leaveBuildings, ringListOpen } from "./live/buildings/open.ts";
import { fieldOpen, leaveField } from "./live/field.ts";
import { leaveLesson, lessonOpen } from "./live/lesson.ts";
import { reportOf } from "./live/report.ts";
import { busy, pagesOpen, unitSystem } from "./live/screen.ts";
import { isPictureLost } from "./map/drawable.ts";
import { fieldMap } from "./map/field-map.ts";
import { lentMap } from "./map/lent-map.ts";
import { mapPicture, mapWidthM } from "./map/map-picture.ts";
import { MapRoom } from "./map/map-room.tsx";
import { ProfileEdge, profileShareStyle } from "./profile/profile-edge.tsx";
import { ProfileRoom } from "./profile/profile-room.tsx";
import { SectionRoom } from "./profile/section-room.tsx";
import { ExampleBand } from "./start/example-band.tsx";
import { FirstRun } from "./start/first-run.tsx";
import { NextBuilding } from "./start/next-building.tsx";
import { StepStrip } from "./start/step-strip.tsx";
import { ViewOnly } from "./start/view-only.tsx";
import { BusyBar } from "./ui/busy-bar.tsx";
import { disclosuresAsked } from "./ui/disclosure.tsx";
import { MakeupPopover } from "./ui/makeup-popover.tsx";
import { Notices } from "./ui/notices.tsx";
import { Part } from "./ui/part.tsx";
import { useFocusBack } from "./ui/use-focus-back.ts";
import { MarkQuestion } from "./worksheet/ground/mark-question.tsx";
import { PlanElsewhere } from "./worksheet/ground/plan-elsewhere.tsx";
import { UnitQuestion } from "./worksheet/ground/unit-question.tsx";
import { BuildingWays } from "./worksheet/line/building-ways.tsx";
import { ShapesQuestion } from "./worksheet/line/shapes-question.tsx";
import { runShortcut } from "./worksheet/top-bar/shortcuts.ts";
import { TopBar } from "./worksheet/top-bar/top-bar.tsx";
import { Worksheet } from "./worksheet/worksheet.tsx";

const MAP_FOR_PAGES = {
  map: { isLost: isPictureLost, picture: mapPicture, widthM: mapWidthM },
};
const loadPages = async () => (await import("./pages/pages-room.tsx")).PagesRoom;
const leavePages = () => {
  pagesOpen.value = false;
};

const NOTHING = {};
const MAP_FOR_FIELD = { map: fieldMap };
const loadField = async () => (await import("./field/field-room.tsx")).FieldRoom;
const FOR_BUILDINGS = { map: lentMap, Questions: ShapesQuestion };
const loadBuildings = async () => (await import("./buildings/buildings-room.tsx")).BuildingsRoom;
const loadRingList = async () =>
  (await import("./pages/ring-list/ring-list-room.tsx")).RingListRoom;
const leaveRingList = () => {
  ringListOpen.value = false;
};
const loadLesson = async () => (await import("./lesson/lesson-room.tsx")).LessonRoom;

/** The room under the map on a narrow screen; `none` gives the map all of it. */
type Panel = "worksheet" | "profile" | "section" | "none";

const TABS: readonly { readonly panel: Panel; readonly label: string }[] = [
  { panel: "worksheet", label: "Worksheet" },
  { panel: "profile", label: "Along the line" },
  { panel: "section", label: "Cross-section" },
];

/** The four rooms: alternatives on top, worksheet left, map large, profile and section under it. */
export function App() {
  const [panel, setPanel] = useState<Panel>("worksheet");
  useEffect(() => {
    document.addEventListener("keydown", runShortcut);
    return () => document.removeEventListener("keydown", runShortcut);
  }, []);
  useEffect(takeDrops, []);
  const asked = disclosuresAsked.value;
  useEffect(() => {
    if (asked > 0) setPanel("worksheet");
  }, [asked]);
  const printing = pagesOpen.value;
  const inField = fieldOpen.value;
  const inLesson = lessonOpen.value;
  const inBuildings = buildingsOpen.value;
  const isCovered = printing || inField || inLesson || inBuildings;
  useFocusBack(isCovered);
  return (
    <>
      <div
        class="shell"
        data-panel={panel}
        data-lines={plan.value.alignments.length > 0 ? "some" : "none"}
        inert={isCovered}
        style={profileShareStyle()}
      >
        <a class="skip" href="#worksheet">
          Go to the worksheet
        </a>
        <TopBar />
        <main class="map-place" aria-label="Map">
          <ExampleBand />
          <StepStrip
            toWorksheet={() => setPanel("worksheet")}
            buildings={(onPlace) => <BuildingWays onPlace={onPlace} />}
          />
          <div class="under-band">
            <MapRoom />
            <FirstRun />
            <div class="over-map">
              <BusyBar busy={busy} />
              <ViewOnly />
              <UnitQuestion />
              <MarkQuestion />
              <ShapesQuestion />
              <NextBuilding />
              <PlanElsewhere />
              <Notices
                notices={notices}
                onDismiss={dismiss}
                reportOf={reportOf}
                system={unitSystem.value}
              />
            </div>
          </div>
        </main>
        <ProfileEdge />
        <PanelTabs panel={panel} onPanel={setPanel} />
        <aside class="worksheet-place" id="worksheet" tabIndex={-1} aria-label="Worksheet">
          <Worksheet />
        </aside>
        <section class="profile-place" aria-label="Along the line">
          <ProfileRoom />
        </section>
        <section class="section-place" aria-label="Cross-section">
          <SectionRoom />
        </section>
      </div>
      {printing && (
        <Part
          what="the printed pages"
          load={loadPages}
          props={MAP_FOR_PAGES}
          onLeave={leavePages}
          system={unitSystem.value}
        />
      )}
      {inField && (
        <Part
          what="the field views"
          load={loadField}
          props={MAP_FOR_FIELD}
          onLeave={leaveField}
          system={unitSystem.value}
        />
      )}
      {inLesson && (
        <Part
          what="the lesson"
          load={loadLesson}
          props={NOTHING}
          onLeave={leaveLesson}
          system={unitSystem.value}
        />
      )}
      {inBuildings && (
        <Part
          what="the view of all buildings"
          load={loadBuildings}
          props={FOR_BUILDINGS}
          onLeave={leaveBuildings}
          system={unitSystem.value}
        />
      )}
      {inBuildings && ringListOpen.value && (
        <Part
          what="the printed list of rings"
          load={loadRingList}
          props={NOTHING}
          onLeave={leaveRingList}
          system={unitSystem.value}
        />
      )}
      <MakeupPopover />
      <Announcer />
    </>
  );
}

/** What has changed, for those who do not see it. */
function Announcer() {
  return (
    <p class="unseen announcer" aria-live="polite">
      {announced}
    </p>
  );
}

interface PanelTabsProps {
  readonly panel: Panel;
  readonly onPanel: (panel: Panel) => void;
}

function PanelTabs({ panel, onPanel }: PanelTabsProps) {
  return (
    <nav class="panel-tabs" aria-label="Rooms">
      {TABS.map((tab) => (
        <button
          key={tab.panel}
          type="button"
          aria-pressed={panel === tab.panel}
          onClick={() => onPanel(panel === tab.panel ? "none" : tab.panel)}
        >
          {tab.label}
        </button>
      ))}
    </nav>
  );
}

function takeDrops(): () => void {
  const allow = (event: DragEvent) => event.preventDefault();
  const drop = (event: DragEvent) => {
    event.preventDefault();
    if (event.dataTransfer) void openDropped(event.dataTransfer);
  };
  document.addEventListener("dragover", allow);
  document.addEventListener("drop", drop);
  return () => {
    document.removeEventListener("dragover", allow);
    document.removeEventListener("drop", drop);
  };
}
