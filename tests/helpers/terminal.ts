import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { runProgram } from "../../workers/command/program.ts";

/** The project's folder. */
export const ROOT = fileURLToPath(new URL("../../", import.meta.url));

/** How a run of the terminal program ended: exit code, standard output, standard error. */
export interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly said: string;
}

/** Node's words that start the terminal program. */
const START = ["--import", fileURLToPath(import.meta.resolve("tsx")), `${ROOT}workers/command.ts`];
const environment = { ...process.env, npm_lifecycle_event: undefined };

/** Runs a command line of the terminal program in this process, from a folder. */
export async function drystead(words: readonly string[], folder = ROOT): Promise<Ended> {
  let out = "";
  let said = "";
  const say = (text: string) => {
    said += text;
  };
  const write = async (text: string) => {
    out += text;
    return 0;
  };
  const code = await runProgram(words, { folder, say, write, debug: false });
  return { code, out, said };
}

/** Starts the terminal program in a process of its own, as a person does, from a folder. */
export function startDrystead(words: readonly string[], folder = ROOT): Ended {
  const started = spawnSync(process.execPath, [...START, ...words], {
    cwd: folder,
    encoding: "utf8",
    env: environment,
    maxBuffer: 1e8,
  });
  return { code: started.status, out: started.stdout, said: started.stderr };
}

/** A run of the terminal program that goes on. */
export interface Running {
  readonly child: ChildProcess;
  /** What it has said so far. */
  readonly said: () => string;
  /** Waits until it has said something. */
  readonly says: (wanted: RegExp) => Promise<void>;
}

/** Starts the terminal program in a process of its own, and lets it run. */
export function runDrystead(words: readonly string[], folder = ROOT): Running {
  const child = spawn(process.execPath, [...START, ...words], {
    cwd: folder,
    env: environment,
    stdio: ["ignore", "ignore", "pipe"],
  });
  let said = "";
  child.stderr!.on("data", (data: Buffer) => {
    said += data.toString();
  });
  const says = async (wanted: RegExp) => {
    while (!wanted.test(said)) {
      if (child.exitCode !== null) throw new Error(`It has ended, and said: ${said}`);
      await new Promise((done) => setTimeout(done, 20));
    }
  };
  return { child, said: () => said, says };
}

/** Starts the terminal program from a shell: `line` with `drystead` for the program. */
export function shell(line: string, folder = ROOT): Ended {
  const program = [process.execPath, ...START].map((word) => JSON.stringify(word)).join(" ");
  const started = spawnSync("bash", ["-c", line.replace("drystead", () => program)], {
    cwd: folder,
    encoding: "utf8",
    env: environment,
    maxBuffer: 1e8,
  });
  return { code: started.status, out: started.stdout, said: started.stderr };
}
