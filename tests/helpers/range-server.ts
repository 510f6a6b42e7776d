import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";

/** How a server answers: as it should, or wrong in one way. */
export type Manner =
  | "well"
  | "whole"
  | "forbidden"
  | "missing"
  | "sends-on"
  | "slow"
  | "cut-once"
  | "cut-always"
  | "busy-once"
  | "longer"
  | "shorter"
  | "other-part"
  | "changes"
  | "no-cors"
  | "no-length";

export interface RangeServer {
  /** Address of the file answered in that manner. */
  readonly at: (manner: Manner) => string;
  /** Ranges that were asked for, in order. */
  readonly asked: string[];
  readonly bytesSent: () => number;
  readonly close: () => Promise<void>;
}

/** A server on this machine that holds one file, and others beside it by their names, and hands them out by ranges. */
export async function rangeServer(
  only: Uint8Array,
  name = "dem.tif",
  beside: ReadonlyMap<string, Uint8Array> = new Map(),
): Promise<RangeServer> {
  const asked: string[] = [];
  const seen = new Map<string, number>();
  let sent = 0;
  const server = createServer((request, answer) => {
    const manner = decodeURIComponent(request.url!.split("/")[1]!) as Manner;
    const turn = (seen.get(manner) ?? 0) + 1;
    seen.set(manner, turn);
    const file = beside.get(request.url!.split("/").at(-1)!) ?? only;
    asked.push(`${request.method} ${request.headers.range ?? ""}`.trim());
    sent += reply({ request, answer, file, manner, turn });
  });
  await listening(server);
  const { port } = server.address() as AddressInfo;
  return {
    at: (manner) => `http://localhost:${port}/${manner}/${name}`,
    asked,
    bytesSent: () => sent,
    close: () =>
      new Promise((done) => {
        server.closeAllConnections();
        server.close(() => done());
      }),
  };
}

function listening(server: Server): Promise<void> {
  return new Promise((done) => server.listen(0, "127.0.0.1", done));
}

interface Reply {
  readonly request: IncomingMessage;
  readonly answer: ServerResponse;
  readonly file: Uint8Array;
  readonly manner: Manner;
  readonly turn: number;
}

/** @returns bytes sent */
function reply({ request, answer, file, manner, turn }: Reply): number {
  if (manner !== "no-cors") {
    answer.setHeader("Access-Control-Allow-Origin", "*");
    answer.setHeader("Access-Control-Allow-Headers", "Range");
    answer.setHeader("Access-Control-Expose-Headers", "Content-Range, ETag");
  }
  answer.setHeader("ETag", manner === "changes" ? `"${turn}"` : '"one"');
  if (request.method === "HEAD") {
    if (manner !== "no-length") answer.setHeader("Content-Length", file.length);
    answer.end();
    return 0;
  }
  if (manner === "slow") return 0;
  const plain = { forbidden: 403, missing: 404, "sends-on": 302 }[manner as string];
  if (plain !== undefined || (manner === "busy-once" && turn === 2)) {
    if (plain === 302) answer.setHeader("Location", "http://elsewhere.example/dem.tif");
    answer.writeHead(plain ?? 503).end();
    return 0;
  }
  if (manner === "whole") {
    answer.writeHead(200).end(file);
    return file.length;
  }
  const [from, last] = /bytes=(\d+)-(\d+)/
    .exec(request.headers.range ?? "")!
    .slice(1)
    .map(Number);
  const to = Math.min(last! + 1, file.length);
  if (from! >= file.length) {
    answer.writeHead(416).end();
    return 0;
  }
  const shift = manner === "other-part" ? 1 : 0;
  const total = manner === "no-length" ? "*" : file.length + (manner === "longer" ? 200_000 : 0);
  answer.setHeader("Content-Range", `bytes ${from! + shift}-${to - 1 + shift}/${total}`);
  const part = file.subarray(from, manner === "shorter" ? to - 7 : to);
  const isCut = manner === "cut-always" || (manner === "cut-once" && turn === 2);
  answer.setHeader("Content-Length", manner === "shorter" ? part.length : to - from!);
  answer.writeHead(206);
  if (isCut) {
    answer.write(part.subarray(0, Math.floor(part.length / 2)), () => answer.destroy());
    return part.length / 2;
  }
  answer.end(part);
  return part.length;
}
