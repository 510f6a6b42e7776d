import { useId } from "preact/hooks";
import type { LessonShape } from "../../shared/lesson/lesson-shape.ts";
import {
  bare,
  baseWords,
  beforeWords,
  depthWords,
  heightWords,
  LESSON,
  limitWords,
  sectionNote,
  sectionTitle,
} from "../../shared/words/lesson.ts";
import { Hatches } from "../drawing/hatches.tsx";
import { SectionBags } from "../drawing/section/section-drawing.tsx";
import type { SectionFrame } from "../drawing/section/section-frame.ts";
import { sectionPaths } from "../drawing/section/section-paths.ts";
import { textWidth } from "../drawing/text-width.ts";
import type { Drawn } from "./shown.ts";
import { useDrawing } from "./use-drawing.ts";

const HATCH_SCALE = 1.6;
const SAME_M = 1e-6;

/** The levee cut across where it is read, bag by bag, with the shape before it dotted; the water side is on the left. */
export function SectionPanel(drawn: Drawn) {
  const [ref, size] = useDrawing(drawn.typePx);
  const { teaching, shape, before, isShown } = drawn;
  const seen = isShown ? shape : (before ?? shape);
  const ghost = isShown ? before : null;
  return (
    <section
      class="lesson-panel lesson-across"
      aria-label={sectionTitle(seen.choice.stationM, teaching.system)}
    >
      <h2>
        {sectionTitle(seen.choice.stationM, teaching.system)}{" "}
        <small>{sectionNote(isShown ? (ghost ? "now-and-before" : "now") : "before")}</small>
      </h2>
      <div class="lesson-drawing" ref={ref}>
        {size && (
          <Picture
            seen={seen}
            ghost={ghost}
            frame={frameFor(drawn, size.widthPx, size.heightPx)}
            drawn={drawn}
          />
        )}
      </div>
    </section>
  );
}

/** Room beside and under the levee for what is written there, in type sizes. */
const MARGIN_EMS = { water: 4, land: 8.6, above: 0.5, below: 2.6 };

/** To scale, the same for the shapes now and before; the scale shrinks only where one would not fit. */
function frameFor(drawn: Drawn, widthPx: number, heightPx: number): SectionFrame {
  const { teaching, shape, before, typePx } = drawn;
  const shapes = before ? [shape, before] : [shape];
  const { room } = teaching;
  const baseM = Math.max(room.baseM, ...shapes.map((each) => each.baseM));
  const highM = Math.max(room.heightM, ...shapes.map((each) => each.heightM));
  const px = (ems: number) => ems * typePx;
  const acrossPx = widthPx - px(MARGIN_EMS.water) - px(MARGIN_EMS.land);
  const upPx = heightPx - px(MARGIN_EMS.above) - px(MARGIN_EMS.below);
  const pxPerM = Math.max(1, Math.min(acrossPx / baseM, upPx / highM));
  const centerPx = px(MARGIN_EMS.water) + acrossPx / 2;
  const footPx = heightPx - px(MARGIN_EMS.below);
  const seen = drawn.isShown ? shape : (before ?? shape);
  const footM = seen.groundM;
  return {
    ...{ widthPx, heightPx, pxPerM, footM },
    x: (offsetM) => centerPx - seen.cross.waterSide * offsetM * pxPerM,
    y: (elevationM) => footPx - (elevationM - footM) * pxPerM,
    bounds: { left: 0, top: 0, right: widthPx, bottom: heightPx },
  };
}

interface PictureProps {
  readonly seen: LessonShape;
  readonly ghost: LessonShape | null;
  readonly frame: SectionFrame;
  readonly drawn: Drawn;
}

function Picture({ seen, ghost, frame, drawn }: PictureProps) {
  const id = useId();
  const { system } = drawn.teaching;
  const { practice, section, heightM } = seen;
  const { widthPx, heightPx, y, footM } = frame;
  const paths = sectionPaths(seen.cross, section, practice.limitM, frame);
  const depthM = seen.choice.riverM - seen.groundM;
  const isBuilt = heightM > 0;
  const { typePx } = drawn;
  const waterY = y(footM + depthM);
  const faceX = frame.x(seen.cross.waterSide * (seen.baseM / 2 - seen.cross.runWater * depthM));
  const toeX = frame.x((seen.cross.waterSide * seen.baseM) / 2);
  const isShallow = y(footM) - waterY < 3 * typePx;
  const face = `M0 ${waterY}H${faceX}L${toeX} ${y(footM)}`;
  return (
    <svg
      class="lesson-picture section-picture"
      width={widthPx}
      height={heightPx}
      aria-hidden="true"
    >
      <Hatches id={id} scale={HATCH_SCALE} />
      {depthM > 0 && <path class="section-water" d={`${face}L0 ${y(footM)}Z`} />}
      <SectionBags id={id} bags={paths.bags} />
      <rect class="section-soil" y={y(footM)} width={widthPx} height={heightPx - y(footM)} />
      {depthM > 0 && <path class="section-water-line" d={`M0 ${waterY}H${faceX}`} />}
      <path class="section-ground" d={`M0 ${y(footM)}H${widthPx}`} />
      {isBuilt && <path class="lesson-outline" d={outline(seen, frame, footM)} />}
      {ghost && ghost.heightM > 0 && (
        <g class="lesson-ghost-body">
          <path d={outline(ghost, frame, footM)} />
          <path d={outline(ghost, frame, footM)} />
        </g>
      )}
      {depthM > 0 && (
        <text
          class="lesson-water-name"
          x={0.95 * typePx}
          y={waterY + (isShallow ? -1.7 : 1.3) * typePx}
        >
          <tspan class="lesson-strong">{LESSON.waterSide}</tspan>
          <tspan x={0.95 * typePx} dy="1.2em">
            {depthWords(depthM, system)}
          </tspan>
        </text>
      )}
      <text
        class="lesson-land-name"
        x={widthPx - 0.95 * typePx}
        y={y(footM) - 0.6 * typePx}
        text-anchor="end"
      >
        {LESSON.landSide}
      </text>
      {isBuilt ? (
        <Dimensions seen={seen} ghost={ghost} frame={frame} drawn={drawn} />
      ) : (
        <text
          class="lesson-nothing"
          x={widthPx / 2}
          y={y(footM) - 2.4 * typePx}
          text-anchor="middle"
        >
          {LESSON.nothing}
        </text>
      )}
    </svg>
  );
}

/** The body of a shape, its foot at an elevation. */
function outline(shape: LessonShape, { x, y }: SectionFrame, footM: number): string {
  const { heightM, baseM, section } = shape;
  const crownM = section.crownM;
  const point = (offsetM: number, upM: number) => `${x(offsetM)} ${y(footM + upM)}`;
  return `M${point(-baseM / 2, 0)}L${point(-crownM / 2, heightM)}L${point(crownM / 2, heightM)}L${point(baseM / 2, 0)}`;
}

function Dimensions({ seen, ghost, frame, drawn }: PictureProps) {
  const { teaching, typePx } = drawn;
  const { system } = teaching;
  const { x, y, footM } = frame;
  const { heightM, baseM, practice, section, isOver } = seen;
  const half = Math.max(baseM, ghost?.baseM ?? 0) / 2;
  const land = (m: number) => x(-seen.cross.waterSide * m);
  const heightX = land(half) + 1.4 * typePx;
  const topY = y(footM + heightM);
  const baseY = y(footM) + 1.25 * typePx;
  const [fromX, toX] = [x(seen.cross.waterSide * (baseM / 2)), land(baseM / 2)];
  const base = baseWords(baseM, system);
  const basePx = textWidth(base, 1.05 * typePx) + typePx;
  const isInside = basePx + 2 * typePx < toX - fromX;
  const middleX = (fromX + toX) / 2;
  const limitY = y(footM + practice.limitM);
  const hasBefore = ghost !== null;
  const heightY = Math.min((topY + y(footM)) / 2, y(footM) - 3.4 * typePx);
  const wordsX = heightX + 0.7 * typePx;
  return (
    <g class="lesson-dimensions">
      <path
        d={`M${land(section.crownM / 2) + 4} ${topY}H${heightX + 5}M${heightX} ${topY}V${y(footM)}`}
      />
      <path d={`M${fromX} ${baseY - 6}v12M${toX} ${baseY - 6}v12`} />
      <path
        d={
          isInside
            ? `M${fromX} ${baseY}H${middleX - basePx / 2}M${middleX + basePx / 2} ${baseY}H${toX}`
            : `M${fromX} ${baseY}H${toX}`
        }
      />
      <text
        class="lesson-base"
        x={isInside ? middleX : fromX - 0.5 * typePx}
        y={baseY}
        text-anchor={isInside ? "middle" : "end"}
        dominant-baseline="central"
      >
        {base}
      </text>
      {hasBefore && Math.abs(ghost.baseM - baseM) > SAME_M && (
        <text
          class="lesson-was lesson-was-in-soil"
          x={toX + 0.5 * typePx}
          y={baseY}
          dominant-baseline="central"
        >
          {beforeWords(bare(ghost.baseM, system))}
        </text>
      )}
      <text class="lesson-tall" x={wordsX} y={heightY} dominant-baseline="central">
        {heightWords(heightM, system)}
      </text>
      {hasBefore && Math.abs(ghost.heightM - heightM) > SAME_M && (
        <text class="lesson-was" x={wordsX} y={heightY + 1.35 * typePx} dominant-baseline="central">
          {beforeWords(bare(ghost.heightM, system))}
        </text>
      )}
      {isOver && (
        <>
          <path class="profile-limit" d={`M${land(section.crownM / 2)} ${limitY}H${heightX}`} />
          <text
            class="lesson-limit-name lesson-on-curve"
            x={heightX - 0.5 * typePx}
            y={limitY + 0.9 * typePx}
            text-anchor="end"
            dominant-baseline="central"
          >
            {limitWords(practice.limitM, system)}
          </text>
        </>
      )}
    </g>
  );
}
