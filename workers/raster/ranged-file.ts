import { Refusal, refusal } from "../../shared/failure.ts";
import type { FileBytes } from "../../shared/messages.ts";
import type { RangeAnswer, RangeWay } from "../../shared/ranges.ts";

/** A block that is asked for and kept, bytes; a slice takes the blocks it lies in. */
const BLOCK_BYTES = 65_536;
/** Blocks beside each other that one request takes. */
const MOST_ASKED = 64;
/** Blocks kept: 32 MB. */
const MOST_KEPT = 512;
/** Waits before a request that failed in passing is made again, milliseconds. */
const WAITS_MS = [250, 1000] as const;

/**
 * A file at a web address, read by range requests (RFC 9110, 14). What fails in passing (no answer, an answer cut
 * off, 429 and 5xx) is asked again twice; what the server says of the file must stay the same.
 * @throws Refusal `address/no-ranges`, `address/answer`, `address/elsewhere`, `address/certificate`, `address/unreachable`, `address/slow`,
 * `address/cut-off`, `address/lies`; so does every slice, and `address/changed`
 */
export async function rangedFile(
  way: RangeWay,
  waitsMs: readonly number[] = WAITS_MS,
): Promise<FileBytes> {
  const first = await requested(way, 0, BLOCK_BYTES, waitsMs);
  const size = totalOf(first) ?? (await way.size().catch(() => null));
  if (size === null || !(size > 0))
    throw refusal("address/no-length", { host: way.host, isPage: way.isPage });
  checked(way, first, 0, Math.min(BLOCK_BYTES, size), size);
  const kept = new Map<number, Promise<ArrayBuffer>>([[0, Promise.resolve(first.bytes)]]);

  const fetchRun = (from: number, count: number) => {
    const start = from * BLOCK_BYTES;
    const end = Math.min(size, start + count * BLOCK_BYTES);
    const answer = requested(way, start, end, waitsMs).then((it) => {
      if (it.tag !== first.tag) throw refusal("address/changed", { host: way.host });
      return checked(way, it, start, end, size);
    });
    for (let k = 0; k < count; k++) {
      const block = answer.then((bytes) =>
        bytes.slice(k * BLOCK_BYTES, Math.min(bytes.byteLength, (k + 1) * BLOCK_BYTES)),
      );
      block.catch(() => kept.delete(from + k));
      kept.set(from + k, block);
    }
  };

  const read = async (start: number, end: number): Promise<ArrayBuffer> => {
    const [from, to] = [Math.floor(start / BLOCK_BYTES), Math.ceil(end / BLOCK_BYTES)];
    for (let at = from; at < to; ) {
      let count = 0;
      while (at + count < to && count < MOST_ASKED && !kept.has(at + count)) count++;
      if (count > 0) fetchRun(at, count);
      at += Math.max(1, count);
    }
    const bytes = new Uint8Array(end - start);
    const wanted = Array.from({ length: to - from }, (_, k) => kept.get(from + k)!);
    for (const [k, block] of (await Promise.all(wanted)).entries()) {
      const at = (from + k) * BLOCK_BYTES;
      const part = new Uint8Array(block).subarray(Math.max(0, start - at), end - at);
      bytes.set(part, Math.max(0, at - start));
    }
    for (let k = from; k < to; k++) touch(kept, k);
    return bytes.buffer;
  };

  return {
    size,
    ...(first.modifiedMs === null ? {} : { lastModified: first.modifiedMs }),
    slice(from, to) {
      const start = Math.min(from, size);
      const end = Math.max(start, Math.min(to, size));
      return {
        arrayBuffer: () => (end > start ? read(start, end) : Promise.resolve(new ArrayBuffer(0))),
      };
    },
  };
}

/** What was used last goes last; the first go when there are too many. */
function touch(kept: Map<number, Promise<ArrayBuffer>>, block: number): void {
  const value = kept.get(block);
  if (!value) return;
  kept.delete(block);
  kept.set(block, value);
  for (const [oldest] of kept) {
    if (kept.size <= MOST_KEPT) return;
    kept.delete(oldest);
  }
}

/** An answer with a part of the file, asked again where it failed in passing. */
async function requested(
  way: RangeWay,
  from: number,
  to: number,
  waitsMs: readonly number[],
): Promise<RangeAnswer> {
  for (let turn = 0; ; turn++) {
    const answer = await way.ask(from, to).catch((thrown: unknown) => thrown);
    const failed = isAnswer(answer) ? refusedBy(way, answer) : unanswered(way, answer);
    if (failed === null && isAnswer(answer)) return answer;
    if (turn >= waitsMs.length || !isPassing(answer)) throw failed;
    await new Promise((resolve) => setTimeout(resolve, waitsMs[turn]));
  }
}

function isAnswer(answer: unknown): answer is RangeAnswer {
  return typeof answer === "object" && answer !== null && "status" in answer;
}

function isPassing(answer: unknown): boolean {
  if (!isAnswer(answer)) return !(answer instanceof Refusal);
  const { status } = answer;
  return status === 429 || status >= 500 || (status === 206 && isShort(answer));
}

function refusedBy(way: RangeWay, answer: RangeAnswer): Refusal | null {
  const { status, elsewhere } = answer;
  if (status === 206)
    return isShort(answer) ? refusal("address/cut-off", { host: way.host }) : null;
  if (status === 200) return refusal("address/no-ranges", { host: way.host });
  if (status === 416) return refusal("address/lies", { host: way.host, sends: "nothing" });
  if (elsewhere !== null)
    return refusal("address/elsewhere", { host: way.host, to: elsewhere.slice(0, 200) });
  return refusal("address/answer", { host: way.host, status });
}

function unanswered(way: RangeWay, thrown: unknown): Refusal {
  if (thrown instanceof Refusal) return thrown;
  if ((thrown as Error | null)?.name === "TimeoutError")
    return refusal("address/slow", { host: way.host });
  if (CERTIFICATE.test(causeOf(thrown)))
    return refusal("address/certificate", { host: way.host, cause: causeOf(thrown) });
  return refusal("address/unreachable", { host: way.host, isPage: way.isPage });
}

/** Codes with which Node refuses a server's certificate. Source: Node, tls, X509 certificate error codes. */
const CERTIFICATE = /CERT|SELF_SIGNED|UNABLE_TO_VERIFY|ALTNAME/;

/** The code of what an error was thrown because of; a page is told none. */
function causeOf(thrown: unknown): string {
  const cause = (thrown as { cause?: { code?: unknown } } | null)?.cause;
  return typeof cause?.code === "string" ? cause.code.slice(0, 60) : "";
}

/** First byte, last byte and length of the file, as `Content-Range` says. */
function rangeOf({ range }: RangeAnswer): readonly [number, number, number | null] | null {
  const match = /^bytes (\d+)-(\d+)\/(\d+|\*)$/i.exec(range?.trim() ?? "");
  if (!match) return null;
  return [Number(match[1]), Number(match[2]), match[3] === "*" ? null : Number(match[3])];
}

function totalOf(answer: RangeAnswer): number | null {
  return rangeOf(answer)?.[2] ?? null;
}

function isShort(answer: RangeAnswer): boolean {
  const range = rangeOf(answer);
  return range !== null && answer.bytes.byteLength < range[1] - range[0] + 1;
}

/** The bytes, where they are those that were asked for. */
function checked(
  way: RangeWay,
  answer: RangeAnswer,
  from: number,
  to: number,
  size: number,
): ArrayBuffer {
  const range = rangeOf(answer);
  const total = range?.[2] ?? null;
  if (total !== null && total !== size) throw refusal("address/changed", { host: way.host });
  if (range && (range[0] !== from || range[1] !== to - 1)) {
    throw refusal("address/lies", { host: way.host, sends: "another-part" });
  }
  if (answer.bytes.byteLength !== to - from) {
    throw refusal("address/lies", {
      ...{ host: way.host, sends: "bytes", bytes: answer.bytes.byteLength, wanted: to - from },
    });
  }
  return answer.bytes;
}
