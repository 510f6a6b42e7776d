import { type ChildProcess, execFileSync, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Redis } from "ioredis";
import { onPath } from "../../workers/command/installed-browser.mjs";

/** A Redis server of a test's own, which writes nothing to disk. */
export interface RedisServer {
  readonly address: string;
  readonly redis: Redis;
  readonly pid: number | undefined;
  /** Keys of jobs, which a check that has ended leaves none of. */
  readonly jobs: () => Promise<string[]>;
  readonly stop: () => Promise<void>;
}

const ADVICE =
  "The tests of the queue need redis-server, and none was found. Install it (Debian: apt-get install redis-server).";

/** Path of redis-server; on Debian as root it is installed where there is none, as the browser is. */
function findRedis(): string {
  const found = onPath("redis-server");
  if (found) return found;
  if (process.getuid?.() !== 0 || !onPath("apt-get")) throw new Error(ADVICE);
  const environment = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  const install = ["-qq", "install", "-y", "--no-install-recommends", "redis-server"];
  execFileSync("apt-get", ["update", "-qq"], { env: environment });
  execFileSync("apt-get", install, { env: environment });
  const now = onPath("redis-server");
  if (!now) throw new Error(ADVICE);
  return now;
}

/** Starts one on a free port of this machine, and waits until it answers. */
export async function startRedis(): Promise<RedisServer> {
  const folder = mkdtempSync(join(tmpdir(), "drystead-redis-"));
  const port = await freePort();
  const words = ["--port", String(port), "--bind", "127.0.0.1", "--dir", folder];
  const server = spawn(findRedis(), [...words, "--save", "", "--appendonly", "no"], {
    stdio: "ignore",
  });
  const redis = new Redis({ host: "127.0.0.1", port, retryStrategy: () => 50 });
  redis.on("error", () => {});
  await redis.ping();
  return {
    address: `redis://127.0.0.1:${port}`,
    ...{ redis, pid: server.pid },
    jobs: () => redis.keys("bull:drystead-sweep-*:*-*").then((all) => all.filter(isJob)),
    stop: async () => {
      redis.disconnect();
      await ended(server, "SIGTERM");
      rmSync(folder, { recursive: true });
    },
  };
}

function isJob(key: string): boolean {
  return !key.endsWith(":stalled-check");
}

/** Ends a process, and waits until it has. */
export async function ended(child: ChildProcess, signal: NodeJS.Signals): Promise<number | null> {
  if (child.exitCode !== null || child.signalCode !== null) return child.exitCode;
  const exit = new Promise<number | null>((done) => child.once("exit", done));
  child.kill(signal);
  return exit;
}

function freePort(): Promise<number> {
  return new Promise((done) => {
    const server = createServer().listen(0, "127.0.0.1", () => {
      const { port } = server.address() as { readonly port: number };
      server.close(() => done(port));
    });
  });
}
