import { availableParallelism } from "node:os";
import { ENDING, takingWords } from "../../shared/words/terminal.ts";
import { numberFrom } from "./number.ts";
import { readQueueAddress } from "./queue/address.ts";
import { Misuse, type Terminal, type Verb } from "./verb.ts";
import { readWords } from "./words.ts";

const LOST_AFTER_S = 30;

const HELP = `drystead sweep-worker --queue redis://HOST:PORT [--workers N] [--lost-after ${LOST_AFTER_S}]

Takes the jobs that "drystead sweep ... --queue" submits, on as many machines as there are, until it is ended by
Ctrl-C or SIGTERM: the jobs at work are then finished first. It takes jobs of its own version of the program alone,
leaves those of another to workers of that, and must find the elevation data under the same path as the one that
submits, or at the same web address.

  --queue       the Redis server that submitter and workers share: redis://[name:password@]host:port, or rediss://
  --workers     threads that search; as many as the machine has processors when left out
  --lost-after  seconds after which a worker that is not heard of is taken to be lost, and its jobs go to others
`;

/** `sweep-worker`: takes jobs of `sweep` out of a queue. */
export const sweepWorker: Verb = {
  name: "sweep-worker",
  summary: "takes jobs that sweep puts into a queue, on this machine",
  help: HELP,
  run: runWorker,
};

const OPTIONS = { "--queue": "one", "--workers": "one", "--lost-after": "one" } as const;

async function runWorker({ words, say }: Terminal): Promise<string> {
  const { plain, options } = readWords(words, OPTIONS);
  if (plain.length > 0) throw new Misuse(`sweep-worker takes no ${plain[0]}.`);
  const given = options.get("--queue")?.[0];
  if (given === undefined) throw new Misuse("sweep-worker needs --queue and an address.");
  const threads =
    numberFrom(options, "--workers", { least: 1, most: 256, whole: true }) ??
    availableParallelism();
  const lostAfterS = numberFrom(options, "--lost-after", { least: 1, most: 3600 }) ?? LOST_AFTER_S;
  const address = readQueueAddress(given);
  const { serveTiles } = await import("./queue/serve-tiles.ts");
  const serving = await serveTiles(address, { threads, lostAfterS, say });
  say(takingWords(serving.version, address.shown, threads));
  await signalled();
  say(ENDING);
  await serving.close();
  return "";
}

function signalled(): Promise<void> {
  return new Promise((done) => {
    for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => done());
  });
}
