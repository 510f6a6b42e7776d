import { useSignal } from "@preact/signals";
import { useId } from "preact/hooks";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { formatLength, formatStation } from "../../shared/units.ts";
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
import { sizedFor } from "../live/current.ts";
import { markedM, pointedCheck, unitSystem } from "../live/screen.ts";
import { levelAtMomentM, momentH, timeNow } from "../live/time-now.ts";
import { tracedLine } from "../live/water-now.ts";
import { useSize } from "../ui/use-size.ts";
import { headRoom, ProfileHead } from "./profile-head.tsx";
import { keyTarget } from "./profile-keys.ts";
import { ProfileMark } from "./profile-mark.tsx";
import { ProfileSaid } from "./profile-said.tsx";
import { ProfileSlider } from "./profile-slider.tsx";
import { isScheduleOn, toggleSchedule } from "./schedule-wish.ts";
import { SidewaysBars } from "./sideways-bars.tsx";
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
  const time = isScheduleOn.value ? (timeNow.value?.time ?? null) : null;
  const moment = momentNow();
  const underPx = size ? lanesPx(line, { time, hour: null }, size.heightPx) : 0;
  const request = { line, limitM: practice.limitM, unitSystem: system, stretch, underPx };
  const frame = size && profileFrame({ ...request, ...size });
  const marks = lineMarks(line, tracedLine.value, plan.value, system);
  const buttons = { isPart: part.value !== null, hasSchedule: isScheduleOn.value !== null };

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
    reset: showWhole,
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
        isScheduleOn={isScheduleOn.value}
        onSchedule={toggleSchedule}
        onCloser={() => zoomAtMark(ZOOM_STEP)}
        onWider={() => zoomAtMark(1 / ZOOM_STEP)}
        onWhole={showWhole}
      />
      <ProfileSaid
        id={saidId}
        line={line}
        marks={marks}
        time={time}
        moment={moment}
        system={system}
      />
      <ProfileSlider line={line} time={time} describedBy={saidId} onKeyDown={onKeyDown}>
        <div class="profile-plot" ref={ref} data-stale={timeNow.value?.isStale}>
          {frame && (
            <>
              <ProfilePicture
                frame={frame}
                line={line}
                limitM={practice.limitM}
                marks={marks}
                time={time}
                moment={moment}
                waterNote={
                  water.by === "stage" ? `at stage ${formatLength(water.stageM, system)}` : ""
                }
                onPoint={(check) => {
                  pointedCheck.value = check;
                }}
              />
              <SidewaysBars frame={frame} />
              <ProfileMark
                frame={frame}
                isPinned={isPinned.value}
                room={headRoom(frame, buttons)}
                time={time}
              />
              {part.value && <PartBar frame={frame} lengthM={lengthM} />}
            </>
          )}
        </div>
      </ProfileSlider>
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
