import "./line-marks.css";
import { DIAMOND_PX, MARK_RADIUS_PX, type PlacedMark } from "./placed-marks.ts";

/** The marks of a line on its profile: the way in, the weakest places, the order of overtopping. */
export function LineMarksDrawing({ marks }: { readonly marks: readonly PlacedMark[] }) {
  return (
    <g class="line-marks">
      {marks.toReversed().map((mark) => (
        <g
          key={mark.key}
          class={`line-mark line-mark-${mark.kind} line-mark-${mark.tone}`}
          data-mark={mark.kind}
          data-at={mark.chainageM.toFixed(2)}
        >
          <title>{mark.title}</title>
          <Shape mark={mark} />
        </g>
      ))}
    </g>
  );
}

function Shape({ mark }: { readonly mark: PlacedMark }) {
  const { kind, x, y, number, tone } = mark;
  if (kind === "weakest") {
    const grow = tone === "quiet" ? 0 : 1.5;
    const [half, high] = [DIAMOND_PX.half + grow, DIAMOND_PX.high + grow];
    return (
      <path
        class="line-mark-diamond"
        d={`M${x} ${y}l${half} ${high / 2}l${-half} ${high / 2}l${-half} ${-high / 2}z`}
      />
    );
  }
  const { half, high } = DIAMOND_PX;
  if (kind === "survey") {
    return <path class="line-mark-level" d={`M${x} ${y}l${half} ${high}h${-2 * half}z`} />;
  }
  if (kind === "reading") {
    const arm = half - 1;
    return (
      <path
        class="line-mark-read"
        d={`M${x - arm} ${y}l${2 * arm} ${2 * arm}m0 ${-2 * arm}l${-2 * arm} ${2 * arm}`}
      />
    );
  }
  return (
    <>
      <circle
        class="line-mark-back"
        cx={x}
        cy={y}
        r={kind === "over" ? MARK_RADIUS_PX - 0.8 : 7.5}
      />
      {kind === "way-in" && <path d={`M${x} ${y - 4}v7M${x - 3} ${y + 0.5}l3 3 3-3`} />}
      {number !== null && (
        <text x={x} y={y + 3.4} text-anchor="middle">
          {number}
        </text>
      )}
    </>
  );
}
