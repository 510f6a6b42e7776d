import { spawnSync } from "node:child_process";
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
