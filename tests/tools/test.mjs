/**
 * Everything that must hold, in order; stops at the first step that fails. The checks without tests run at the same
 * time and all say what they found. The last line of standard output counts the tests, from vitest's own results; a
 * check without tests that fails counts as one.
 */
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { findBrowser } from "./browser.mjs";
import { run, runAside } from "./run.mjs";

const results = mkdtempSync(join(tmpdir(), "drystead-test-"));

const CHECKS = [
  ["types", "npm", ["run", "-s", "types"]],
  ["format and lint", "npx", ["biome", "check", "."]],
  ["dead code", "npx", ["knip"]],
  ["import arrows", process.execPath, ["tests/tools/arrows.mjs"]],
  ["build", "npm", ["run", "-s", "build"]],
];
/** Each step is one run of its projects: files of two projects share the processors until the last is done. */
const PROJECTS = [["unit", "reference"], ["browser"]];

/** No run should take longer, seconds, on a machine of two cores that does nothing else. */
const MOST_S = 600;
/** Seconds of each step that ran. */
const took = [];

async function timed(name, work) {
  process.stderr.write(`\n--- ${name}\n`);
  const start = performance.now();
  const count = await work();
  const seconds = (performance.now() - start) / 1000;
  took.push([name, seconds]);
  process.stderr.write(
    `--- ${name}: ${count.failed === 0 ? "passed" : "FAILED"} in ${seconds.toFixed(1)} s\n`,
  );
  return count;
}

/** All checks at once: each leaves part of two processors idle. What each says is written when it has ended. */
function checks() {
  return timed(CHECKS.map(([name]) => name).join(", "), async () => {
    const failed = await Promise.all(
      CHECKS.map(async ([name, program, args]) => {
        const { code, said } = await runAside(program, args);
        const isFailed = code !== 0;
        process.stderr.write(`${isFailed ? `\n--- ${name}: FAILED\n` : ""}${said}`);
        return isFailed;
      }),
    );
    return { passed: 0, failed: failed.filter(Boolean).length };
  });
}

function projects(names) {
  return timed(`${names.join(" and ")} tests`, () => {
    const browser = names.includes("browser") ? { CHROME_PATH: findBrowser() } : {};
    const file = join(results, `${names[0]}.json`);
    const chosen = names.flatMap((name) => ["--project", name]);
    const reporters = ["--reporter=default", "--reporter=json", `--outputFile.json=${file}`];
    const code = run("npx", ["vitest", "run", ...chosen, ...reporters], browser);
    return counted(file, code);
  });
}

/** Tests passed and failed; a file that would not load, and a test that was left out, count as failed. */
function counted(file, code) {
  const report = read(file);
  if (!report) return { passed: 0, failed: 1 };
  const unloaded = report.testResults.filter(
    ({ status, assertionResults }) => status === "failed" && assertionResults.length === 0,
  ).length;
  const leftOut = report.numPendingTests + report.numTodoTests;
  const failed = report.numFailedTests + unloaded + leftOut;
  return { passed: report.numPassedTests, failed: failed === 0 && code !== 0 ? 1 : failed };
}

function read(file) {
  try {
    return JSON.parse(readFileSync(file, "utf8"));
  } catch {
    return null;
  }
}

const steps = [checks, ...PROJECTS.map((names) => () => projects(names))];
let passed = 0;
let failed = 0;
for (const step of steps) {
  const count = await step();
  passed += count.passed;
  failed += count.failed;
  if (failed > 0) break;
}
const whole = took.reduce((sum, [, seconds]) => sum + seconds, 0);
const each = took.map(([name, seconds]) => `${name} ${seconds.toFixed(0)}`).join(", ");
process.stderr.write(`\n--- ${whole.toFixed(0)} s in all: ${each}\n`);
if (whole > MOST_S) {
  process.stderr.write(
    `--- That is over ${MOST_S / 60} minutes: look for the test that takes it, or for what else runs on this machine.\n`,
  );
}
rmSync(results, { recursive: true, force: true });
process.stdout.write(`\n${passed} passed, ${failed} failed\n`);
process.exitCode = failed === 0 ? 0 : 1;
