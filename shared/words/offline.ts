/** Whether the program starts without a network: its files are kept, are being fetched, or cannot be kept. */
export type OfflineState = "ready" | "fetching" | "not-here";

/** The same in one line. */
export const OFFLINE_WORDS: Readonly<Record<OfflineState, string>> = {
  ready: "Starts without a network: yes",
  fetching: "Starts without a network: not yet",
  "not-here": "Starts without a network: not at this address",
};
