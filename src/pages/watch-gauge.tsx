import type { Plan } from "../../shared/plan.ts";
import { lengthFrom, lengthIn, type UnitSystem } from "../../shared/units.ts";
import type { StageEvent } from "../../shared/watch/stage-events.ts";
import { shownLevelM } from "../../shared/words/time.ts";
import { eventWords } from "../../shared/words/watch.ts";

interface WatchGaugeProps {
  readonly plan: Plan;
  /** The highest first. */
  readonly events: readonly StageEvent[];
  /** Level at which people leave, at the gauge as the plan gives water, metres; null while nobody has set it. */
  readonly leaveM: number | null;
  readonly system: UnitSystem;
  /** Height of the drawing, millimetres. */
  readonly highMm: number;
}

/** Size of the drawing, millimetres. */
const WIDE = 70;
/** Least height of the drawing, and how much less the foot of the staff has. */
export const LEAST_GAUGE_MM = 76;
const FOOT_MM = 2;
const STAFF = { leftMm: 9, wideMm: 5.4, topMm: 2 };
/** Least distance between two labels. */
const APART_MM = 11.4;
const LABEL_MM = 20;
/** Levels shown above the highest and below the lowest event, feet or meters. */
const MARGIN = { us: 0.4, metric: 0.12 };

interface Entry {
  readonly levelM: number;
  readonly level: string;
  readonly title: string;
  readonly note: string;
  readonly isLeave: boolean;
}

/** The staff of the gauge with what happens at which level, and the level to leave at among it. */
export function WatchGauge({ plan, events, leaveM, system, highMm }: WatchGaugeProps) {
  const footMm = highMm - FOOT_MM;
  const entries = entriesOf({ plan, events, leaveM, system });
  const shown = entries.filter(({ levelM }) => !Number.isNaN(levelM));
  const values = shown.map(({ levelM }) => lengthIn(levelM, system));
  const [low, high] = [Math.min(...values), Math.max(...values)].map((value, i) =>
    i === 0 ? value - MARGIN[system] : value + MARGIN[system],
  ) as [number, number];
  const yOf = (levelM: number) =>
    footMm - ((lengthIn(levelM, system) - low) / (high - low)) * (footMm - STAFF.topMm);
  const labels = placed(entries, yOf, footMm);
  return (
    <svg
      class="watch-gauge"
      width={`${WIDE}mm`}
      height={`${highMm}mm`}
      viewBox={`0 0 ${WIDE} ${highMm}`}
      role="img"
      aria-label="What happens at which level of the river"
    >
      <rect
        class="watch-staff"
        x={STAFF.leftMm}
        y={STAFF.topMm}
        width={STAFF.wideMm}
        height={footMm - STAFF.topMm}
      />
      {ticks(low, high, system).map(({ value, label }) => {
        const y = yOf(lengthFrom(value, system));
        return (
          <g key={value}>
            <path
              class="watch-staff"
              d={`M${STAFF.leftMm} ${y}h${label ? STAFF.wideMm : STAFF.wideMm / 2}`}
            />
            {label && (
              <text class="watch-tick" x={STAFF.leftMm - 1.2} y={y + 1.3} text-anchor="end">
                {label}
              </text>
            )}
          </g>
        );
      })}
      {labels.map(({ entry, y }) => (
        <Label key={entry.title} entry={entry} y={y} from={yOf(entry.levelM)} />
      ))}
    </svg>
  );
}

function entriesOf({ plan, events, leaveM, system }: Omit<WatchGaugeProps, "highMm">): Entry[] {
  const happens = events.map((event): Entry => {
    const levelM = shownLevelM(plan, event.gaugeM);
    return { ...eventWords(plan, event, system), levelM, isLeave: false };
  });
  const level = leaveM === null ? "" : lengthIn(leaveM, system).toFixed(system === "us" ? 1 : 2);
  const leave: Entry = {
    ...{ levelM: leaveM ?? Number.NaN, level, title: "LEAVE at", note: "", isLeave: true },
  };
  if (leaveM !== null) return [...happens, leave].sort((a, b) => b.levelM - a.levelM);
  const before = happens.findIndex(({ levelM }) => levelM < (happens[0]?.levelM ?? 0) - 0.3);
  const at = before < 0 ? happens.length : before;
  return [...happens.slice(0, at), leave, ...happens.slice(at)];
}

/** Labels beside their levels, moved apart. */
function placed(entries: readonly Entry[], yOf: (levelM: number) => number, footMm: number) {
  let last = Number.NEGATIVE_INFINITY;
  const down = entries.map((entry) => {
    const wanted = Number.isNaN(entry.levelM) ? last + APART_MM : yOf(entry.levelM);
    last = Math.max(wanted, last + APART_MM, STAFF.topMm + 3);
    return { entry, y: last };
  });
  let next = footMm + APART_MM - 8;
  return down
    .reverse()
    .map(({ entry, y }) => {
      next = Math.min(y, next - APART_MM);
      return { entry, y: next };
    })
    .reverse();
}

function Label({ entry, y, from }: { readonly entry: Entry; readonly y: number; from: number }) {
  const right = STAFF.leftMm + STAFF.wideMm;
  const leader = Number.isNaN(from) ? null : (
    <path class="watch-leader" d={`M${right} ${from}h1.5L${LABEL_MM - 2.5} ${y - 1}h1.5`} />
  );
  if (entry.isLeave) {
    return (
      <g>
        {leader}
        <rect class="watch-leave-mark" x={LABEL_MM - 1} y={y - 4.3} width="42" height="8" />
        <text class="watch-leave-text" x={LABEL_MM + 1} y={y + 1.4}>
          {entry.title} {entry.level}
        </text>
        {entry.level === "" && <path class="watch-leader" d={`M${LABEL_MM + 21} ${y + 1.2}h17`} />}
      </g>
    );
  }
  return (
    <g>
      {leader}
      <text class="watch-level" x={LABEL_MM} y={y + 0.8}>
        {entry.level}
        <tspan class="watch-title" dx="1.4">
          {entry.title}
        </tspan>
      </text>
      <text class="watch-note" x={LABEL_MM} y={y + 5}>
        {entry.note}
      </text>
    </g>
  );
}

/** Whole feet with tenths, or half meters with twentieths. */
function ticks(low: number, high: number, system: UnitSystem) {
  const per = system === "us" ? 5 : 10;
  const found: { readonly value: number; readonly label: string | null }[] = [];
  for (let k = Math.ceil(low * per); k <= high * per; k++) {
    const isLabeled = system === "us" ? k % per === 0 : k % 5 === 0;
    found.push({ value: k / per, label: isLabeled ? String(k / per) : null });
  }
  return found;
}
