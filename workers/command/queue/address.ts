import { refusal } from "../../../shared/failure.ts";

/** Where the queue is. */
export interface QueueAddress {
  /** As it may be shown: without a password. */
  readonly shown: string;
  readonly options: {
    readonly host: string;
    readonly port: number;
    readonly db: number;
    readonly username?: string;
    readonly password?: string;
    readonly tls?: object;
  };
}

const USUAL_PORT = 6379;

/** Reads `redis://[user:password@]host[:port][/number]`, or `rediss://` for TLS. @throws Refusal `queue/bad-address` */
export function readQueueAddress(text: string): QueueAddress {
  const url = URL.canParse(text) ? new URL(text) : null;
  const db = Number((url?.pathname ?? "").replace(/^\//, "") || 0);
  const isRedis = url?.protocol === "redis:" || url?.protocol === "rediss:";
  if (!url || !isRedis || url.hostname === "" || !Number.isInteger(db)) {
    throw refusal("queue/bad-address", { came: text.includes("@") ? null : text });
  }
  const [username, password] = [url.username, url.password].map(decodeURIComponent);
  const host = url.hostname.replace(/^\[(.*)\]$/, "$1");
  return {
    shown: `${url.protocol}//${url.host}${url.pathname}`,
    options: {
      ...{ host, port: Number(url.port || USUAL_PORT), db },
      ...(username && { username }),
      ...(password && { password }),
      ...(url.protocol === "rediss:" && { tls: {} }),
    },
  };
}
