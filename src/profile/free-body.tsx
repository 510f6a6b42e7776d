import { useId } from "preact/hooks";
import { holdingOf } from "../../shared/defaults.ts";
import { factorWords } from "../../shared/holding/factor-words.ts";
import { standingAt } from "../../shared/holding/standing-at.ts";
import { verdictOf } from "../../shared/holding/weakest.ts";
import type { CrossSection } from "../../shared/sizing-types.ts";
import { noForcesWords } from "../../shared/words/forces.ts";
import { plan } from "../document/store.ts";
import type { PlacedLabel } from "../drawing/place-labels.ts";
import type { SectionFrame } from "../drawing/section/section-frame.ts";
import { unitSystem } from "../live/screen.ts";
import { type Arrow, freeBodyPicture } from "./free-body.ts";

/** The factors of safety at this station, in words. */
export function Factors({ cross }: { readonly cross: CrossSection }) {
  const now = plan.value;
  const body = standingAt(cross, now);
  if (!body) return <p class="forces-words">{noForcesWords(cross)}</p>;
  if (!(body.waterDepthM > 0)) return <p class="forces-words">No water against it here.</p>;
  const { slidingFactor, overturningFactor } = holdingOf(now);
  const turning = { low: body.overturning, high: body.overturning };
  return (
    <p class="forces-words">
      <span data-verdict={verdictOf(body.sliding, slidingFactor)}>
        sliding <strong>{factorWords(body.sliding)}</strong>
      </span>
      {slidingFactor === overturningFactor ? ", " : `, ${slidingFactor} required; `}
      <span data-verdict={verdictOf(turning, overturningFactor)}>
        overturning <strong>{factorWords(turning)}</strong>
      </span>
      {slidingFactor === overturningFactor ? "; " : ", "}
      {overturningFactor} required
    </p>
  );
}

interface FreeBodyProps {
  readonly cross: CrossSection;
  readonly frame: SectionFrame;
  readonly labels: readonly PlacedLabel[];
}

/** Thrust, uplift and weight, drawn over a section. */
export function FreeBody({ cross, frame, labels }: FreeBodyProps) {
  const id = useId();
  const body = standingAt(cross, plan.value);
  const picture = body && freeBodyPicture(cross, body, frame, unitSystem.value, labels);
  if (!picture) return null;
  const { thrust, uplift, weight, turns } = picture;
  return (
    <g class="free-body">
      <defs>
        {(["water", "ink"] as const).map((kind) => (
          <marker
            key={kind}
            id={`${id}-${kind}`}
            class={`free-body-tip free-body-tip-${kind}`}
            viewBox="0 0 8 8"
            refX="7.4"
            refY="4"
            markerWidth="8"
            markerHeight="8"
            markerUnits="userSpaceOnUse"
            orient="auto"
          >
            <path d="M0 0.8 8 4 0 7.2z" />
          </marker>
        ))}
      </defs>
      <path class="free-body-area" d={picture.upliftArea} />
      <path class="free-body-area" d={picture.thrustArea} />
      {picture.pressures.map((each) => (
        <path key={each.fromY} class="free-body-pressure" d={lineOf(each)} />
      ))}
      <path class="free-body-base" d={picture.base} />
      {thrust && (
        <path class="free-body-water" d={lineOf(thrust)} marker-end={`url(#${id}-water)`} />
      )}
      {uplift && (
        <path class="free-body-water" d={lineOf(uplift)} marker-end={`url(#${id}-water)`} />
      )}
      <path class="free-body-halo" d={lineOf(weight)} />
      <path class="free-body-weight" d={lineOf(weight)} marker-end={`url(#${id}-ink)`} />
      <circle class="free-body-turns" cx={turns.x} cy={turns.y} r="3.4" />
      {picture.labels.map(({ key, text, box }) => (
        <text
          key={key}
          class={`section-label free-body-${key}-label`}
          x={(box.left + box.right) / 2}
          y={box.bottom - 3}
          text-anchor="middle"
        >
          {text}
        </text>
      ))}
    </g>
  );
}

function lineOf({ fromX, fromY, toX, toY }: Arrow): string {
  return `M${fromX} ${fromY}L${toX} ${toY}`;
}
