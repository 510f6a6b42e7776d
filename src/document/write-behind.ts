/** Writes the latest of many values, a little later, one write at a time. */
export interface WriteBehind<T> {
  /** Takes a value to be written within the delay; an earlier value still waiting is dropped. */
  put(value: T): void;
  /** Writes what is waiting at once; resolves when nothing waits any more or a write has failed. */
  flush(): Promise<void>;
  /** The value that is not yet safely written; null when there is none. */
  waiting(): T | null;
}

/**
 * @param delayMs longest wait before a write starts
 * @param onFailure called once for a row of failed writes; the value stays waiting for the next put or flush
 */
export function writeBehind<T extends object>(
  write: (value: T) => Promise<void>,
  delayMs: number,
  onFailure: (thrown: unknown) => void,
): WriteBehind<T> {
  let latest: T | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let running: Promise<void> | null = null;
  let failing = false;

  async function writeLatest(): Promise<void> {
    const value = latest;
    if (value === null) return;
    try {
      await write(value);
      failing = false;
      if (latest === value) latest = null;
    } catch (thrown) {
      if (!failing) onFailure(thrown);
      failing = true;
    }
  }

  function start(): Promise<void> {
    clearTimeout(timer);
    timer = undefined;
    running ??= writeLatest().finally(() => {
      running = null;
      if (latest !== null && !failing) schedule();
    });
    return running;
  }

  function schedule(): void {
    timer ??= setTimeout(start, delayMs);
  }

  return {
    put(value) {
      latest = value;
      if (running === null) schedule();
    },
    async flush() {
      if (running !== null) await running;
      if (latest !== null) await start();
    },
    waiting: () => latest,
  };
}
