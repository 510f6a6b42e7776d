/** One measured case. Times are medians of warm runs in milliseconds; sizes take their place where `unit` says so. */
export interface BenchRow {
  /** What was done, on what. */
  readonly name: string;
  readonly ms: number;
  /** kB of 1,000 bytes in place of milliseconds. */
  readonly unit?: "kB";
  /** Who did the same in the same run, e.g. "GDAL 3.8 (gdal3.js)"; null when nobody did. */
  readonly peer: string | null;
  readonly peerMs: number | null;
  /** What the project promises; null when nothing is promised. */
  readonly promisedMs: number | null;
}

/** A bench is a module of tests/bench/ that exports this. */
export interface Bench {
  readonly rows: () => Promise<readonly BenchRow[]>;
}
