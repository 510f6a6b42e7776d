import { useId } from "preact/hooks";
import type { Check, SizedLine } from "../../../shared/sizing-types.ts";
import "./profile.css";
import type { LineTime } from "../../../shared/time/types.ts";
import { Hatches } from "../hatches.tsx";
import type { PlacedLabel } from "../place-labels.ts";
import { CheckMarks } from "./check-marks-drawing.tsx";
import { type EndLabel, endLabels } from "./end-labels.ts";
import { LanesDrawing } from "./lanes-drawing.tsx";
import type { LineMark } from "./line-marks.ts";
import { LineMarksDrawing } from "./line-marks-drawing.tsx";
import type { ProfileMoment } from "./moment.ts";
import { nearestSample } from "./picked-samples.ts";
import { placedMarks } from "./placed-marks.ts";
import { Axes, ScreenAxes } from "./profile-axes.tsx";
import type { ProfileFrame } from "./profile-frame.ts";
import { profileLabels } from "./profile-labels.ts";
import { profileLanes } from "./profile-lanes.ts";
import { profilePaths } from "./profile-paths.ts";
import { WaysOpen } from "./ways-open.tsx";

interface ProfilePictureProps {
  readonly frame: ProfileFrame;
  readonly line: SizedLine;
  readonly limitM: number;
  readonly waterNote: string;
  readonly marks: readonly LineMark[];
  /** The work that its lane shows; null for none. */
  readonly time: LineTime | null;
  /** The moment looked at; left out for none. */
  readonly moment?: ProfileMoment | null;
  /** Whether the checks of stretches are marked above the plot. */
  readonly hasChecks?: boolean;
  /** What the water is called at its right end on the screen. */
  readonly waterWords?: string;
  /** Told which check the pointer is on; left out on paper. */
  readonly onPoint?: (check: Check | null) => void;
}

/** A line drawn into a frame: everything but what the pointer moves. */
export function ProfilePicture(props: ProfilePictureProps) {
  const { frame, line, limitM, waterNote, onPoint, time, moment = null } = props;
  const { hasChecks = true, waterWords = "" } = props;
  const isScreen = frame.layout === "screen";
  const id = useId();
  const { plot, widthPx, heightPx } = frame;
  const paths = profilePaths(line, limitM, frame, moment?.riseM);
  const marks = placedMarks(props.marks, line.walk, frame);
  const lanes = profileLanes(line, frame, { time, hour: moment?.hour ?? null });
  const { gaps } = paths;
  const labels = profileLabels({ line, limitM, frame, gaps, waterNote, marks, moment });
  return (
    <svg
      class="profile-picture"
      width={widthPx}
      height={heightPx}
      viewBox={`0 0 ${widthPx} ${heightPx}`}
      aria-hidden="true"
    >
      <Hatches id={id} />
      <clipPath id={`${id}-plot`}>
        <rect
          x={plot.left}
          y={plot.top - 1}
          width={plot.right - plot.left}
          height={plot.bottom - plot.top + 1}
        />
      </clipPath>
      {!isScreen && <Axes frame={frame} />}
      <g clip-path={`url(#${id}-plot)`}>
        {paths.bands.map((d, index) => (
          <path key={index} d={d} {...bandLook(index, id)} />
        ))}
        <path d={paths.unknownBand} fill={`url(#${id}-hole)`} />
        <path class="profile-water" d={paths.waterLine} />
        <path class="profile-moment" d={paths.momentLine} />
        <path class="profile-soil" d={paths.groundFill} />
        <path class="profile-water profile-water-behind" d={paths.waterLine} />
        {paths.gaps.map(({ fromPx, toPx }) => (
          <rect
            key={fromPx}
            class="profile-gap"
            x={fromPx}
            y={plot.top - 1}
            width={Math.max(1.5, toPx - fromPx)}
            height={plot.bottom - plot.top + 1}
            fill={`url(#${id}-hole)`}
          />
        ))}
        <path class="profile-limit" d={paths.limitLine} />
        <path class="profile-ground" d={paths.groundLine} />
        <path class="profile-crest" d={paths.crestLine} />
        <Breaks line={line} frame={frame} />
        <WaysOpen
          closures={line.time?.closures ?? []}
          x={frame.x}
          {...frame.stretch}
          top={plot.top + 30}
          bottom={plot.bottom - (isScreen ? 20 : 0)}
        />
      </g>
      {isScreen ? <ScreenAxes frame={frame} /> : <Corners line={line} frame={frame} />}
      {isScreen && <Ends labels={endLabels(line, frame, waterWords)} frame={frame} />}
      <LanesDrawing lanes={lanes} frame={frame} id={id} />
      {labels.map((label) => (
        <Label key={label.key} label={label} />
      ))}
      <LineMarksDrawing marks={marks} />
      {hasChecks && (
        <CheckMarks line={line} frame={frame} system={frame.unitSystem} onPoint={onPoint} />
      )}
    </svg>
  );
}

function bandLook(index: number, id: string) {
  const isOver = index === 4;
  return isOver
    ? { class: "profile-band profile-over", fill: `url(#${id}-over)` }
    : { class: `profile-band levee-fill-${index + 1}` };
}

interface EndsProps {
  readonly labels: readonly EndLabel[];
  readonly frame: ProfileFrame;
}

function Ends({ labels, frame }: EndsProps) {
  return (
    <>
      {labels.map(({ kind, text, y }) => (
        <text
          key={kind}
          class={`profile-end profile-end-${kind}`}
          x={frame.plot.right + 8}
          y={y + 4.5}
        >
          {text}
        </text>
      ))}
    </>
  );
}

function Breaks({ line, frame }: { readonly line: SizedLine; readonly frame: ProfileFrame }) {
  const { plot } = frame;
  const breaks = line.reaches.slice(1).map(({ fromM }) => frame.x(fromM));
  return (
    <path
      class="profile-break"
      d={breaks.map((x) => `M${x} ${plot.top}V${plot.bottom}`).join("")}
    />
  );
}

function Corners({ line, frame }: { readonly line: SizedLine; readonly frame: ProfileFrame }) {
  const { chainageM, crestM } = line.walk;
  const { fromM, toM } = frame.stretch;
  const corners = line.cornersM.filter((cornerM) => cornerM >= fromM && cornerM <= toM);
  return (
    <g class="profile-corners">
      {corners.map((cornerM) => (
        <circle
          key={cornerM}
          cx={frame.x(cornerM)}
          cy={frame.y(levelAt(chainageM, crestM, cornerM))}
          r={2.4}
        />
      ))}
    </g>
  );
}

function levelAt(chainages: Float64Array, levels: Float64Array, chainageM: number): number {
  return levels[Math.max(0, nearestSample(chainages, chainageM))] ?? Number.NaN;
}

/** Side of its box a label is set against, so that labels at the same end line up. */
const ALIGN: Readonly<Record<string, "start" | "end">> = {
  crest: "start",
  limit: "start",
  water: "end",
  moment: "end",
};

/** Labels that stand on a plate, so that they can be read over the levee. */
const ON_PLATE: ReadonlySet<string> = new Set(["water", "moment", "mark"]);

function Label({ label }: { readonly label: PlacedLabel }) {
  const { left, right, top, bottom } = label.box;
  const [kind, tone] = label.key.split("-") as [string, string | undefined];
  const anchor = ALIGN[kind] ?? "middle";
  const x = { start: left, middle: (left + right) / 2, end: right }[anchor];
  const place = label.turned
    ? { transform: `translate(${right - 3} ${(top + bottom) / 2}) rotate(-90)` }
    : { x, y: bottom - 3 };
  const text = (
    <text
      class={`profile-label profile-label-${kind} profile-label-${kind}-${tone}`}
      text-anchor={anchor}
      {...place}
    >
      {label.text}
    </text>
  );
  if (!ON_PLATE.has(kind) && tone !== "plate") return text;
  return (
    <g>
      <rect
        class="profile-plate"
        x={left - 1}
        y={top}
        width={right - left + 4}
        height={bottom - top}
        rx={2}
      />
      {text}
    </g>
  );
}
