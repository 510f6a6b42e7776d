import { useSignal } from "@preact/signals";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { formatLength, formatStation } from "../../shared/units.ts";
import { plan } from "../document/store.ts";
import { chosenLine, ground, markedM, sizingFailure, unitSystem } from "../state.ts";
import "./profile.css";
import { ProfilePicture } from "./profile-drawing.tsx";
import { type ProfileFrame, profileFrame, scaleNote } from "./profile-frame.ts";
import { ProfileMark } from "./profile-mark.tsx";
import { nextSampleM, nextStationM, readingAt, spokenWords } from "./profile-reading.ts";
import { isPart, panned, type Stretch, showing, withinLine, zoomed } from "./profile-stretch.ts";
import { textWidth } from "./text-width.ts";
import { useProfilePointer } from "./use-profile-pointer.ts";
import { useSize } from "./use-size.ts";

const TITLE = "Along the line";
/** Row of the heading; on narrow screens the mark's label gets a row of its own. */
const ROW_PX = 30;
const NARROW_PX = 560;
const PIN_REACH_PX = 7;
const ZOOM_STEP = 0.6;

/** The chosen alternative drawn along its length, with the marked station that map and section share. */
export function ProfileRoom() {
  const line = chosenLine.value;
  return (
    <div class="room profile-room">
      {line && line.walk.chainageM.length > 1 ? <Profile key={line.id} line={line} /> : <Empty />}
    </div>
  );
}

function Empty() {
  const failure = sizingFailure.value;
  const hasLine = plan.value.alignments.length > 0;
  const advice = !ground.value
    ? "Open the ground first: the line is drawn here over it, from one end to the other."
    : hasLine
      ? "The line is being measured."
      : "Draw a ring round the building, or a line between two high places. It is drawn here along its length: where the ground falls, the levee grows.";
  return (
    <>
      <header class="room-head">
        <h2>{TITLE}</h2>
      </header>
      <p class="room-empty">
        {failure && hasLine ? `${failure.message} ${failure.remedy}` : advice}
      </p>
    </>
  );
}

function Profile({ line }: { readonly line: SizedLine }) {
  const [ref, size] = useSize<HTMLDivElement>();
  const part = useSignal<Stretch | null>(null);
  const isPinned = useSignal(false);
  const lengthM = line.totals.lengthM;
  const stretch = withinLine(part.value, lengthM);
  const { water, practice } = plan.value;
  const system = unitSystem.value;
  const frame = size
    ? profileFrame({ line, limitM: practice.limitM, unitSystem: system, ...size, stretch })
    : null;

  const show = (next: Stretch) => {
    part.value = isPart(next, lengthM) ? next : null;
  };
  const mark = (chainageM: number) => {
    markedM.value = readingAt(line, Math.min(Math.max(0, chainageM), lengthM))?.chainageM ?? null;
  };
  const at = (xPx: number) => frame?.chainageAt(xPx) ?? 0;
  const zoomBy = (factor: number, aboutM: number) => show(zoomed(stretch, lengthM, aboutM, factor));

  useProfilePointer(ref, {
    hover: (xPx) => {
      if (!isPinned.peek() && frame && isOverPlot(frame, xPx)) mark(at(xPx));
    },
    scrub: (xPx) => mark(at(xPx)),
    press: (xPx) => {
      const marked = markedM.peek();
      const isOnPin =
        isPinned.peek() &&
        marked !== null &&
        Math.abs((frame?.x(marked) ?? 0) - xPx) < PIN_REACH_PX;
      isPinned.value = !isOnPin;
      mark(at(xPx));
    },
    pan: (byPx) => {
      if (!frame || !isPart(stretch, lengthM)) return false;
      show(panned(stretch, lengthM, frame.chainageAt(0) - frame.chainageAt(byPx)));
      return true;
    },
    zoom: (aboutPx, factor) => zoomBy(factor, at(aboutPx)),
    reset: () => {
      part.value = null;
    },
  });

  const onKeyDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const here = markedM.peek() ?? line.totals.greatestHeightAtM;
    const next = keyTarget(event, line, here);
    if (next !== null) {
      mark(next);
      isPinned.value = true;
      if (part.peek()) show(showing(stretch, lengthM, next));
    } else if (event.key === "+" || event.key === "=") zoomBy(ZOOM_STEP, here);
    else if (event.key === "-") zoomBy(1 / ZOOM_STEP, here);
    else if (event.key === "0") part.value = null;
    else if (event.key === "Escape" && isPinned.peek()) isPinned.value = false;
    else return;
    event.preventDefault();
    event.stopPropagation();
  };

  const note = frame ? scaleNote(frame.exaggeration) : "";
  const isNarrow = (size?.widthPx ?? NARROW_PX) < NARROW_PX;
  const headPx = (frame?.plot.left ?? 40) + textWidth(TITLE, 14) + textWidth(note, 12) + 24;
  const middleM = (stretch.fromM + stretch.toM) / 2;
  const waterNote = water.by === "stage" ? `at stage ${formatLength(water.stageM, system)}` : "";
  return (
    <>
      <header
        class={isNarrow ? "room-head profile-head-narrow" : "room-head"}
        style={{ paddingLeft: `${frame?.plot.left ?? 40}px` }}
      >
        <h2>{TITLE}</h2>
        <span class="room-note">{note}</span>
        {part.value && (
          <span class="room-note profile-part">
            {formatStation(stretch.fromM, system, 0)} to {formatStation(stretch.toM, system, 0)} of{" "}
            {formatStation(lengthM, system, 0)}
          </span>
        )}
        <span class="profile-zoom">
          {part.value && (
            <>
              <button type="button" onClick={() => (part.value = null)}>
                Whole line
              </button>
              <button
                type="button"
                aria-label="Show more of the line"
                title="Show more of the line (−)"
                onClick={() => zoomBy(1 / ZOOM_STEP, markedInView(stretch) ?? middleM)}
              >
                −
              </button>
            </>
          )}
          <button
            type="button"
            aria-label="Look closer along the line"
            title="Look closer along the line (+, or the wheel)"
            onClick={() => zoomBy(ZOOM_STEP, markedInView(stretch) ?? middleM)}
          >
            +
          </button>
        </span>
      </header>
      <Slider line={line} onKeyDown={onKeyDown}>
        <div class="profile-plot" ref={ref}>
          {frame && (
            <>
              <ProfilePicture
                frame={frame}
                line={line}
                limitM={practice.limitM}
                waterNote={waterNote}
              />
              <ProfileMark
                frame={frame}
                isPinned={isPinned.value}
                labelFromPx={isNarrow ? 12 : headPx}
                rowPx={isNarrow ? 20 : ROW_PX}
              />
              {part.value && <PartBar frame={frame} lengthM={lengthM} />}
            </>
          )}
        </div>
      </Slider>
    </>
  );
}

function isOverPlot({ plot }: ProfileFrame, xPx: number): boolean {
  return xPx >= plot.left - 2 && xPx <= plot.right + 2;
}

function markedInView({ fromM, toM }: Stretch): number | null {
  const marked = markedM.peek();
  return marked !== null && marked >= fromM && marked <= toM ? marked : null;
}

function keyTarget(event: KeyboardEvent, line: SizedLine, hereM: number): number | null {
  const step = event.shiftKey ? nextStationM : nextSampleM;
  switch (event.key) {
    case "ArrowRight":
    case "ArrowUp":
      return step(line, hereM, 1);
    case "ArrowLeft":
    case "ArrowDown":
      return step(line, hereM, -1);
    case "PageUp":
      return nextStationM(line, hereM, 1);
    case "PageDown":
      return nextStationM(line, hereM, -1);
    case "Home":
      return 0;
    case "End":
      return line.totals.lengthM;
    default:
      return null;
  }
}

interface SliderProps {
  readonly line: SizedLine;
  readonly onKeyDown: (event: KeyboardEvent) => void;
  readonly children: preact.ComponentChildren;
}

/** The marked station as a slider for the keyboard and for those who listen. */
function Slider({ line, onKeyDown, children }: SliderProps) {
  const reading = readingAt(line, markedM.value ?? line.totals.greatestHeightAtM);
  return (
    <div
      class="profile-slider"
      role="slider"
      tabIndex={0}
      aria-label="Marked station"
      aria-valuemin={0}
      aria-valuemax={Math.round(line.totals.lengthM * 100) / 100}
      aria-valuenow={Math.round((reading?.chainageM ?? 0) * 100) / 100}
      aria-valuetext={
        reading ? spokenWords(reading, plan.value.section, unitSystem.value) : undefined
      }
      onKeyDown={onKeyDown}
    >
      {children}
    </div>
  );
}

/** Where along the whole line the shown part lies. */
function PartBar({ frame, lengthM }: { readonly frame: ProfileFrame; readonly lengthM: number }) {
  const { plot, stretch } = frame;
  const width = plot.right - plot.left;
  const style = {
    left: `${plot.left}px`,
    top: `${plot.bottom + 21}px`,
    width: `${width}px`,
  };
  const thumb = {
    left: `${(stretch.fromM / lengthM) * 100}%`,
    width: `max(4px, ${((stretch.toM - stretch.fromM) / lengthM) * 100}%)`,
  };
  return (
    <div class="profile-part-bar" style={style}>
      <div style={thumb} />
    </div>
  );
}
