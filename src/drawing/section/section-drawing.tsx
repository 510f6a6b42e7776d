import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";
import type { Section } from "../../../shared/plan.ts";
import type { CrossSection } from "../../../shared/sizing-types.ts";
import type { UnitSystem } from "../../../shared/units.ts";
import { classLook } from "../class-bar.tsx";
import "./section.css";
import { Hatches } from "../hatches.tsx";
import type { PlacedLabel } from "../place-labels.ts";
import {
  FOR_FORCES,
  type SectionFrame,
  type SectionRoomNeeded,
  sectionFrame,
} from "./section-frame.ts";
import { type SectionDimensions, sectionDimensions, sectionLabels } from "./section-labels.ts";
import { type LaidBeside, laidBeside } from "./section-laid.ts";
import { type SectionPaths, sectionPaths } from "./section-paths.ts";
import { Textures } from "./textures.tsx";

interface SectionDrawingProps {
  readonly cross: CrossSection;
  /** How the levee is built: bag and sheet. */
  readonly section: Section;
  /** The plan's limit, whose quarters are the height classes. */
  readonly limitM: number;
  readonly unitSystem: UnitSystem;
  readonly widthPx: number;
  readonly heightPx: number;
  /** Size to leave room for, so that the sections of a line share a scale; the section's own by default. */
  readonly needed?: SectionRoomNeeded;
  /** Writes the widths from the center line to both toes too, for those who stake them. */
  readonly halfWidths?: boolean;
  /** What its greatest height is called where that is rounded otherwise, e.g. up for those who build it. */
  readonly height?: string;
  /** Draws the anchor bags of the poly sheeting and the bond trench too, for those who lay them. */
  readonly beside?: boolean;
  /** What is drawn over everything else in place of the dimensions, in the pixels of the frame, clear of the labels. */
  readonly over?:
    | ((frame: SectionFrame, labels: readonly PlacedLabel[]) => ComponentChildren)
    | undefined;
}

const NOTHING_ELSE: SectionRoomNeeded = { baseM: 0, heightM: 0 };

/** The levee cut across, to scale, with what it is made of; the water side is on the left. */
export function SectionDrawing(props: SectionDrawingProps) {
  const { cross, section, limitM, unitSystem, widthPx, heightPx } = props;
  const { needed = NOTHING_ELSE, over, halfWidths = false, beside = false } = props;
  const id = useId();
  if (!(widthPx > 0 && heightPx > 0)) return null;
  const frame = sectionFrame(cross, section, widthPx, heightPx, needed, over && FOR_FORCES);
  const paths = sectionPaths(cross, section, limitM, frame);
  const dimensions = over ? null : sectionDimensions(cross, frame);
  const labels = sectionLabels(cross, frame, dimensions, unitSystem, halfWidths, props.height);
  return (
    <svg
      class="section-picture"
      width={widthPx}
      height={heightPx}
      viewBox={`0 0 ${widthPx} ${heightPx}`}
      aria-hidden="true"
    >
      <Hatches id={id} />
      <Textures id={id} />
      <path class="section-water" d={paths.water} />
      <path class="section-earlier" d={paths.earlier} />
      <Fills id={id} fills={paths.fills} />
      <SectionBags id={id} bags={paths.bags} />
      <path class="section-soil" d={paths.soil} />
      {paths.gaps.map(([left, right]) => (
        <rect
          key={left}
          x={left}
          y={frame.y(frame.footM) - 14}
          width={right - left}
          height={heightPx}
          fill={`url(#${id}-hole)`}
        />
      ))}
      <path class="section-lumber" d={paths.lumber} />
      <path class="section-plywood" d={paths.plywood} />
      <path class="section-ground" d={paths.groundLine} />
      <path class="section-water-line" d={paths.waterLine} />
      <path class="section-sheet" d={paths.sheet} />
      {beside && <Beside of={laidBeside(cross, section, frame)} />}
      {dimensions && <Dimensions of={dimensions} />}
      {labels.map(({ key, text, box }) => (
        <text
          key={key}
          class={`section-label section-label-${key.split("-")[0]}`}
          x={(box.left + box.right) / 2}
          y={box.bottom - 3}
          text-anchor="middle"
        >
          {text}
        </text>
      ))}
      <Verdict cross={cross} frame={frame} />
      {over?.(frame, labels)}
    </svg>
  );
}

function Beside({ of: { anchors, trench } }: { readonly of: LaidBeside }) {
  return (
    <>
      {[...trench, ...anchors].map(({ x, y, widthPx, heightPx, tiltDeg }) => (
        <rect
          key={`${x} ${y}`}
          class="section-beside"
          x={-widthPx / 2}
          y={-heightPx / 2}
          width={widthPx}
          height={heightPx}
          rx={heightPx / 2.4}
          transform={`translate(${x.toFixed(1)} ${y.toFixed(1)}) rotate(${tiltDeg.toFixed(1)})`}
        />
      ))}
    </>
  );
}

interface SectionBagsProps {
  /** Of the {@link Hatches} in the drawing. */
  readonly id: string;
  readonly bags: SectionPaths["bags"];
}

/** The bags in the colors of their height, hatched over the limit. */
export function SectionBags({ id, bags }: SectionBagsProps) {
  return (
    <>
      {bags.map(({ level, plain, shaded }) =>
        level === 4 ? (
          <g key={level} class="section-bag section-bag-over">
            <path d={plain + shaded} fill={`url(#${id}-over)`} />
          </g>
        ) : (
          <g key={level} class={`section-bag section-bag-${level + 1}`}>
            <path d={plain} />
            <path class="section-bag-shaded" d={shaded} />
          </g>
        ),
      )}
    </>
  );
}

interface FillsProps {
  /** Of the {@link Hatches} and {@link Textures} in the drawing. */
  readonly id: string;
  readonly fills: SectionPaths["fills"];
}

/** Loose fill in the colours of its height, under the texture of what it is. */
function Fills({ id, fills }: FillsProps) {
  return (
    <>
      {fills.map(({ material, whole, bands }) => (
        <g key={whole}>
          {bands.map(({ level, d }) => (
            <path key={level} d={d} {...classLook(level, id)} />
          ))}
          <path class="section-fill" d={whole} fill={`url(#${id}-${material})`} />
        </g>
      ))}
    </>
  );
}

function Dimensions({ of }: { readonly of: SectionDimensions }) {
  const { heightX, crestY, footY, baseY, waterToeX, landToeX, centreX, limitY, limitFromX } = of;
  return (
    <g class="section-dimensions">
      <path class="section-thin" d={`M${centreX + 4} ${crestY}H${heightX + 4}`} />
      <path
        class="section-thin"
        d={`M${centreX} ${crestY - 5}V${baseY + 4}`}
        stroke-dasharray="6 2 1 2"
      />
      <path
        d={`M${heightX - 4} ${crestY}h8M${heightX} ${crestY}V${footY}M${heightX - 4} ${footY}h8`}
      />
      <path
        d={`M${waterToeX} ${baseY - 4}v8M${waterToeX} ${baseY}H${landToeX}M${landToeX} ${baseY - 4}v8M${centreX} ${baseY - 3}v6`}
      />
      {limitY !== null && (
        <path class="section-limit" d={`M${limitFromX} ${limitY}H${heightX + 4}`} />
      )}
    </g>
  );
}

/** Says why no levee is drawn, when none is. */
function Verdict({ cross, frame }: { readonly cross: CrossSection; readonly frame: SectionFrame }) {
  const words = verdict(cross);
  return (
    <>
      {words.map((line, index) => (
        <text
          key={line}
          class="section-verdict"
          x={frame.widthPx / 2}
          y={18 + index * 16}
          text-anchor="middle"
        >
          {line}
        </text>
      ))}
    </>
  );
}

function verdict({ greatestHeightM }: CrossSection): readonly string[] {
  if (greatestHeightM === null) {
    return ["No elevation data under the base here:", "no height can be given."];
  }
  return greatestHeightM > 0 ? [] : ["The ground is above the top of levee here."];
}
