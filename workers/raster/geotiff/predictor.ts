/** Reverses the bytes of each number, in place. */
export function swapBytes(bytes: Uint8Array, size: number): void {
  for (let at = 0; at + size <= bytes.length; at += size) {
    for (let low = at, high = at + size - 1; low < high; low++, high--) {
      const kept = bytes[low]!;
      bytes[low] = bytes[high]!;
      bytes[high] = kept;
    }
  }
}

/**
 * Undoes horizontal differencing (TIFF 6.0, section 14) in place. geotiff.js has its own, which is wrong
 * for big-endian files and has no 64-bit case.
 * @param numbers little-endian, as unsigned integers
 * @param perRow numbers in one row of the block
 * @param stride numbers per cell
 */
export function undoDifferences(
  numbers: Uint8Array | Uint16Array | Uint32Array | BigUint64Array,
  perRow: number,
  stride: number,
): void {
  const end = numbers.length - perRow;
  if (numbers instanceof BigUint64Array) {
    for (let start = 0; start <= end; start += perRow)
      accumulateWide(numbers, start, perRow, stride);
  } else {
    for (let start = 0; start <= end; start += perRow) accumulate(numbers, start, perRow, stride);
  }
}

function accumulate(
  numbers: Uint8Array | Uint16Array | Uint32Array,
  start: number,
  perRow: number,
  stride: number,
): void {
  for (let i = start + stride; i < start + perRow; i++) {
    numbers[i] = numbers[i]! + numbers[i - stride]!;
  }
}

function accumulateWide(
  numbers: BigUint64Array,
  start: number,
  perRow: number,
  stride: number,
): void {
  for (let i = start + stride; i < start + perRow; i++) {
    numbers[i] = numbers[i]! + numbers[i - stride]!;
  }
}

/**
 * Undoes the floating point predictor (TIFF Technical Note 3) in place: byte differences along the row,
 * then the byte planes, most significant first, are woven into little-endian numbers.
 * @param size bytes of one number
 */
export function undoFloatPredictor(
  bytes: Uint8Array,
  perRow: number,
  stride: number,
  size: number,
): void {
  const rowBytes = perRow * size;
  const planes = new Uint8Array(rowBytes);
  for (let start = 0; start + rowBytes <= bytes.length; start += rowBytes) {
    for (let i = start + stride; i < start + rowBytes; i++) {
      bytes[i] = bytes[i]! + bytes[i - stride]!;
    }
    planes.set(bytes.subarray(start, start + rowBytes));
    for (let plane = 0; plane < size; plane++) {
      const source = (size - 1 - plane) * perRow;
      for (let i = 0, to = start + plane; i < perRow; i++, to += size) {
        bytes[to] = planes[source + i]!;
      }
    }
  }
}
