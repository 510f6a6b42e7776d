import { refusal } from "../../../shared/failure.ts";
import type { QueueAddress } from "./address.ts";

const CONNECT_MS = 5000;
/** A connection that is lost is tried again after so long, milliseconds. */
const LOST_RETRY_MS = 1000;

/** Options of a lasting connection. */
type Lasting = QueueAddress["options"] & {
  readonly maxRetriesPerRequest: null;
  readonly retryStrategy: () => number;
};

/**
 * Tries the address once, and gives the options of lasting connections to it, which come back when they are lost.
 * @throws Refusal `queue/no-connection`, `queue/not-let-in`
 */
export async function connect(address: QueueAddress): Promise<Lasting> {
  const { Redis } = await import("ioredis");
  const redis = new Redis({
    ...address.options,
    ...{ lazyConnect: true, connectTimeout: CONNECT_MS, maxRetriesPerRequest: 0 },
    retryStrategy: () => null,
  });
  let why = "";
  redis.on("error", (error: Error) => {
    why = wordsOf(error);
  });
  try {
    await redis.connect();
    await redis.ping();
  } catch (thrown) {
    const cause = why || wordsOf(thrown);
    const isRefused = /NOAUTH|WRONGPASS|NOPERM/.test(cause);
    const code = isRefused ? "queue/not-let-in" : "queue/no-connection";
    throw refusal(code, { address: address.shown, cause });
  } finally {
    redis.disconnect();
  }
  return {
    ...address.options,
    maxRetriesPerRequest: null,
    retryStrategy: () => LOST_RETRY_MS,
  };
}

function wordsOf(error: unknown): string {
  const { code, message } = error as { readonly code?: string; readonly message?: string };
  return code ?? message ?? String(error);
}
