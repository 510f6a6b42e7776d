import { spawn, spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";

/** The project's folder, whatever folder the command was started from. */
export const ROOT = fileURLToPath(new URL("../../", import.meta.url));

/**
 * Runs a program in the project's folder with its output on this program's standard error, so that
 * standard output stays free for results. Returns the exit code.
 */
export function run(program, args, environment = {}) {
  const { status, error } = spawnSync(program, args, {
    cwd: ROOT,
    stdio: ["ignore", 2, 2],
    env: { ...process.env, ...environment },
    shell: process.platform === "win32",
  });
  if (error) process.stderr.write(`${program}: ${error.message}\n`);
  return status ?? 1;
}

/** Runs a program beside others. Resolves to its exit code and all it said, on either output. */
export function runAside(program, args) {
  return new Promise((done) => {
    const child = spawn(program, args, {
      cwd: ROOT,
      stdio: ["ignore", "pipe", "pipe"],
      shell: process.platform === "win32",
    });
    let said = "";
    for (const output of [child.stdout, child.stderr]) {
      output.setEncoding("utf8").on("data", (text) => {
        said += text;
      });
    }
    child.on("error", ({ message }) => {
      said += `${program}: ${message}\n`;
    });
    child.on("close", (code) => done({ code: code ?? 1, said }));
  });
}

/** Says what is wrong and what to do, and ends the program. */
export function giveUp(message) {
  process.stderr.write(`${message}\n`);
  process.exit(1);
}
