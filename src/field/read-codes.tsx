import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { asFailure, type Failure, refusal } from "../../shared/failure.ts";
import { type CodesRead, readCodes, withCode } from "../../shared/field/progress-codes.ts";
import { failureText } from "../../shared/words/failure.ts";
import { addedWords } from "../../shared/words/field-built.ts";
import { codesReadWords, POINT_CAMERA } from "../../shared/words/field-codes.ts";
import { unitSystem } from "../live/screen.ts";
import { openPanel } from "./panel.ts";
import { PanelHead } from "./panel-head.tsx";
import { qrReader, type ReadQr } from "./qr.ts";
import { Read } from "./read.tsx";
import { takeMarks } from "./take-marks.ts";

/** Pause between two pictures that are looked at, milliseconds. */
const PAUSE_MS = 120;
/** Longest side of a picture that is looked at, pixels. */
const LONGEST_PX = 720;

/** Takes what another phone shows as codes by this phone's camera. */
export function ReadCodes() {
  const video = useRef<HTMLVideoElement>(null);
  const read = useSignal<CodesRead | null>(null);
  const said = useSignal<string | null>(null);
  const failure = useSignal<Failure | null>(null);
  useEffect(() => {
    const over = new AbortController();
    const onText = (text: string) => {
      const next = withCode(read.peek(), text);
      failure.value = next.ok ? null : next.failure;
      if (!next.ok) return;
      read.value = next.value;
      const taken = taking(next.value);
      if (!taken) return;
      over.abort();
      if (taken.ok) said.value = addedWords(taken.value);
      else failure.value = taken.failure;
    };
    const fail = (thrown: unknown) => {
      if (!over.signal.aborted) failure.value = asFailure(thrown);
    };
    if (video.current) watch(video.current, onText, over.signal).catch(fail);
    return () => over.abort();
  }, []);
  return (
    <Read label="Read codes" class="crew-page">
      <PanelHead title="Read codes" onBack={() => openPanel("built")} />
      {said.value === null && (
        <>
          <video class="crew-camera" ref={video} muted playsInline aria-label="Camera" />
          <p role="status">
            {read.value ? codesReadWords(read.value.parts.size, read.value.count) : POINT_CAMERA}
          </p>
        </>
      )}
      {said.value && (
        <p class="crew-said" role="status">
          {said.value}
        </p>
      )}
      {failure.value && (
        <p class="crew-said" role="alert">
          {failureText(failure.value, unitSystem.value)}
        </p>
      )}
    </Read>
  );
}

/** What a whole message adds; null while codes are missing. */
function taking(codes: CodesRead) {
  try {
    const carried = readCodes(codes);
    if (!carried) return null;
    const { planNumber, marks } = carried;
    return takeMarks(marks.map((mark) => ({ ...mark, planNumber, lineId: "", photoId: "" })));
  } catch (thrown) {
    return { ok: false as const, failure: asFailure(thrown) };
  }
}

/** Looks for codes in the camera's picture until it is over. */
async function watch(
  video: HTMLVideoElement,
  onText: (text: string) => void,
  over: AbortSignal,
): Promise<void> {
  const readQr = await qrReader();
  const stream = await navigator.mediaDevices
    ?.getUserMedia({ video: { facingMode: "environment" } })
    .catch(() => undefined);
  if (!stream) throw refusal("codes/no-camera");
  const end = () => {
    for (const track of stream.getTracks()) track.stop();
  };
  over.addEventListener("abort", end);
  if (over.aborted) return end();
  video.srcObject = stream;
  await video.play().catch(() => {});
  const canvas = document.createElement("canvas");
  while (!over.aborted) {
    const text = look(video, canvas, readQr);
    if (text !== null) onText(text);
    await new Promise((resolve) => setTimeout(resolve, PAUSE_MS));
  }
}

function look(video: HTMLVideoElement, canvas: HTMLCanvasElement, readQr: ReadQr): string | null {
  const { videoWidth, videoHeight } = video;
  if (videoWidth === 0 || videoHeight === 0) return null;
  const share = Math.min(1, LONGEST_PX / Math.max(videoWidth, videoHeight));
  canvas.width = Math.round(videoWidth * share);
  canvas.height = Math.round(videoHeight * share);
  const brush = canvas.getContext("2d", { willReadFrequently: true });
  if (!brush) return null;
  brush.drawImage(video, 0, 0, canvas.width, canvas.height);
  return readQr(brush.getImageData(0, 0, canvas.width, canvas.height));
}
