/** Writes the latest of many values, one write at a time, and tries again until it succeeds. */
export interface WriteBehind<T> {
  /**
   * Takes a value to be written after `delayMs`, at once when that is 0 and no write is running; an earlier value
   * still waiting is dropped.
   */
  put(value: T, delayMs: number): void;
  /** Starts writing what is waiting at once. */
  hurry(): void;
  /** The value that is not yet safely written; null when there is none. */
  waiting(): T | null;
}

export interface WriteBehindOptions<T> {
  readonly write: (value: T) => Promise<void>;
  /** Pause before a failed write is tried again, ms. */
  readonly retryMs: number;
  /** Nothing waits any more. */
  readonly onWritten: () => void;
  /** A write failed; called for each one. `value` stays waiting and is tried again. */
  readonly onFailure: (thrown: unknown, value: T) => void;
}

export function writeBehind<T extends object>(options: WriteBehindOptions<T>): WriteBehind<T> {
  let latest: T | null = null;
  let isRunning = false;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let dueMs = Infinity;

  async function start(): Promise<void> {
    if (isRunning) return;
    clearTimeout(timer);
    dueMs = Infinity;
    const value = latest;
    if (value === null) return;
    isRunning = true;
    try {
      await options.write(value);
      isRunning = false;
      if (latest !== value) return void start();
      latest = null;
      options.onWritten();
    } catch (thrown) {
      isRunning = false;
      schedule(options.retryMs);
      options.onFailure(thrown, value);
    }
  }

  function schedule(delayMs: number): void {
    const atMs = Date.now() + delayMs;
    if (atMs >= dueMs) return;
    dueMs = atMs;
    clearTimeout(timer);
    timer = setTimeout(start, delayMs);
  }

  return {
    put(value, delayMs) {
      latest = value;
      if (isRunning) return;
      if (delayMs > 0) schedule(delayMs);
      else void start();
    },
    hurry: () => void start(),
    waiting: () => latest,
  };
}
