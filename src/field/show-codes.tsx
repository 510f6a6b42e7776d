import { useEffect, useState } from "preact/hooks";
import { asFailure, type Failure } from "../../shared/failure.ts";
import { progressCodes } from "../../shared/field/progress-codes.ts";
import { failureText } from "../../shared/words/failure.ts";
import { codeCountWords, HOW_TO_READ, NOTHING_MARKED } from "../../shared/words/field-codes.ts";
import { plan } from "../document/store.ts";
import { unitSystem } from "../live/screen.ts";
import type { AtStake } from "./at.ts";
import { numberNow } from "./marking.ts";
import { openPanel } from "./panel.ts";
import { PanelHead } from "./panel-head.tsx";
import { type QrPicture, qrPictures } from "./qr.ts";
import { Read } from "./read.tsx";

/** How long one code is shown before the next, milliseconds: a camera needs a few frames in poor light. */
const EACH_MS = 900;

/** What is built by this plan as codes for another phone's camera, one after another. */
export function ShowCodes({ at }: { readonly at: AtStake }) {
  const number = numberNow.value;
  const progress = plan.value.progress;
  const marks = (progress ?? []).filter(
    ({ lineId, planNumber }) => lineId === at.line.id && planNumber === number,
  );
  const texts = number && marks.length > 0 ? progressCodes({ planNumber: number, marks }) : [];
  const pictures = usePictures(texts);
  return (
    <Read label="Show codes" class="crew-page">
      <PanelHead title="Show codes" onBack={() => openPanel("built")} />
      {texts.length === 0 && <p>{NOTHING_MARKED}</p>}
      {pictures === null && texts.length > 0 && <p role="status">Making the codes.</p>}
      {pictures && "code" in pictures && (
        <p role="alert">{failureText(pictures, unitSystem.value)}</p>
      )}
      {pictures && !("code" in pictures) && pictures.length > 0 && <Cycle pictures={pictures} />}
    </Read>
  );
}

function usePictures(texts: readonly string[]): readonly QrPicture[] | Failure | null {
  const key = texts.join("\n");
  const [made, setMade] = useState<readonly QrPicture[] | Failure | null>(null);
  useEffect(() => {
    let isWanted = true;
    const give = (next: readonly QrPicture[] | Failure) => isWanted && setMade(next);
    qrPictures(texts).then(give, (thrown) => give(asFailure(thrown)));
    return () => {
      isWanted = false;
    };
  }, [key]);
  return made;
}

function Cycle({ pictures }: { readonly pictures: readonly QrPicture[] }) {
  const [at, setAt] = useState(0);
  useEffect(() => {
    const timer = setInterval(() => setAt((now) => now + 1), EACH_MS);
    return () => clearInterval(timer);
  }, []);
  const index = at % pictures.length;
  const { path, sizeModules } = pictures[index]!;
  return (
    <>
      <svg
        class="crew-code"
        viewBox={`0 0 ${sizeModules} ${sizeModules}`}
        shape-rendering="crispEdges"
        role="img"
        aria-label="Code for another phone's camera"
      >
        <rect width={sizeModules} height={sizeModules} />
        <path d={path} />
      </svg>
      <p class="crew-said">{codeCountWords(index, pictures.length)}</p>
      <p>{HOW_TO_READ}</p>
    </>
  );
}
