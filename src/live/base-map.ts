import { signal } from "@preact/signals";
import { failureOf, type Outcome } from "../../shared/failure.ts";
import { recall, remember } from "../browser/remember.ts";

const KEY = "drystead.base-map";

/** A picture map under the ground, by an address the person gives; off until then. */
export interface BaseMap {
  /** Address with {z}, {x} and {y} for the tile. */
  readonly address: string;
  /** What its owner wants written on the map. */
  readonly credit: string;
  readonly on: boolean;
}

/** The base map, remembered on this machine. It is never on at a first start: nothing leaves the page. */
export const baseMap = signal<BaseMap>(remembered());

function remembered(): BaseMap {
  const none: BaseMap = { address: "", credit: "", on: false };
  try {
    const kept = JSON.parse(recall(KEY, "null")) as Partial<BaseMap> | null;
    if (typeof kept?.address !== "string" || !readBaseAddress(kept.address).ok) return none;
    return { address: kept.address, credit: String(kept.credit ?? ""), on: kept.on === true };
  } catch {
    return none;
  }
}

export function setBaseMap(next: BaseMap): void {
  baseMap.value = next;
  remember(KEY, JSON.stringify(next));
}

/** A host by its name or number, as a content security policy can name it alone. */
const HOST = /^https?:\/\/[a-z0-9.-]+(:\d+)?\//i;

/** Checks an address of map tiles: http or https, one host, and {z}, {x} and {y} after it. */
export function readBaseAddress(text: string): Outcome<string> {
  const address = text.trim();
  const whole = HOST.test(address) && !/\s/.test(address) && URL.canParse(address);
  if (whole && ["{z}", "{x}", "{y}"].every((part) => address.includes(part))) {
    return { ok: true, value: address };
  }
  return { ok: false, failure: failureOf("base-map/address") };
}
