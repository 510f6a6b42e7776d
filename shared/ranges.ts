/** What a server answers to a request for a part of a file. */
export interface RangeAnswer {
  readonly status: number;
  /** `Content-Range`; null where there is none or it may not be read. */
  readonly range: string | null;
  /** What stays the same while the file does: `ETag`, else `Last-Modified`; null without. */
  readonly tag: string | null;
  /** `Last-Modified`, milliseconds since 1970; null without. */
  readonly modifiedMs: number | null;
  /** Where it sends on to; null where it does not. */
  readonly elsewhere: string | null;
  /** Empty where the status is not 206. */
  readonly bytes: ArrayBuffer;
}

/** A way to a file at a web address. */
export interface RangeWay {
  /** As a person knows it. */
  readonly host: string;
  /** Whether a page asks, which only some servers let. */
  readonly isPage: boolean;
  /** Bytes `from` to before `to`. @throws any error where no whole answer comes; `TimeoutError` where none came in time */
  readonly ask: (from: number, to: number) => Promise<RangeAnswer>;
  /** Length of the file, asked without its bytes; null where the server does not say. */
  readonly size: () => Promise<number | null>;
}

/** Waits for a part of a file at most so long, milliseconds. */
const MOST_MS = 45_000;

/** What is used of `fetch`. */
type Fetch = (
  address: string,
  how: {
    readonly method?: string;
    readonly headers?: Record<string, string>;
    readonly redirect: "manual";
    readonly cache: "no-store";
    readonly credentials: "omit";
    readonly referrerPolicy: "no-referrer";
    readonly signal: AbortSignal;
  },
) => Promise<{
  readonly status: number;
  readonly type: string;
  readonly headers: { readonly get: (name: string) => string | null };
  readonly body: { readonly cancel: () => Promise<void> } | null;
  readonly arrayBuffer: () => Promise<ArrayBuffer>;
}>;

/** Asks an address for bytes `from` to before `to`, sending nothing but that. */
export async function askRange(
  fetchFrom: Fetch,
  href: string,
  from: number,
  to: number,
  mostMs = MOST_MS,
): Promise<RangeAnswer> {
  const answer = await fetchFrom(href, {
    headers: { Range: `bytes=${from}-${to - 1}` },
    ...plainly(mostMs),
  });
  const { status, headers, type } = answer;
  const modified = headers.get("last-modified");
  const modifiedMs = modified === null ? Number.NaN : Date.parse(modified);
  const isPart = status === 206;
  if (!isPart) await answer.body?.cancel().catch(() => {});
  const isRedirect = type === "opaqueredirect" || (status >= 300 && status < 400);
  return {
    ...{ status, range: headers.get("content-range") },
    tag: headers.get("etag") ?? modified,
    modifiedMs: Number.isNaN(modifiedMs) ? null : modifiedMs,
    elsewhere: isRedirect ? (headers.get("location") ?? "another address") : null,
    bytes: isPart ? await answer.arrayBuffer() : new ArrayBuffer(0),
  };
}

/** Asks an address how long its file is. */
export async function askSize(fetchFrom: Fetch, href: string): Promise<number | null> {
  const { status, headers } = await fetchFrom(href, { method: "HEAD", ...plainly(MOST_MS) });
  const length = Number(headers.get("content-length") ?? Number.NaN);
  return status === 200 && length > 0 ? length : null;
}

function plainly(mostMs: number) {
  return {
    redirect: "manual",
    cache: "no-store",
    credentials: "omit",
    referrerPolicy: "no-referrer",
    signal: AbortSignal.timeout(mostMs),
  } as const;
}
