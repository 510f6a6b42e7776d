import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { AxeResults } from "axe-core";
import type { Page } from "playwright-core";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** Serious and critical violations of the axe rules on the page as it stands, in words; `parts` are selectors. */
export async function seriousViolations(
  page: Page,
  parts: readonly string[] = ["body"],
): Promise<string[]> {
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(AXE);
  const results = await page.evaluate(
    (selectors) => {
      const { axe } = window as unknown as {
        axe: { run: (where: string[][]) => Promise<AxeResults> };
      };
      return axe.run(selectors);
    },
    parts.map((part) => [part]),
  );
  return results.violations
    .filter(({ impact }) => impact === "serious" || impact === "critical")
    .flatMap(({ id, nodes }) =>
      nodes.map((node) => `${id}: ${node.target.join(" ")} ${node.failureSummary ?? ""}`),
    );
}
