import { spawnSync } from "node:child_process";
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

/** Says what is wrong and what to do, and ends the program. */
export function giveUp(message) {
  process.stderr.write(`${message}\n`);
  process.exit(1);
}
