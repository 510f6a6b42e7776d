import { createServer } from "node:http";
import type { AddressInfo } from "node:net";

/** What the browser asks of its maker on its own account, whatever page is open. */
const BROWSER_ITSELF = /(^|\.)(google|googleapis|gstatic|gvt1|google-analytics)\.com(:\d+)?$/;

/**
 * A proxy that the browser must use for every host but localhost. It answers nothing: it writes down
 * where something wanted to go, from whatever page or worker.
 */
export async function recordingProxy() {
  const requests: string[] = [];
  const note = (host: string, url: string) => {
    if (!BROWSER_ITSELF.test(host)) requests.push(url);
  };
  const server = createServer((request, answer) => {
    note(request.headers.host ?? "", request.url ?? "");
    answer.writeHead(502).end();
  });
  server.on("connect", (request, socket) => {
    note(request.url ?? "", request.url ?? "");
    // A browser that closes hangs up without waiting for the answer.
    socket.on("error", () => {});
    socket.end("HTTP/1.1 502 No way out\r\n\r\n");
  });
  await new Promise<void>((ready) => server.listen(0, "127.0.0.1", ready));
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}`,
    requests: requests as readonly string[],
    close: () => new Promise((closed) => server.close(closed)),
  };
}
