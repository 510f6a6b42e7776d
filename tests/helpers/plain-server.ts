import { readFileSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join, normalize } from "node:path";
import { fileURLToPath } from "node:url";

const DIST = fileURLToPath(new URL("../../dist/", import.meta.url));
const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".woff2": "font/woff2",
  ".md": "text/markdown",
  ".svg": "image/svg+xml",
  ".png": "image/png",
};

/** The built program in a folder of a plain file server that knows nothing of it. */
export interface PlainServer {
  readonly address: string;
  /** Changes a file on its way out; null = it is not there. */
  change: (name: string, bytes: Buffer) => Buffer | string | null;
  /** The network goes away, and comes back at the same address. */
  stop(): Promise<void>;
  start(): Promise<void>;
}

export async function plainServer(folder: string): Promise<PlainServer> {
  const server = createServer((request, answer) => {
    const path = request.url?.startsWith(folder) ? request.url.slice(folder.length) : null;
    const name = path === "" ? "index.html" : normalize(path ?? "");
    try {
      const bytes = path === null ? null : plain.change(name, readFileSync(join(DIST, name)));
      const type = TYPES[extname(name)] ?? "application/octet-stream";
      answer.writeHead(bytes === null ? 404 : 200, { "Content-Type": type }).end(bytes);
    } catch {
      answer.writeHead(404).end();
    }
  });
  const listen = (port: number) =>
    new Promise<void>((resolve) => server.listen(port, "localhost", resolve));
  await listen(0);
  const { port } = server.address() as AddressInfo;
  const plain: PlainServer = {
    address: `http://localhost:${port}${folder}`,
    change: (_name, bytes) => bytes,
    stop: async () => {
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
    start: () => listen(port),
  };
  return plain;
}
