import { readFile, stat } from "node:fs/promises";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { dirname, extname, join, normalize, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { refusal } from "../../shared/failure.ts";

const BUILT = join(dirname(fileURLToPath(import.meta.url)), "..", "..", "dist");
const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript",
  ".mjs": "text/javascript",
  ".css": "text/css",
  ".json": "application/json",
  ".wasm": "application/wasm",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".woff2": "font/woff2",
};

/** The built program while it is served. */
export interface ServedProgram {
  readonly address: string;
  readonly close: () => void;
}

/**
 * Serves the built program to this machine alone until it is closed.
 * @throws Refusal `print/not-built`
 */
export async function serveProgram(): Promise<ServedProgram> {
  if (!(await stat(join(BUILT, "index.html")).catch(() => null))) {
    throw refusal("print/not-built", { folder: BUILT });
  }
  const server = createServer(async (request, answer) => {
    const file = fileFor(request.url ?? "/");
    const bytes = file === null ? null : await readFile(file).catch(() => null);
    answer.statusCode = bytes ? 200 : 404;
    answer.setHeader("Content-Type", TYPES[extname(file ?? "")] ?? "application/octet-stream");
    answer.end(bytes ?? "");
  });
  await new Promise<void>((done, failed) => {
    server.once("error", failed);
    server.listen(0, "127.0.0.1", done);
  });
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://localhost:${port}/`,
    close() {
      server.closeAllConnections();
      server.close();
    },
  };
}

/** The built file that an address names; null where it names none of them. */
function fileFor(address: string): string | null {
  try {
    const path = normalize(decodeURIComponent(new URL(address, "http://localhost").pathname));
    const file = join(BUILT, path.endsWith(sep) ? join(path, "index.html") : path);
    return file.startsWith(BUILT + sep) ? file : null;
  } catch {
    return null;
  }
}
