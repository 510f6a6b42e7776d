/** Builds the program and serves it on this machine alone, on the next free port; prints the address. */
import { build, preview } from "vite";
import { ROOT } from "./run.mjs";

const FIRST_PORT = 4173;

await build({ root: ROOT, logLevel: "warn" });
const server = await preview({
  root: ROOT,
  logLevel: "warn",
  preview: { host: "localhost", port: FIRST_PORT, strictPort: false, open: false },
});
process.stdout.write(`Drystead: ${server.resolvedUrls?.local[0]}\n`);
process.stdout.write("Open this address in a browser; Ctrl+C stops.\n");
for (const signal of ["SIGINT", "SIGTERM"]) {
  process.on(signal, () => {
    server.close().finally(() => process.exit(0));
  });
}
