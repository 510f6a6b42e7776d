import { signal } from "@preact/signals";
import type { CallOptions, TileResponse } from "../../shared/messages.ts";

/** How long pictures made of a part of the raster stay before they are asked for anew, milliseconds. */
const STEP_MS = 1000;

/** Share of a large raster that is read for the map's pictures, 0..1; null while none is being read as a whole. */
export const groundReading = signal<number | null>(null);

/** Counts the times at which the pictures made of a part of the raster are out of date. */
export const readingStep = signal(0);
/** Counts the rasters of which parts were shown and that are now read to the end. */
export const readingEnd = signal(0);

let pending = 0;
let waiting = 0;
let showsPart = false;
let nextStep: ReturnType<typeof setTimeout> | null = null;

/**
 * Makes a request for a picture and, where it waits for the whole raster to be read or shows a part of it, shows how
 * far that is. A part is asked for anew by {@link readingStep} until all pictures show the whole.
 */
export async function withReadingShown(
  ask: (options: CallOptions) => Promise<TileResponse>,
  signal: AbortSignal,
): Promise<TileResponse> {
  let waits = false;
  const onProgress = (share: number) => {
    if (!waits) waiting++;
    waits = true;
    groundReading.value = share;
  };
  pending++;
  try {
    const answer = await ask({ signal, onProgress });
    if (answer.share !== undefined) showPart(answer.share);
    return answer;
  } finally {
    pending--;
    if (waits) waiting--;
    settle();
  }
}

function showPart(share: number): void {
  showsPart = true;
  groundReading.value = share;
  nextStep ??= setTimeout(() => {
    nextStep = null;
    readingStep.value++;
  }, STEP_MS);
}

function settle(): void {
  if (showsPart) {
    if (pending > 0 || nextStep !== null) return;
    showsPart = false;
    readingEnd.value++;
  }
  if (waiting === 0) groundReading.value = null;
}
