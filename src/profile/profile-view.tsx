import { useSignal } from "@preact/signals";
import { useId } from "preact/hooks";
import type { SizedLine } from "../../shared/sizing-types.ts";
import type { LineTime } from "../../shared/time/types.ts";
import { isOvertopped, workTone } from "../../shared/time/work-tone.ts";
import { formatStation } from "../../shared/units.ts";
import { waterLabel } from "../../shared/words/title.ts";
import { plan } from "../document/store.ts";
import { lineMarks } from "../drawing/profile/line-marks.ts";
import { type ProfileMoment, profileMoment } from "../drawing/profile/moment.ts";
import { ProfilePicture } from "../drawing/profile/profile-drawing.tsx";
import { type ProfileFrame, profileFrame } from "../drawing/profile/profile-frame.ts";
import { lanesPx } from "../drawing/profile/profile-lanes.ts";
import { readingAt } from "../drawing/profile/profile-reading.ts";
import {
  isPart,
  panned,
  type Stretch,
  showing,
  withinLine,
  zoomed,
} from "../drawing/profile/profile-stretch.ts";
import { surveyMarks } from "../drawing/profile/survey-marks.ts";
import { sizedFor } from "../live/current.ts";
import { markedM, pointedCheck, unitSystem } from "../live/screen.ts";
import { shownMarks } from "../live/shown-marks.ts";
import { simulatedLine } from "../live/simulated.ts";
import { levelAtMomentM, momentH, timeNow } from "../live/time-now.ts";
import { tracedLine } from "../live/water-now.ts";
import { useSize } from "../ui/use-size.ts";
import { lane } from "./lane-choice.ts";
import { ProfileHead } from "./profile-head.tsx";
import { keyTarget } from "./profile-keys.ts";
import { ProfileMark } from "./profile-mark.tsx";
import { ProfileSaid } from "./profile-said.tsx";
import { ProfileSlider } from "./profile-slider.tsx";
import { SidewaysBars, SidewaysLegend } from "./sideways-bars.tsx";
import { useProfilePointer } from "./use-profile-pointer.ts";

const PIN_REACH_PX = 7;
const ZOOM_STEP = 0.6;

/** One line drawn along its length, to look at closely and to mark stations on. */
export function ProfileView({ line }: { readonly line: SizedLine }) {
  const [ref, size] = useSize<HTMLDivElement>();
  const part = useSignal<Stretch | null>(null);
  const isPinned = useSignal(false);
  const { lengthM, greatestHeightAtM } = line.totals;
  const { practice } = plan.value;
  const { water } = sizedFor.value?.of?.plan ?? plan.value;
  const system = unitSystem.value;
  const stretch = withinLine(part.value, lengthM);
  const saidId = useId();
  const panelId = useId();
  const planned = timeNow.value?.time ?? null;
  const time = lane.value === "work" ? planned : null;
  const moment = momentNow();
  const underPx = size ? lanesPx(line, { time: null, hour: null }, size.heightPx) : 0;
  const request = { line, limitM: practice.limitM, unitSystem: system, stretch, underPx };
  const frame = size && profileFrame({ ...request, ...size, layout: "screen" });
  const marks = lineMarks(line, tracedLine.value, plan.value, system);
  const surveys = shownMarks.value.has("weakest")
    ? surveyMarks(simulatedLine.value ?? line, system)
    : [];
  const inView = marks.filter(({ kind }) =>
    shownMarks.value.has(kind === "weakest" ? "weakest" : "water"),
  );
  const shown = [...inView, ...surveys];

  const now = () => withinLine(part.peek(), lengthM);
  const show = (next: Stretch) => {
    part.value = isPart(next, lengthM) ? next : null;
  };
  const showWhole = () => {
    part.value = null;
  };
  const mark = (chainageM: number) => {
    markedM.value = readingAt(line, Math.min(Math.max(0, chainageM), lengthM))?.chainageM ?? null;
  };
  const at = (xPx: number) => (frame ? chainageOf(frame, now(), xPx) : 0);
  const zoomBy = (factor: number, aboutM: number) => show(zoomed(now(), lengthM, aboutM, factor));
  const zoomAtMark = (factor: number) => zoomBy(factor, markedIn(now()));

  useProfilePointer(ref, {
    hover: (xPx) => {
      if (!isPinned.peek() && frame && isOverPlot(frame, xPx)) mark(at(xPx));
    },
    scrub: (xPx) => mark(at(xPx)),
    press: (xPx) => {
      const pinPx = isPinned.peek() && frame ? frame.x(markedM.peek() ?? 0) : Infinity;
      isPinned.value = Math.abs(pinPx - xPx) >= PIN_REACH_PX;
      mark(at(xPx));
    },
    pan: (byPx) => {
      if (!part.peek()) return false;
      show(panned(now(), lengthM, at(0) - at(byPx)));
      return true;
    },
    zoom: (aboutPx, factor) => zoomBy(factor, at(aboutPx)),
    reset: (xPx) => (part.peek() ? showWhole() : zoomBy(ZOOM_STEP ** 2, at(xPx))),
  });

  const onKeyDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const here = markedM.peek() ?? greatestHeightAtM;
    const next = keyTarget(event, line, here);
    if (next !== null) {
      mark(next);
      isPinned.value = true;
      if (part.peek()) show(showing(now(), lengthM, next));
    } else if (event.key === "+" || event.key === "=") zoomBy(ZOOM_STEP, here);
    else if (event.key === "-") zoomBy(1 / ZOOM_STEP, here);
    else if (event.key === "0") showWhole();
    else if (event.key === "Escape" && isPinned.peek()) isPinned.value = false;
    else return;
    event.preventDefault();
    event.stopPropagation();
  };

  const [from, to, end] = [stretch.fromM, stretch.toM, lengthM].map((m) =>
    formatStation(m, system, 0),
  );
  return (
    <>
      <ProfileHead
        frame={frame}
        partWords={part.value && `Shown: ${from} to ${to} of ${end}`}
        legend={<LaneLegend frame={frame} time={time} />}
        panelId={panelId}
        onCloser={() => zoomAtMark(ZOOM_STEP)}
        onWider={() => zoomAtMark(1 / ZOOM_STEP)}
        onWhole={showWhole}
      />
      <ProfileSaid
        id={saidId}
        line={line}
        marks={[...marks, ...surveys.filter(({ kind }) => kind === "survey")]}
        time={planned}
        moment={moment}
        system={system}
      />
      <ProfileSlider line={line} time={planned} describedBy={saidId} onKeyDown={onKeyDown}>
        <div class="profile-plot" id={panelId} ref={ref} data-stale={timeNow.value?.isStale}>
          {frame && (
            <>
              <ProfilePicture
                frame={frame}
                line={line}
                limitM={practice.limitM}
                marks={shown}
                time={time}
                moment={moment}
                waterNote=""
                waterWords={waterLabel(water, system)}
                hasChecks={lane.value === "checks"}
                onPoint={(check) => {
                  pointedCheck.value = check;
                }}
              />
              {lane.value === "sideways" && <SidewaysBars frame={frame} />}
              {lane.value === "work" && !hasWork(time) && (
                <p class="lane-empty">Not known yet: give crew and time in the worksheet.</p>
              )}
              <ProfileMark frame={frame} isPinned={isPinned.value} time={time} />
              {part.value && <PartBar frame={frame} lengthM={lengthM} />}
            </>
          )}
        </div>
      </ProfileSlider>
    </>
  );
}

function hasWork(time: LineTime | null): boolean {
  return (time?.stretches.length ?? 0) > 0;
}

interface LaneLegendProps {
  readonly frame: ProfileFrame | null;
  readonly time: LineTime | null;
}

/** What the colors of the lane that is shown mean. */
function LaneLegend({ frame, time }: LaneLegendProps) {
  if (lane.value === "sideways") return <SidewaysLegend frame={frame} />;
  if (lane.value !== "work" || !time) return null;
  const { stretches } = time;
  const isOver = stretches.some(isOvertopped);
  const isBehind = stretches.some((each) => workTone(each) === "behind" && !isOvertopped(each));
  return (
    <>
      {isOver && (
        <>
          <span class="lane-sign lane-sign-over" /> overtopped before done{" "}
        </>
      )}
      {isBehind && (
        <>
          <span class="lane-sign lane-sign-behind" /> under freeboard
        </>
      )}
    </>
  );
}

function momentNow(): ProfileMoment | null {
  const [hour, levelM] = [momentH.value, levelAtMomentM.value];
  if (hour === null || levelM === null) return null;
  const startAt = timeNow.value?.time.startAt ?? null;
  return profileMoment(hour, levelM, startAt, plan.value, unitSystem.value);
}

function chainageOf({ plot }: ProfileFrame, { fromM, toM }: Stretch, xPx: number): number {
  return fromM + ((xPx - plot.left) / (plot.right - plot.left)) * (toM - fromM);
}

function isOverPlot({ plot }: ProfileFrame, xPx: number): boolean {
  return xPx >= plot.left - 2 && xPx <= plot.right + 2;
}

function markedIn({ fromM, toM }: Stretch): number {
  const marked = markedM.peek();
  const isIn = marked !== null && marked >= fromM && marked <= toM;
  return isIn ? marked : (fromM + toM) / 2;
}

/** Where along the whole line the shown part lies. */
function PartBar({ frame, lengthM }: { readonly frame: ProfileFrame; readonly lengthM: number }) {
  const { plot, stretch } = frame;
  const track = {
    left: `${plot.left}px`,
    top: `${plot.bottom - 1}px`,
    width: `${plot.right - plot.left}px`,
  };
  const thumb = {
    left: `${(stretch.fromM / lengthM) * 100}%`,
    width: `max(4px, ${((stretch.toM - stretch.fromM) / lengthM) * 100}%)`,
  };
  return (
    <div class="profile-part-bar" style={track}>
      <div style={thumb} />
    </div>
  );
}
