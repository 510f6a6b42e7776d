import { type Outcome, outcomeOf, refusal } from "./failure.ts";

/** Where a raster is to be read from, in ranges. */
export interface RasterAddress {
  readonly href: string;
  /** `https://host:port`: the one place that is asked. */
  readonly origin: string;
  /** As a person knows it: `host:port`. */
  readonly host: string;
  /** The file's name, for the plan and for messages. */
  readonly name: string;
}

const HTTP = /^https?:\/\//i;
/** A host by its name or number, as a content security policy can name it alone. */
const HOST = /^[a-z0-9.-]+(:\d+)?$/i;

/** True for a word that begins as a web address does. */
export function isAddress(word: string): boolean {
  return HTTP.test(word);
}

/** A web address of a raster: http or https, one host, no name and password. Failure: `address/unreadable`. */
export function readRasterAddress(text: string): Outcome<RasterAddress> {
  return outcomeOf(() => {
    const plain = text.trim();
    const url =
      isAddress(plain) && !/\s/.test(plain) && URL.canParse(plain) ? new URL(plain) : null;
    if (!url || !HOST.test(url.host) || url.username !== "" || url.password !== "") {
      throw refusal("address/unreadable", { came: plain.slice(0, 80) });
    }
    url.hash = "";
    const last = url.pathname.split("/").at(-1) ?? "";
    return {
      ...{ href: url.href, origin: url.origin, host: url.host },
      name: nameOf(last) || url.host,
    };
  });
}

function nameOf(segment: string): string {
  try {
    return decodeURIComponent(segment).slice(0, 200);
  } catch {
    return segment.slice(0, 200);
  }
}
