/**
 * The terminal program: the engine of the screen, without the screen. Results go to standard output,
 * everything said to standard error. Ends with 0, with 1 for input that is refused (with the reason), and
 * with 2 for a command line that cannot be followed.
 */
import { resolve } from "node:path";
import { asFailure, type Failure } from "../shared/failure.ts";
import { site } from "./command/site.ts";
import { size } from "./command/size.ts";
import { trace } from "./command/trace.ts";
import { Misuse, type Verb } from "./command/verb.ts";

const VERBS: readonly Verb[] = [size, site, trace];

const USAGE = `drystead VERB ...

${VERBS.map(({ name, summary }) => `  ${name.padEnd(8)}${summary}`).join("\n")}

drystead VERB --help tells more. Exit codes: 0 done, 1 input refused, 2 wrong command line.
`;

async function main(words: readonly string[]): Promise<number> {
  const [name, ...rest] = words;
  if (name === "--help" || name === "-h" || name === "help") return write(USAGE);
  const verb = VERBS.find((each) => each.name === name);
  if (!verb) {
    say(name === undefined ? USAGE : `drystead: there is no verb ${name}.\n\n${USAGE}`);
    return 2;
  }
  if (rest.includes("--help") || rest.includes("-h")) return write(verb.help);
  try {
    const result = await verb.run({
      words: rest,
      startEngine: async () => (await import("./engine.ts")).makeEngine(),
      resolve: (path) => resolve(startingFolder(), path),
      say: (message) => say(`${message}\n`),
    });
    return await write(result);
  } catch (thrown) {
    return refuse(thrown, verb);
  }
}

function refuse(thrown: unknown, verb: Verb): number {
  if (thrown instanceof Misuse) {
    say(`drystead: ${thrown.message}\n\n${verb.help}`);
    return 2;
  }
  const failure = asFailure(thrown);
  const { code, message, remedy } = failure;
  say(`drystead: ${message}\n${remedy}${optionFor(failure)}\n(${code})\n`);
  return 1;
}

/** The option that gives what a refusal is for want of. */
function optionFor({ code, mark }: Failure): string {
  if (code === "ground/unit-unknown") return " Here: --vertical-unit m, ft or us-ft.";
  if (!mark) return "";
  return ` Here: --no-data ${mark.value} if it marks missing data, --keep-value ${mark.value} if it is ground.`;
}

/** npm starts scripts in the project's folder and says in INIT_CWD where the person stands. */
function startingFolder(): string {
  const byNpm = process.env.npm_lifecycle_event === "drystead";
  return (byNpm && process.env.INIT_CWD) || process.cwd();
}

function say(text: string): void {
  process.stderr.write(text);
}

/** As a shell counts a program that ends because nobody reads on: 128 and the signal's number. */
const NOBODY_READS = 141;

/** Ends when the whole text has left for standard output, or cannot: 1, or 141 where nobody reads on. */
function write(text: string): Promise<number> {
  return new Promise((done) => {
    process.stdout.write(text, (error) => done(error ? unwritten(error) : 0));
  });
}

function unwritten(error: NodeJS.ErrnoException): number {
  if (error.code === "EPIPE") return NOBODY_READS;
  const why = error.code === "ENOSPC" ? "the disk is full" : error.message;
  say(
    `drystead: The result could not be written to standard output: ${why}.\nMake room or write it elsewhere, and start again.\n(output/not-written)\n`,
  );
  return 1;
}

// each failed write is answered where it is made
process.stdout.on("error", () => {});
process.stderr.on("error", () => {});
process.removeAllListeners("warning");
process.on("warning", (warning) => {
  if (warning.name !== "ExperimentalWarning") say(`${warning.message}\n`);
});
process.exitCode = await main(process.argv.slice(2));
