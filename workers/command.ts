/**
 * The terminal program: the engine of the screen, without the screen. Results go to standard output,
 * everything said to standard error. Ends with 0, with 1 for input that is refused (with the reason), and
 * with 2 for a command line that cannot be followed.
 */
import { outputLostWords } from "../shared/words/terminal.ts";
import { runProgram } from "./command/program.ts";

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
  say(`drystead: ${outputLostWords(error)}\n(output/not-written)\n`);
  return 1;
}

// each failed write is answered where it is made
process.stdout.on("error", () => {});
process.stderr.on("error", () => {});
process.removeAllListeners("warning");
process.on("warning", (warning) => {
  if (warning.name !== "ExperimentalWarning") say(`${warning.message}\n`);
});
process.exitCode = await runProgram(process.argv.slice(2), {
  folder: startingFolder(),
  say,
  write,
  debug: Boolean(process.env.DRYSTEAD_DEBUG),
});
