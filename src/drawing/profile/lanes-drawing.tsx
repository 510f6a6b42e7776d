import "./profile-lanes.css";
import type { ProfileFrame } from "./profile-frame.ts";
import type { Lane, LaneCell } from "./profile-lanes.ts";

/** Height of the hatch of a reach over its limit. */
const HATCH_PX = 6;

interface LanesDrawingProps {
  readonly lanes: readonly Lane[];
  readonly frame: ProfileFrame;
  /** Id of the hatches, see {@link Hatches}. */
  readonly id: string;
}

/** The lanes: what each reach is built as, and the order of the work. */
export function LanesDrawing({ lanes, frame, id }: LanesDrawingProps) {
  return (
    <g class="profile-lanes">
      {lanes.map((lane) => (
        <g key={lane.kind} class={`profile-lane profile-lane-${lane.kind}`}>
          <text
            class="profile-lane-label"
            x={frame.plot.left - 7}
            y={lane.topPx + lane.heightPx - 3}
            text-anchor="end"
          >
            {lane.label}
          </text>
          {lane.cells.map((cell) => (
            <Cell key={cell.key} cell={cell} lane={lane} id={id} />
          ))}
        </g>
      ))}
    </g>
  );
}

function Cell({
  cell,
  lane,
  id,
}: {
  readonly cell: LaneCell;
  readonly lane: Lane;
  readonly id: string;
}) {
  const { fromPx, toPx, tone, text, title, doneShare, isOver } = cell;
  const { topPx, heightPx } = lane;
  const width = Math.max(1, toPx - fromPx - 1);
  const done = doneShare ?? 1;
  const box = { x: fromPx + 0.5, y: topPx, height: heightPx };
  return (
    <g class={`lane-cell lane-${tone}`} data-done={doneShare === null ? undefined : done >= 1}>
      <title>{title}</title>
      <rect class="lane-back" {...box} width={width} />
      <rect class="lane-fill" {...box} width={width * done} />
      {isOver && (
        <rect
          {...box}
          y={topPx + heightPx - HATCH_PX}
          height={HATCH_PX}
          width={width}
          fill={`url(#${id}-over)`}
        />
      )}
      {tone === "tight" && (
        <path
          class="lane-tight-line"
          d={`M${fromPx + 1} ${topPx + heightPx - 1.5}h${Math.max(0, width - 1)}`}
        />
      )}
      <rect class="lane-edge" {...box} width={width} />
      {text && (
        <text
          x={(fromPx + toPx) / 2}
          y={topPx + heightPx / 2 + 0.36 * lane.typePx}
          text-anchor="middle"
          font-size={lane.typePx}
        >
          {text}
        </text>
      )}
    </g>
  );
}
