/// <reference path="./lerc-module.d.ts" />
import Lerc from "lerc";
import type { ImageLayout } from "./image-layout.ts";

/**
 * Decodes one LERC block: numbers in the machine's order, NaN where its mask says that a cell has no
 * data. (geotiff.js drops the mask, so that holes would read as height 0.)
 * @throws anything when the block is damaged or not of the size that the image promises
 */
export function unpackLerc(encoded: ArrayBuffer, bytes: number, layout: ImageLayout): ArrayBuffer {
  const size = layout.bits / 8;
  if (statedCells(encoded) * size > bytes)
    throw new Error("The LERC block is larger than its tile.");
  const { pixels, mask } = Lerc.decode(encoded);
  const [first] = pixels;
  if (!first || first.BYTES_PER_ELEMENT !== size)
    throw new Error("The LERC block is of another type.");
  if (mask) writeHoles(first.buffer, mask, layout);
  return first.buffer;
}

/** Cells that the head of a LERC 2 block states, before anything is allocated for them. */
function statedCells(encoded: ArrayBuffer): number {
  const view = new DataView(encoded);
  const version = view.getInt32(6, true);
  const at = version >= 3 ? 14 : 10;
  return view.getUint32(at, true) * view.getUint32(at + 4, true);
}

function writeHoles(buffer: ArrayBuffer, mask: Uint8Array, layout: ImageLayout): void {
  if (layout.sampleFormat !== 3) throw new Error("A LERC block of whole numbers has a mask.");
  const numbers = layout.bits === 64 ? new Float64Array(buffer) : new Float32Array(buffer);
  for (let i = 0; i < mask.length; i++) {
    if (mask[i] === 0) numbers[i] = Number.NaN;
  }
}
