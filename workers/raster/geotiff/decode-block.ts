import type { Samples } from "../heights.ts";
import type { ImageLayout } from "./image-layout.ts";
import { swapBytes, undoDifferences, undoFloatPredictor } from "./predictor.ts";

/**
 * Decompressed bytes of a tile or strip as numbers in the machine's order, predictor undone.
 * @param bytes at least `rows` rows of the block; used up
 * @param perRow numbers in one row of the block, all its bands counted
 */
export function samplesOf(
  layout: ImageLayout,
  bytes: ArrayBuffer,
  rows: number,
  perRow: number,
  stride: number,
): Samples {
  if (layout.bits === 1) return unpackBits(new Uint8Array(bytes), rows, perRow);
  const size = layout.bits / 8;
  const used = new Uint8Array(bytes, 0, rows * perRow * size);
  const mixed = layout.predictor === 3;
  if (!layout.littleEndian && !mixed) swapBytes(used, size);
  if (layout.predictor === 2)
    undoDifferences(unsignedView(bytes, size, rows * perRow), perRow, stride);
  if (mixed) undoFloatPredictor(used, perRow, stride, size);
  return numberView(layout, bytes, rows * perRow);
}

function unsignedView(bytes: ArrayBuffer, size: number, count: number) {
  if (size === 1) return new Uint8Array(bytes, 0, count);
  if (size === 2) return new Uint16Array(bytes, 0, count);
  if (size === 4) return new Uint32Array(bytes, 0, count);
  return new BigUint64Array(bytes, 0, count);
}

function numberView(layout: ImageLayout, bytes: ArrayBuffer, count: number): Samples {
  const { bits, sampleFormat } = layout;
  if (sampleFormat === 3) {
    return bits === 64 ? new Float64Array(bytes, 0, count) : new Float32Array(bytes, 0, count);
  }
  const signed = sampleFormat === 2;
  if (bits === 8) return new (signed ? Int8Array : Uint8Array)(bytes, 0, count);
  if (bits === 16) return new (signed ? Int16Array : Uint16Array)(bytes, 0, count);
  return new (signed ? Int32Array : Uint32Array)(bytes, 0, count);
}

/** One bit per cell, rows padded to whole bytes, the highest bit first. */
function unpackBits(packed: Uint8Array, rows: number, perRow: number): Uint8Array {
  const rowBytes = Math.ceil(perRow / 8);
  const cells = new Uint8Array(rows * perRow);
  for (let row = 0; row < rows; row++) {
    for (let i = 0; i < perRow; i++) {
      const byte = packed[row * rowBytes + (i >> 3)]!;
      cells[row * perRow + i] = (byte >> (7 - (i & 7))) & 1;
    }
  }
  return cells;
}
