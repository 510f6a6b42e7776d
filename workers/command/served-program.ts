import { readFile, stat } from "node:fs/promises";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { dirname, extname, join, normalize } from "node:path";
import { fileURLToPath } from "node:url";
import { Refusal } from "../../shared/failure.ts";

const BUILT = join(dirname(fileURLToPath(import.meta.url)), "..", "..", "dist");
const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".mjs": "text/javascript",
  ".css": "text/css",
  ".json": "application/json",
  ".wasm": "application/wasm",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".woff2": "font/woff2",
};

/**
 * Serves the built program to this machine alone until it is closed.
 * @throws Refusal `print/not-built`
 */
export async function serveProgram() {
  if (!(await stat(join(BUILT, "index.html")).catch(() => null))) {
    throw new Refusal(
      "print/not-built",
      `Expected the built program in ${BUILT}; it is not there.`,
      "Run npm run build, and print again.",
    );
  }
  const server = createServer(async (request, answer) => {
    const path = normalize(decodeURIComponent(new URL(request.url ?? "/", "http://x").pathname));
    const file = join(BUILT, path.endsWith("/") ? `${path}index.html` : path);
    const bytes = file.startsWith(BUILT) ? await readFile(file).catch(() => null) : null;
    answer.statusCode = bytes ? 200 : 404;
    answer.setHeader("Content-Type", TYPES[extname(file)] ?? "application/octet-stream");
    answer.end(bytes ?? "");
  });
  await new Promise<void>((done) => server.listen(0, "localhost", done));
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://localhost:${port}/`,
    close: () => {
      server.closeAllConnections();
      server.close();
    },
  };
}
