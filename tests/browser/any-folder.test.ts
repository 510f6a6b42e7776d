import { readFileSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join, normalize } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, expect, it } from "vitest";
import { type House, openHouse } from "../helpers/harness.ts";

/* The built program on a plain file server that knows nothing of it, in a folder of its own. */

const DIST = fileURLToPath(new URL("../../dist/", import.meta.url));
const FOLDER = "/county/flood%20plans/drystead/";
const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".woff2": "font/woff2",
  ".md": "text/markdown",
};

let house: House;
let server: Server;
beforeAll(async () => {
  house = await openHouse();
  server = createServer((request, answer) => {
    const path = request.url?.startsWith(FOLDER) ? request.url.slice(FOLDER.length) : null;
    const name = path === "" ? "index.html" : normalize(path ?? "");
    try {
      const bytes = readFileSync(join(DIST, name));
      answer.writeHead(path === null ? 404 : 200, {
        "Content-Type": TYPES[extname(name)] ?? "application/octet-stream",
      });
      answer.end(bytes);
    } catch {
      answer.writeHead(404).end();
    }
  });
  await new Promise<void>((resolve) => server.listen(0, "localhost", resolve));
});
afterAll(async () => {
  server.close();
  await house.close();
});

it("starts from any folder of any file server, with the licenses beside it", async () => {
  const { port } = server.address() as AddressInfo;
  const address = `http://localhost:${port}${FOLDER}`;
  const { page, troubles, leave } = await house.visit({ address, coarse: true });
  await page.getByText("17,879").first().waitFor();
  const notices = await page.request.get(`${address}third-party-notices.md`);
  expect(await notices.text()).toContain("## maplibre-gl ");
  expect(troubles).toEqual([]);
  await leave();
});
