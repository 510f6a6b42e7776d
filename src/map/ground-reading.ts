import { signal } from "@preact/signals";
import type { CallOptions } from "../../shared/messages.ts";

/** Share of a large raster that is read for the map's pictures, 0..1; null while none is being read as a whole. */
export const groundReading = signal<number | null>(null);

let waiting = 0;

/** Makes a request for a picture and, where it waits for the whole raster to be read, shows how far that is. */
export async function withReadingShown<T>(
  ask: (options: CallOptions) => Promise<T>,
  signal: AbortSignal,
): Promise<T> {
  let waits = false;
  const onProgress = (share: number) => {
    if (!waits) waiting++;
    waits = true;
    groundReading.value = share;
  };
  try {
    return await ask({ signal, onProgress });
  } finally {
    if (waits) waiting--;
    if (waiting === 0) groundReading.value = null;
  }
}
