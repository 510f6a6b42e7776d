import { useId } from "preact/hooks";
import type { StakedStretch } from "../../shared/field/stakes.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { formatStation, lengthFrom, type UnitSystem } from "../../shared/units.ts";
import { Hatches } from "../drawing/hatches.tsx";
import { profilePaths } from "../drawing/profile/profile-paths.ts";
import { wholeLine } from "../drawing/profile/profile-stretch.ts";
import { textWidth } from "../drawing/text-width.ts";
import { useSize } from "../ui/use-size.ts";

const TYPE_PX = 14;
const MARK_PX = 7;
const DONE_PX = 7;
const FOOT_PX = 24;
const ABOVE_PX = 4;
/** Between the labels of two stations, pixels. */
const LABEL_GAP_PX = 14;

interface ProfileStripProps {
  readonly line: SizedLine;
  readonly atM: number;
  readonly limitM: number;
  readonly system: UnitSystem;
  /** Stretches that are up to height. */
  readonly done: readonly StakedStretch[];
}

/** Round distances between labelled stations, feet or metres. */
const STEPS = [50, 100, 200, 500, 1000, 2000, 5000, 10_000];

/** The whole line along its length, with the stake one is at; for finding one's way, not for reading off. */
export function ProfileStrip(props: ProfileStripProps) {
  const [ref, size] = useSize<HTMLDivElement>();
  return (
    <div class="crew-strip" ref={ref} aria-hidden="true">
      {size && <Strip {...props} {...size} />}
    </div>
  );
}

interface StripProps extends ProfileStripProps {
  readonly widthPx: number;
  readonly heightPx: number;
}

function Strip({ line, atM, limitM, system, done, widthPx, heightPx }: StripProps) {
  const id = useId();
  const frame = stripFrame(line, widthPx, heightPx);
  const paths = profilePaths(line, limitM, frame);
  const { bottom } = frame.plot;
  const x = frame.x(atM);
  return (
    <svg
      width={widthPx}
      height={heightPx}
      viewBox={`0 0 ${widthPx} ${heightPx}`}
      aria-hidden="true"
    >
      <Hatches id={id} />
      {paths.bands.map((d, index) => (
        <path
          key={index}
          d={d}
          {...(index === 4
            ? { class: "profile-over", fill: `url(#${id}-over)` }
            : { class: `levee-fill-${index + 1}` })}
        />
      ))}
      <path d={paths.unknownBand} fill={`url(#${id}-hole)`} />
      <path class="profile-soil" d={paths.groundFill} />
      {paths.gaps.map(({ fromPx, toPx }) => (
        <rect
          key={fromPx}
          x={fromPx}
          y={0}
          width={Math.max(1.5, toPx - fromPx)}
          height={bottom}
          fill={`url(#${id}-hole)`}
        />
      ))}
      <path class="profile-ground" d={paths.groundLine} />
      <path class="profile-crest" d={paths.crestLine} />
      {done.map(({ fromM, toM }) => (
        <rect
          key={fromM}
          class="crew-strip-done"
          x={frame.x(fromM)}
          y={bottom - DONE_PX}
          width={frame.x(toM) - frame.x(fromM)}
          height={DONE_PX}
        />
      ))}
      <path class="crew-strip-at" d={`M${x} 0V${bottom}`} />
      <path
        class="crew-strip-foot"
        d={`M${x - MARK_PX} ${bottom + MARK_PX + 1}h${2 * MARK_PX}l${-MARK_PX} ${-MARK_PX}z`}
      />
      {labels(line, frame, x, system).map(({ text, px }) => (
        <text key={text} x={px} y={heightPx - 4} text-anchor="middle">
          {text}
        </text>
      ))}
    </svg>
  );
}

type StripFrame = Parameters<typeof profilePaths>[2];

function stripFrame(line: SizedLine, widthPx: number, heightPx: number): StripFrame {
  const { walk, totals } = line;
  const bottom = Math.max(20, heightPx - FOOT_PX);
  const levels = [...walk.crestM, ...walk.lowestGroundM, ...walk.groundM].filter(Number.isFinite);
  const lowM = Math.min(...levels);
  const highM = Math.max(...walk.crestM);
  const perM = (bottom - ABOVE_PX - 6) / Math.max(0.1, highM - lowM);
  return {
    plot: { left: 0, right: widthPx, top: 0, bottom },
    stretch: wholeLine(totals.lengthM),
    x: (chainageM) => (chainageM / totals.lengthM) * widthPx,
    y: (elevationM) => Math.max(0, ABOVE_PX + (highM - elevationM) * perM),
  };
}

/** Round stations, clear of each other and of the mark. */
function labels(line: SizedLine, frame: StripFrame, markPx: number, system: UnitSystem) {
  const { lengthM } = line.totals;
  const { right } = frame.plot;
  const text = (chainageM: number) => formatStation(chainageM, system, 0);
  const halfPx = textWidth(text(lengthM), TYPE_PX) / 2;
  const leastM = ((2 * halfPx + LABEL_GAP_PX) / right) * lengthM;
  const stepM = STEPS.map((step) => lengthFrom(step, system)).find((each) => each >= leastM);
  if (stepM === undefined) return [];
  const found: { readonly text: string; readonly px: number }[] = [];
  for (let chainageM = 0; chainageM <= lengthM; chainageM += stepM) {
    const px = Math.min(right - halfPx, Math.max(halfPx, frame.x(chainageM)));
    if (Math.abs(px - markPx) < halfPx + MARK_PX + 2) continue;
    found.push({ text: text(chainageM), px });
  }
  return found;
}
