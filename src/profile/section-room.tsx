import { crossSectionWords, takesWords } from "../../shared/words/cross-section.ts";
import { failureText } from "../../shared/words/failure.ts";
import "./section-room.css";
import { useEffect } from "preact/hooks";
import { isStandard, reachAt } from "../../shared/reaches.ts";
import type { CrossSection, SizedLine } from "../../shared/sizing-types.ts";
import { formatStation } from "../../shared/units.ts";
import { topWords } from "../../shared/words/settling.ts";
import { plan } from "../document/store.ts";
import { SectionDrawing } from "../drawing/section/section-drawing.tsx";
import {
  FOR_FORCES,
  type SectionRoomNeeded,
  sectionScale,
} from "../drawing/section/section-frame.ts";
import { chosenLine } from "../live/results.ts";
import { markedM, unitSystem } from "../live/screen.ts";
import {
  keepSection,
  sectionFailure,
  sectionLags,
  sectionMarginM,
  sectionNow,
} from "../live/section-now.ts";
import { useSize } from "../ui/use-size.ts";
import { ForcesToggle, ForcesWords, forcesOver } from "./forces.tsx";

/** Share of the line's greatest height every section leaves room for, so that they can be compared. */
const SHARED_SCALE_SHARE = 0.75;
const WIDEST_MARGIN_M = 25;

/** The levee cut across at the marked station, to scale, with what it is made of. */
export function SectionRoom() {
  useEffect(keepSection, []);
  const line = chosenLine.value;
  const cross = sectionNow.value;
  const isOfLine = line !== null && line.walk.chainageM.length > 1;
  return (
    <div class="room section-room" data-stale={sectionLags.value}>
      {isOfLine && cross ? <Cut line={line} cross={cross} /> : <Empty hasLine={isOfLine} />}
    </div>
  );
}

function Empty({ hasLine }: { readonly hasLine: boolean }) {
  const failure = sectionFailure.value;
  const advice = hasLine ? "Drawing the cross-section." : "One station, bag by bag.";
  return (
    <>
      <header class="room-head">
        <h2>Cross-section</h2>
      </header>
      <p class="room-empty">
        {failure && hasLine ? failureText(failure, unitSystem.value) : advice}
      </p>
    </>
  );
}

function Cut({ line, cross }: { readonly line: SizedLine; readonly cross: CrossSection }) {
  const [ref, size] = useSize<HTMLDivElement>();
  const system = unitSystem.value;
  const { section, practice } = plan.value;
  const needed = roomNeeded(line, cross);
  const over = forcesOver(cross);
  useEffect(() => {
    if (!size) return;
    const scale = sectionScale(needed, section, size.widthPx, size.heightPx, over && FOR_FORCES);
    sectionMarginM.value = Math.min(WIDEST_MARGIN_M, Math.ceil(size.widthPx / scale));
  });
  const station = formatStation(cross.chainageM, system);
  return (
    <>
      <header class="room-head section-head">
        <h2>Cross-section at {station}</h2>
        <ForcesToggle />
        <p class="section-notes">
          {!isStandard(cross) && <span class="section-name">{cross.sectionName}</span>}
          <span>{takesWords(cross, section, system)}</span>
          {markedM.value !== null && <span>{topWords(cross, system)}</span>}
        </p>
      </header>
      <ForcesWords cross={cross} />
      <div
        class="section-plot"
        ref={ref}
        role="img"
        aria-label={crossSectionWords(cross, section, station, system)}
      >
        {size && (
          <SectionDrawing
            cross={cross}
            section={section}
            limitM={practice.limitM}
            unitSystem={system}
            needed={needed}
            over={over}
            {...size}
          />
        )}
      </div>
    </>
  );
}

/** Most of the greatest height of the line, at the width that the cut's own reach has where it is widest. */
function roomNeeded({ walk, totals, ...line }: SizedLine, cross: CrossSection): SectionRoomNeeded {
  const { fromM, toM } = reachAt(line, cross.chainageM);
  const widestM = walk.chainageM.reduce((most, chainageM, i) => {
    const isHere = chainageM >= fromM && chainageM <= toM;
    const baseM = walk.toeLeftM[i]! + walk.toeRightM[i]!;
    return isHere && baseM > most ? baseM : most;
  }, 0);
  return {
    heightM: totals.greatestHeightM * SHARED_SCALE_SHARE,
    baseM: widestM * SHARED_SCALE_SHARE,
  };
}
