import { Refusal } from "../../shared/failure.ts";
import { installedBrowser, WHERE_LOOKED } from "./installed-browser.mjs";

/**
 * Path of an installed Chrome or Chromium, which lays pages out.
 * @throws Refusal `print/no-browser`
 */
export function findBrowser(): string {
  const found = installedBrowser((given) => {
    throw noBrowser(`CHROME_PATH is ${given}, which is not a program that runs.`);
  });
  if (found) return found;
  throw noBrowser(`Looked for ${WHERE_LOOKED}.`);
}

function noBrowser(looked: string): Refusal {
  return new Refusal(
    "print/no-browser",
    `Expected an installed Chrome or Chromium, which lays the pages out; found none. ${looked}`,
    "Install one (Debian: apt-get install chromium), or set CHROME_PATH to its program.",
  );
}
