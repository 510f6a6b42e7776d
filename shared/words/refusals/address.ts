import type { RefusalTexts } from "./text.ts";

interface AtHost {
  readonly host: string;
}

type Lie =
  | { readonly sends: "nothing" | "another-part" }
  | { readonly sends: "bytes"; readonly bytes: number; readonly wanted: number };

const DOWNLOAD = "Download the file and open it here.";
const NETWORK = "Try again on a better network, or download the file and open it here.";

/** Of reading elevation data at a web address. */
export const ADDRESS_REFUSALS = {
  "address/no-ranges": ({ host }: AtHost) => [
    `Expected ${host} to send parts of the file; it sends only the whole.`,
    "Download the file and open it here, or ask whoever runs that server to allow range requests.",
  ],
  "address/elsewhere": ({ host, to }: AtHost & { to: string }) => [
    `Expected the file at ${host}; it sends on to ${to}. Nothing was fetched there.`,
    "Open that address, if you know who runs it.",
  ],
  "address/answer": ({ host, status }: AtHost & { status: number }) => [
    `Expected a part of the file from ${host}; it answers ${status}.${status === 401 || status === 403 ? " It requires a name and a password." : ""}`,
    "Check the address, or download the file and open it here.",
  ],
  "address/slow": ({ host }: AtHost) => [
    `Expected a part of the file from ${host} in time; it did not come, although it was requested more than once.`,
    NETWORK,
  ],
  "address/certificate": ({ host, cause }: AtHost & { cause: string }) => [
    `Expected ${host} to show a certificate that is trusted here; its certificate is not (${cause}).`,
    "Ask whoever runs that server, or download the file from a place you trust and open it here.",
  ],
  "address/unreachable": ({ host, isPage }: AtHost & { isPage: boolean }) => [
    `Expected an answer from ${host}; none came${isPage ? ", or the server does not let other pages read it (CORS), or its certificate is not trusted (https)" : ""}, or it was cut off each time.`,
    "Check address and network, or download the file and open it here.",
  ],
  "address/lies": (lie: AtHost & Lie) => [
    `Expected the file at ${lie.host} to be as the server says; it gives its length ${lieWords(lie)}.`,
    DOWNLOAD,
  ],
  "address/cut-off": ({ host }: AtHost) => [
    `Expected a whole part of the file from ${host}; it was cut off each time.`,
    NETWORK,
  ],
  "address/changed": ({ host }: AtHost) => [
    `Expected the file at ${host} to stay as it was when it was opened; it has changed since.`,
    "Open the address again.",
  ],
  "address/no-length": ({ host, isPage }: AtHost & { isPage: boolean }) => [
    `Expected ${host} to say how long the file is; it does not${isPage ? ", or does not let other pages read it (Content-Range, Content-Length)" : ""}.`,
    DOWNLOAD,
  ],
} satisfies RefusalTexts;

function lieWords(lie: Lie): string {
  switch (lie.sends) {
    case "nothing":
      return "and then says that this part does not exist";
    case "another-part":
      return "and sends another part than was requested";
    case "bytes":
      return `and sends ${lie.bytes} bytes where ${lie.wanted} were requested`;
  }
}
