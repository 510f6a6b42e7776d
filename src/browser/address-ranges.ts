import { askRange, askSize } from "../../shared/ranges.ts";
import type { RangeGiven, RangeWanted } from "../../shared/wire.ts";
import { hostFrame } from "./host-frame.ts";

const frame = hostFrame("Elevation data");
/** Addresses that the person opened. */
let opened: ReadonlySet<string> = new Set();

/** Lets workers read from these addresses and no other; none closes the way out. */
export function openAddresses(hrefs: readonly string[]): void {
  opened = new Set(hrefs);
  if (hrefs.length === 0) frame.close();
}

/** Asks for a part of a file that the person opened, or its length. @throws TypeError for any other */
export function giveRange({ href, from, to }: RangeWanted): Promise<RangeGiven["answer"]> {
  if (!opened.has(href)) return Promise.reject(new TypeError("That address was not opened."));
  return to === null ? askSize(frame.fetch, href) : askRange(frame.fetch, href, from, to);
}
