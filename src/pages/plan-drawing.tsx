import "./plan-drawing.css";
import { useId, useMemo } from "preact/hooks";
import type { Exported } from "../../shared/exports/exported.ts";
import { leveeShapes } from "../../shared/line-shapes/levee-shapes.ts";
import type { Plan } from "../../shared/plan.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { classLook } from "../drawing/class-bar.tsx";
import { stretch } from "../drawing/line/along.ts";
import { waterSideIn } from "../drawing/line/water-side.ts";
import { BenchmarkMark } from "./plan-benchmark.tsx";
import type { PlanFrame } from "./plan-frame.ts";
import { placeWords } from "./plan-labels.ts";
import { planLabels, stationsOn } from "./plan-marks.ts";
import { matchEnds, toeAt } from "./plan-match.ts";
import { pathOf, pathOfShape } from "./plan-paths.ts";
import { PlanReaches } from "./plan-reaches.tsx";
import { planRoom, SCALE_MM } from "./plan-room.ts";
import { FlowArrow, NorthArrow, ScaleBar } from "./plan-scale-marks.tsx";
import { PlanClosures, PlanPipes, PlanRoads } from "./plan-ways.tsx";
import { WordsDrawing } from "./plan-words-drawing.tsx";
import { PlanWorkPlaces } from "./plan-work-places.tsx";

interface PlanDrawingProps {
  readonly of: Exported;
  readonly frame: PlanFrame;
  /** Pages that the line goes on, if it does: where it comes from and where it goes to. */
  readonly before: number | null;
  readonly after: number | null;
}

const TICK_MM = 1.2;
/** The levee on the ground, to scale: toes, stations with height and courses, buildings with tie corners, sump. */
export function PlanDrawing({ of, frame, before, after }: PlanDrawingProps) {
  const { plan, line } = of;
  const { widthMm, heightMm, toSpot } = frame;
  const id = useId();
  const placed = useMemo(
    () =>
      placeWords(planLabels(of, frame, { before, after }), planRoom(of, frame, { before, after }), {
        ...{ left: 0, top: 0, right: widthMm, bottom: heightMm },
      }),
    [plan, line, of.system, frame, before, after],
  );
  return (
    <svg
      class="plan-drawing"
      width={`${widthMm}mm`}
      height={`${heightMm}mm`}
      viewBox={`0 0 ${widthMm} ${heightMm}`}
      role="img"
      aria-label={`Plan of ${line.name}, ${frame.scale.words}, north up`}
    >
      <clipPath id={`${id}-page`}>
        <rect width={widthMm} height={heightMm} />
      </clipPath>
      <g clip-path={`url(#${id}-page)`}>
        <NoGo plan={plan} frame={frame} id={id} />
        <PlanRoads of={of} frame={frame} />
        {plan.structures.map(({ id: key, outline }) => (
          <path key={key} class="plan-building" d={pathOf(outline, toSpot, true)} />
        ))}
        <Levee plan={plan} line={line} frame={frame} id={id} />
        <Elsewhere of={of} frame={frame} />
        <PlanClosures of={of} frame={frame} />
        <PlanReaches line={line} side={waterSideIn(plan, line.id)} frame={frame} />
        <PlanPipes of={of} frame={frame} />
        <PlanWorkPlaces plan={plan} frame={frame} />
        <Ticks of={of} frame={frame} />
        <TieCorners plan={plan} frame={frame} />
        <Sump line={line} frame={frame} />
        <BenchmarkMark plan={plan} frame={frame} />
        <MatchLine of={of} frame={frame} atM={frame.fromM} page={before} />
        <MatchLine of={of} frame={frame} atM={frame.toM} page={after} />
        {placed.map((each) => (
          <WordsDrawing key={each.label.key} placed={each} />
        ))}
      </g>
      <NorthArrow xMm={5} yMm={8} />
      <FlowArrow flow={plan.flow} toSpot={toSpot} xMm={16} yMm={heightMm - 5} />
      <ScaleBar scale={frame.scale} xMm={widthMm - SCALE_MM.width + 2} yMm={heightMm - 1} />
    </svg>
  );
}

interface PartProps {
  readonly plan: Plan;
  readonly frame: PlanFrame;
  /** Begins the ids of this drawing. */
  readonly id: string;
}

function NoGo({ plan, frame, id }: PartProps) {
  return (
    <>
      <StripePattern id={`${id}-no-go`} everyMm={2.4} stripeMm={0.25} stripe="plan-no-go-line" />
      {plan.noGo.map((area) => (
        <path
          key={area.id}
          class="plan-no-go"
          d={pathOf(area.outline, frame.toSpot, true)}
          fill={`url(#${id}-no-go)`}
        />
      ))}
    </>
  );
}

function Levee({ plan, line, frame, id }: PartProps & { readonly line: SizedLine }) {
  const corners = plan.alignments.find((each) => each.id === line.id)?.corners ?? [];
  const shapes = leveeShapes(line, plan.practice.limitM).features.map(
    ({ properties, geometry }) => ({
      d: pathOfShape(geometry, frame.toSpot),
      kind: String(properties?.kind),
      heightClass: Number(properties?.heightClass),
    }),
  );
  const strips = shapes.filter(({ kind }) => kind === "strip");
  return (
    <>
      <StripePattern id={`${id}-over`} everyMm={1.5} stripeMm={0.85} stripe="hatch-over" />
      {strips.map(({ d }, index) => (
        <path key={index} class="plan-toes" d={d} />
      ))}
      {strips.map(({ d, heightClass }, index) => (
        <path key={index} {...classLook(heightClass, id)} d={d} stroke="none" />
      ))}
      {shapes
        .filter(({ kind }) => kind !== "strip")
        .map(({ d, kind }, index) => (
          <path key={index} class={`plan-${kind}`} d={d} />
        ))}
      <path class="plan-centre" d={pathOf(corners, frame.toSpot, line.kind === "ring")} />
      {corners.map((corner) => {
        const [x, y] = frame.toSpot(corner);
        return <circle key={String(corner)} class="plan-corner" cx={x} cy={y} r="1" />;
      })}
    </>
  );
}

interface StripePatternProps {
  readonly id: string;
  readonly everyMm: number;
  readonly stripeMm: number;
  /** Class of the stripes. */
  readonly stripe: string;
}

function StripePattern({ id, everyMm, stripeMm, stripe }: StripePatternProps) {
  return (
    <pattern
      id={id}
      width={everyMm}
      height={everyMm}
      patternUnits="userSpaceOnUse"
      patternTransform="rotate(45)"
    >
      <rect class="hatch-paper" width={everyMm} height={everyMm} />
      <rect class={stripe} width={stripeMm} height={everyMm} />
    </pattern>
  );
}

interface OnPlanProps {
  readonly of: Exported;
  readonly frame: PlanFrame;
}

function Ticks({ of: { plan, line, system }, frame }: OnPlanProps) {
  const inPlace = { plan, line, frame, system, side: waterSideIn(plan, line.id) };
  const d = stationsOn(inPlace).map(({ chainageM }) => {
    const { point, away } = toeAt(inPlace, chainageM, "water")!;
    const [x, y] = away.map((each) => each * TICK_MM) as [number, number];
    return `M${point[0].toFixed(2)} ${point[1].toFixed(2)}l${x.toFixed(2)} ${y.toFixed(2)}`;
  });
  return <path class="plan-tick" d={d.join("")} />;
}

function TieCorners({ plan, frame }: Omit<PartProps, "id">) {
  return (
    <>
      {plan.structures.flatMap(({ id, outline }) =>
        outline.map((at, i) => {
          const [x, y] = frame.toSpot(at);
          return <circle key={`${id} ${i}`} class="plan-tie" cx={x} cy={y} r="0.7" />;
        }),
      )}
    </>
  );
}

function Sump({ line, frame }: { readonly line: SizedLine; readonly frame: PlanFrame }) {
  if (!line.holding?.inside) return null;
  const [x, y] = frame.toSpot(line.holding.inside.lowestAt);
  return (
    <g class="plan-sump" transform={`translate(${x.toFixed(2)} ${y.toFixed(2)})`}>
      <circle r="1.6" />
      <path d="M-1.1-1.1 1.1 1.1M-1.1 1.1 1.1-1.1" />
    </g>
  );
}

interface MatchLineProps extends OnPlanProps {
  readonly atM: number;
  readonly page: number | null;
}

/** Where the line goes on on another page; nothing where it does not. */
function MatchLine({ of: { plan, line }, frame, atM, page }: MatchLineProps) {
  const ends = page === null ? null : matchEnds({ plan, line, frame }, atM);
  if (!ends) return null;
  return <path class="plan-match" d={`M${ends.map(([x, y]) => `${x} ${y}`).join("L")}`} />;
}

/** What of the line is on other pages, paler than what this one is for. */
function Elsewhere({ of: { line }, frame }: OnPlanProps) {
  const { chainageM, toeLeftM, toeRightM } = line.walk;
  const wideM =
    Math.max(0, ...toeLeftM.filter(Boolean)) + Math.max(0, ...toeRightM.filter(Boolean));
  const parts = [
    [chainageM[0]!, frame.fromM],
    [frame.toM, chainageM.at(-1)!],
  ] as const;
  return (
    <>
      {parts
        .filter(([fromM, toM]) => toM - fromM > 1e-6)
        .map(([fromM, toM]) => (
          <path
            key={fromM}
            class="plan-elsewhere"
            d={pathOf(stretch(line.walk, fromM, toM), frame.toSpot, false)}
            stroke-width={(wideM / frame.scale.mPerMm + 1.5).toFixed(1)}
          />
        ))}
    </>
  );
}
