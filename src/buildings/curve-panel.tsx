import "./curve.css";
import type { CurvePoint } from "../../shared/buildings/choice-types.ts";
import { hasStock } from "../../shared/buildings/stock-settings.ts";
import { formatCount } from "../../shared/units.ts";
import { BUILDINGS } from "../../shared/words/buildings-answer.ts";
import {
  CURVE,
  curveLineWords,
  curveMatchWords,
  curveTopWords,
} from "../../shared/words/buildings-curve.ts";
import { checkingNow, sweepWhole } from "../live/buildings/checking.ts";
import { curveIsCurrent, curveShown } from "../live/buildings/choosing.ts";
import { stock } from "../live/buildings/stock.ts";
import { unitSystem } from "../live/screen.ts";
import { useSize } from "../ui/use-size.ts";
import { curveFrame, stepPath } from "./curve-frame.ts";

/** Buildings ringed against bags, with the bags there are today. */
export function CurvePanel() {
  const curve = hasStock(stock.value) ? curveShown.value : null;
  return (
    <section
      class="county-curve-place"
      aria-label={BUILDINGS.curve}
      data-stale={curve !== null && !curveIsCurrent.value}
    >
      <h2>{BUILDINGS.curve}</h2>
      {curve && curve.all.buildings > 0 ? (
        <>
          <Drawing />
          <p class="county-curve-words">
            <b>{CURVE.line}</b> {curveLineWords(curve)}
          </p>
          <p class="county-curve-words">
            <b>{CURVE.dashed}</b> {curveMatchWords(curve, stock.value.bags, unitSystem.value)}
          </p>
        </>
      ) : (
        <p class="county-curve-none">{curve ? BUILDINGS.curveNone : whyNoCurve()}</p>
      )}
    </section>
  );
}

function whyNoCurve(): string {
  if (checkingNow.value?.phase === "checking" || !sweepWhole.value) return BUILDINGS.curveLater;
  return hasStock(stock.value) ? BUILDINGS.choosing : BUILDINGS.curveNoStock;
}

function Drawing() {
  const [ref, size] = useSize<HTMLDivElement>();
  return (
    <div class="county-curve" ref={ref}>
      {size && size.heightPx > 60 && <Plot {...size} />}
    </div>
  );
}

function Plot({ widthPx, heightPx }: { readonly widthPx: number; readonly heightPx: number }) {
  const curve = curveShown.value;
  if (!curve) return null;
  const { bags } = stock.value;
  const most = Math.max(curve.all.buildings, ...curve.matched.map((each) => each.buildings), 1);
  const end = Math.max(...curve.today.map((each) => each.bags), 1);
  const frame = curveFrame({ widthPx, heightPx, mostBags: end, mostBuildings: most });
  const { x, y, bottom, left, right } = frame;
  const today = bags === null ? null : at(curve.today, bags);
  const dip = dipOf(curve.today);
  const matched = bags === null ? null : at(curve.matched, bags);
  return (
    <svg
      width={widthPx}
      height={heightPx}
      role="img"
      aria-label={`${BUILDINGS.curve}. ${curveLineWords(curve)}`}
    >
      {frame.rows.map((row) => (
        <g key={row}>
          <path class="county-grid" d={`M${left} ${y(row)}H${right}`} />
          <text class="county-tick" x={left - 6} y={y(row) + 4} text-anchor="end">
            {row}
          </text>
        </g>
      ))}
      {frame.columns.map((column) => (
        <text
          key={column}
          class="county-tick"
          x={Math.min(x(column), right + SIDE_PX - 4 * formatCount(column).length)}
          y={bottom + 16}
          text-anchor="middle"
        >
          {formatCount(column)}
        </text>
      ))}
      <text class="county-tick" x={right} y={bottom + 30} text-anchor="end">
        {CURVE.bags}
      </text>
      <path class="county-top" d={`M${left} ${y(curve.all.buildings)}H${right}`} />
      <text class="county-tick" x={left + 4} y={y(curve.all.buildings) - 5}>
        {curveTopWords(curve.all.buildings)}
      </text>
      <path class="county-matched" d={stepPath(curve.matched, frame)} />
      <path class="county-line" d={stepPath(curve.today, frame)} />
      {dip && <Dip x={x(dip.bags)} y={y(dip.buildings)} right={right} bottom={bottom} />}
      {bags !== null && (
        <>
          <path class="county-now" d={`M${x(bags)} ${y(most)}V${bottom}`} />
          {matched !== null && matched !== today && (
            <Spot
              x={x(bags)}
              y={y(matched)}
              isOpen
              words={formatCount(matched)}
              right={right}
              below={y(matched) - y(curve.all.buildings) < TOP_WORDS_PX}
            />
          )}
          {today !== null && (
            <Spot
              x={x(bags)}
              y={y(today)}
              words={CURVE.today(today)}
              right={right}
              below={bottom - y(today) > BELOW_PX}
            />
          )}
        </>
      )}
    </svg>
  );
}

/** Room right of the plot; a figure at its end stays inside. */
const SIDE_PX = 14;

/** Nearer to the foot than this, a number below would be in the figures there. */
const BELOW_PX = 22;

/** Nearer to the line at the top than this, a number would be in its words. */
const TOP_WORDS_PX = 16;

interface SpotProps {
  readonly x: number;
  readonly y: number;
  readonly words: string;
  readonly right: number;
  readonly isOpen?: boolean;
  readonly below?: boolean;
}

/** A point at today's bags, with its number beside it. */
function Spot({ x, y, words, right, isOpen = false, below = false }: SpotProps) {
  const isNearEdge = right - x < 9 * words.length;
  return (
    <>
      <circle class="county-spot" data-open={isOpen} cx={x} cy={y} r="5" />
      <text
        class="county-spot-words"
        x={isNearEdge ? x - 9 : x + 9}
        y={below ? y + 17 : y + 4}
        text-anchor={isNearEdge ? "end" : "start"}
      >
        {words}
      </text>
    </>
  );
}

/** Where more bags ring fewer buildings: one marked First is reached then, and takes those of several others. */
function dipOf(points: readonly CurvePoint[]): CurvePoint | null {
  return (
    points.find(({ buildings, mustDo }, index) => {
      const before = points[index - 1];
      return before !== undefined && buildings < before.buildings && mustDo > before.mustDo;
    }) ?? null
  );
}

interface DipProps {
  readonly x: number;
  readonly y: number;
  readonly right: number;
  readonly bottom: number;
}

function Dip({ x, y, right, bottom }: DipProps) {
  const isNearEdge = right - x < 130;
  const side = isNearEdge ? -1 : 1;
  const at = Math.min(bottom - 6, y + 20);
  return (
    <>
      <path class="county-dip" d={`M${x} ${y + 2}L${x + side * 10} ${at - 5}`} />
      <text class="county-tick" x={x + side * 13} y={at} text-anchor={isNearEdge ? "end" : "start"}>
        {CURVE.dip}
      </text>
    </>
  );
}

/** Buildings at so many bags: those of the last point that is not beyond. */
function at(points: readonly CurvePoint[], bags: number): number | null {
  return points.filter((each) => each.bags <= bags).at(-1)?.buildings ?? null;
}
