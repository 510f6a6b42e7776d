import type { Failure } from "../failure.ts";

/** Whether the program starts without a network: its files are kept, are being fetched, or cannot be kept. */
export type OfflineState = "ready" | "fetching" | "not-here";

/** The same in one line. */
export const OFFLINE_WORDS: Readonly<Record<OfflineState, string>> = {
  ready: "Starts without a network: yes",
  fetching: "Starts without a network: not yet",
  "not-here": "Starts without a network: not at this address",
};

/** That a newer version of the program is fetched and waits. */
export function newVersionFailure(): Failure {
  return {
    code: "program/new-version",
    message: "A new version of Drystead is here.",
    remedy: "Load it between two jobs. Until then you work on with this one; your plan is saved.",
  };
}
