import { readFileSync } from "node:fs";
import type { ServerResponse } from "node:http";
import { fileURLToPath } from "node:url";
import type { Connect, Plugin } from "vite";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const FRAME_PAGE = "base-map-frame.html";

/**
 * Sends each page's own content security policy as a header too, with who may frame it, which a page cannot say
 * itself: nobody, and our page alone the base map's frame.
 */
export function servedPolicy(): Plugin {
  const page = `${policyIn("index.html")}; frame-ancestors 'none'`;
  const frame = `${policyIn(`public/${FRAME_PAGE}`)}; frame-ancestors 'self'`;
  const send = (request: Connect.IncomingMessage, answer: ServerResponse, next: () => void) => {
    const path = new URL(request.url ?? "/", "http://localhost").pathname;
    answer.setHeader("Content-Security-Policy", path.endsWith(`/${FRAME_PAGE}`) ? frame : page);
    next();
  };
  return {
    name: "served-policy",
    configureServer: ({ middlewares }) => void middlewares.use(send),
    configurePreviewServer: ({ middlewares }) => void middlewares.use(send),
  };
}

function policyIn(file: string): string {
  const found = /http-equiv="Content-Security-Policy"\s+content="([^"]+)"/.exec(
    readFileSync(ROOT + file, "utf8"),
  );
  if (!found?.[1]) throw new Error(`Expected a content security policy in ${file}; there is none.`);
  return found[1];
}
