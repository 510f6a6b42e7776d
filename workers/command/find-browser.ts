import { refusal } from "../../shared/failure.ts";
import { installedBrowser, NAMES, PLACES } from "./installed-browser.mjs";

/**
 * Path of an installed Chrome or Chromium, which lays pages out.
 * @throws Refusal `print/no-browser`
 */
export function findBrowser(): string {
  const found = installedBrowser((named) => {
    throw refusal("print/no-browser", { named, onPath: NAMES, places: PLACES });
  });
  if (found) return found;
  throw refusal("print/no-browser", { named: null, onPath: NAMES, places: PLACES });
}
