import { resolve } from "node:path";
import { bugText } from "../../shared/bug-report.ts";
import { asFailure, type Failure, givenOf } from "../../shared/failure.ts";
import { isAddress } from "../../shared/raster-address.ts";
import { addTexts, failureWords } from "../../shared/words/failure.ts";
import { EXPORT_REFUSALS } from "../../shared/words/refusals/exports.ts";
import { LATE_REFUSALS } from "../../shared/words/refusals/late.ts";
import { TERMINAL_REFUSALS } from "../../shared/words/refusals/terminal.ts";
import { optionWords } from "../../shared/words/terminal.ts";
import { exportLine } from "./export.ts";
import { forecast } from "./forecast.ts";
import { print } from "./print.ts";
import { systemIn } from "./report-units.ts";
import { site } from "./site.ts";
import { size } from "./size.ts";
import { sweep } from "./sweep.ts";
import { sweepWorker } from "./sweep-worker.ts";
import { trace } from "./trace.ts";
import { Misuse, NotAllDone, NotWritten, type Verb } from "./verb.ts";

/** Where a run of the program stands and speaks. */
interface Host {
  /** The folder that file names count from. */
  readonly folder: string;
  /** Says something on standard error. */
  readonly say: (text: string) => void;
  /** Writes the result to standard output; the exit code that follows. */
  readonly write: (text: string) => Promise<number>;
  /** True: an error in the program is written with where it happened. */
  readonly debug: boolean;
}

const VERBS: readonly Verb[] = [size, site, trace, sweep, sweepWorker, exportLine, print, forecast];

const NAME_WIDTH = 2 + Math.max(...VERBS.map(({ name }) => name.length));

const USAGE = `drystead VERB ...

${VERBS.map(({ name, summary }) => `  ${name.padEnd(NAME_WIDTH)}${summary}`).join("\n")}

drystead VERB --help tells more. Exit codes: 0 done, 1 input refused, 2 wrong command line, 3 done
but for what standard error names.
`;

const WHERE_HINT =
  "Set DRYSTEAD_DEBUG=1 and run it again to see where in the program it happened.\n";

addTexts({ ...EXPORT_REFUSALS, ...LATE_REFUSALS, ...TERMINAL_REFUSALS });

/** Runs one command line, the words after the program's name; the exit code. */
export async function runProgram(words: readonly string[], host: Host): Promise<number> {
  const { folder, say, write } = host;
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
      startEngine: async () => (await import("../engine.ts")).makeEngine(),
      resolve: (path) => (isAddress(path) ? path : resolve(folder, path)),
      write: async (text) => {
        const code = await write(text);
        if (code !== 0) throw new NotWritten(code);
      },
      say: (message) => say(`${message}\n`),
    });
    return await write(result);
  } catch (thrown) {
    return refuse(thrown, verb, rest, host);
  }
}

function refuse(
  thrown: unknown,
  verb: Verb,
  words: readonly string[],
  { say, debug }: Host,
): number {
  if (thrown instanceof NotWritten) return thrown.code;
  if (thrown instanceof NotAllDone) return 3;
  if (thrown instanceof Misuse) {
    say(`drystead: ${thrown.message}\n\n${verb.help}`);
    return 2;
  }
  const failure = asFailure(thrown);
  const { bug } = failure;
  const about = reasonIn(failure);
  const { message, remedy } = failureWords(failure, systemIn(words));
  say(`drystead: ${message}\n${remedy}${optionWords(about)}\n(${about.code})\n`);
  if (bug) say(debug ? `${bugText(bug)}\n` : WHERE_HINT);
  return 1;
}

/** The reason in a failure that adds which file or machine it is of. */
function reasonIn(failure: Failure): Failure {
  const around =
    givenOf("forecast/in-file", failure) ??
    givenOf("plan/in-file", failure) ??
    givenOf("queue/worker-refused", failure);
  return around?.why ?? failure;
}
