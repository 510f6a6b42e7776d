import type { ComponentChildren } from "preact";
import type { Exported } from "../../shared/exports/exported.ts";
import type { UnitSystem } from "../../shared/units.ts";
import {
  LAYING_SOURCES,
  type LayingStep,
  LEGS_TITLE,
  layingSteps,
  legWords,
  NO_FLOW,
  TRENCH_OVER_M,
} from "../../shared/words/laying.ts";
import { legFlows } from "./leg-flows.ts";
import { stretchesOf } from "./section-groups.ts";
import type { Piece } from "./sheet.tsx";

/**
 * How bags are laid, step by step, each with a drawing; and which way is downstream on each leg.
 * @param scaleWords at which scale the cross-sections above are, in words; empty without any
 */
export function layingPieces(of: Exported, system: UnitSystem, scaleWords: string): Piece[] {
  const { plan, line } = of;
  const trench = stretchesOf(line, (i) => line.walk.greatestHeightM[i]! > TRENCH_OVER_M + 1e-9);
  const steps = layingSteps(plan, trench, system);
  const step = (index: number) => <Step key={index} step={steps[index]!} number={index + 1} />;
  return [
    <div class="laying laying-three">{[0, 1, 2].map(step)}</div>,
    <div class="laying laying-two">{[3, 4].map(step)}</div>,
    <Legs of={of} />,
    <p class="laying-sources">
      {scaleWords} {LAYING_SOURCES}
    </p>,
  ];
}

interface StepProps {
  readonly step: LayingStep;
  readonly number: number;
}

function Step({ step, number }: StepProps) {
  const Drawing = DRAWINGS[step.id];
  return (
    <section aria-label={step.title}>
      <h3>
        <strong>{number}</strong> {step.title}
      </h3>
      <Drawing marks={step.marks} />
      <p>{step.text}</p>
    </section>
  );
}

/** The legs of the line with the way their first course points. */
function Legs({ of: { plan, alternative, line, system } }: { readonly of: Exported }) {
  const legs = legFlows(plan, alternative, line);
  return (
    <p class="laying-legs">
      <strong>{LEGS_TITLE}</strong>{" "}
      {legs.length === 0 ? NO_FLOW : `${legs.map((leg) => legWords(leg, system)).join("; ")}.`}
    </p>
  );
}

interface DrawingProps {
  readonly marks: readonly string[];
}

const DRAWINGS: Readonly<Record<LayingStep["id"], (props: DrawingProps) => ComponentChildren>> = {
  fill: FillDrawing,
  first: FirstDrawing,
  stagger: StaggerDrawing,
  poly: PolyDrawing,
  trench: TrenchDrawing,
};

function FillDrawing({ marks: [closed, open] }: DrawingProps) {
  return (
    <Picture width={225} height={88} shownPx={66}>
      <text x="4" y="14">
        {closed}
      </text>
      <text x="221" y="14" text-anchor="end">
        {open}
      </text>
      <path class="laying-thin" d="M24 19 16 36M176 19V52" />
      <path class="laying-bag" d="M10 78Q4 54 22 42Q34 36 66 36Q112 37 132 54L140 58V78Z" />
      <path class="laying-empty" d="M140 58 206 72Q214 76 206 78H140Z" />
      <path class="laying-ground" d="M2 79H223" />
    </Picture>
  );
}

function FirstDrawing({ marks: [flows] }: DrawingProps) {
  const row = (y: number, shift: number) => (
    <>
      {[3, 2, 1, 0].map((i) => {
        const x = 6 + shift + i * 46;
        return (
          <g key={i}>
            <path class="laying-empty" d={`M${x + 40} ${y + 3}h22v22h-22z`} />
            <path
              class="laying-bag"
              d={`M${x + 8} ${y}h36q6 0 6 6v16q0 6-6 6h-36q-8 0-8-8v-12q0-8 8-8z`}
            />
          </g>
        );
      })}
    </>
  );
  return (
    <Picture width={225} height={88} shownPx={66}>
      <Arrow y={9} to={120} words={flows!} />
      {row(22, 0)}
      {row(54, 12)}
    </Picture>
  );
}

function StaggerDrawing({ marks: [across, along] }: DrawingProps) {
  const bags = (y: number, fromX: number, count: number, width: number, look: string) =>
    bagRow({ y, fromX, count, stepX: width + 1, width, height: 16, look });
  return (
    <Picture width={265} height={88} shownPx={66}>
      {bags(69, 8, 4, 46, "laying-bag")}
      {bags(52, 22, 6, 26, "laying-empty")}
      {bags(35, 33, 3, 46, "laying-bag")}
      {bags(18, 47, 4, 26, "laying-empty")}
      <text x="263" y="14" text-anchor="end">
        {across}
      </text>
      <text x="263" y="31" text-anchor="end">
        {along}
      </text>
      <path class="laying-thin" d="M186 12 154 22M180 29 176 40" />
      <path class="laying-ground" d="M2 86H262" />
    </Picture>
  );
}

function PolyDrawing({ marks: [top, bottom, lap, flows] }: DrawingProps) {
  const edge = (y: number) => bagRow({ y, fromX: 4, count: 17, stepX: 20, width: 18, height: 9 });
  return (
    <Picture width={350} height={100} shownPx={74}>
      <Arrow y={9} to={110} words={flows!} />
      <rect class="laying-poly" x="4" y="29" width="338" height="58" />
      <rect class="laying-empty" x="4" y="29" width="182" height="58" />
      <path class="laying-dashed" d="M130 29V87" />
      <path class="laying-thin" d="M130 75H186M130 72v6M186 72v6" />
      {edge(20)}
      {edge(87)}
      <text x="10" y="45">
        {top}
      </text>
      <text x="192" y="78">
        {lap}
      </text>
      <text x="338" y="45" text-anchor="end">
        {bottom}
      </text>
    </Picture>
  );
}

function TrenchDrawing({ marks: [width, depth, middle] }: DrawingProps) {
  const bags = (y: number, fromX: number, count: number) =>
    bagRow({ y, fromX, count, stepX: 40, width: 39, height: 15 });
  return (
    <Picture width={350} height={100} shownPx={74}>
      <path class="laying-soil" d="M4 49H100V68H178V49H346V98H4Z" />
      <path class="laying-ground" d="M4 49H100V68H178V49H346" />
      {bags(18, 42, 4)}
      {bags(33, 22, 5)}
      <rect class="laying-empty" x="101" y="50" width="37" height="17" rx="7" />
      <rect class="laying-empty" x="140" y="50" width="37" height="17" rx="7" />
      <path
        class="laying-thin"
        d="M100 80H178M100 76v8M178 76v8M190 49V68M186 49h8M186 68h8M170 60 290 34"
      />
      <text x="139" y="95" text-anchor="middle">
        {width}
      </text>
      <text x="200" y="65">
        {depth}
      </text>
      <text x="346" y="30" text-anchor="end">
        {middle}
      </text>
    </Picture>
  );
}

interface BagRow {
  readonly y: number;
  readonly fromX: number;
  readonly count: number;
  readonly stepX: number;
  readonly width: number;
  readonly height: number;
  readonly look?: string;
}

/** Bags beside one another. */
function bagRow({ y, fromX, count, stepX, width, height, look = "laying-bag" }: BagRow) {
  return Array.from({ length: count }, (_, i) => (
    <rect
      key={`${y} ${i}`}
      class={look}
      x={fromX + i * stepX}
      {...{ y, width, height }}
      rx={height > 9 ? 7 : 4}
    />
  ));
}

function Arrow({ y, to, words }: { y: number; to: number; words: string }) {
  return (
    <>
      <path class="laying-arrow" d={`M6 ${y}H${to - 6}`} />
      <path class="laying-head" d={`M${to} ${y}l-12-4.5v9z`} />
      <text x={to + 6} y={y + 4}>
        {words}
      </text>
    </>
  );
}

interface PictureProps {
  readonly width: number;
  readonly height: number;
  /** Height on paper, CSS pixels. */
  readonly shownPx: number;
  readonly children: ComponentChildren;
}

function Picture({ width, height, shownPx, children }: PictureProps) {
  return (
    <svg
      class="laying-picture"
      width={(width * shownPx) / height}
      height={shownPx}
      viewBox={`0 0 ${width} ${height}`}
      aria-hidden="true"
    >
      {children}
    </svg>
  );
}
