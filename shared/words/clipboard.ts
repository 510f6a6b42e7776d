import type { Failure } from "../failure.ts";

/** That a table is on the clipboard. */
export function copiedWords(label: string): Failure {
  return {
    code: "export/copied",
    message: `${label} copied.`,
    remedy: "Paste it into a spreadsheet: every column names its unit.",
  };
}

/** That the browser lets no page write to the clipboard here. */
export function clipboardRefused(): Failure {
  return {
    code: "export/no-clipboard",
    message: "The browser does not let this page copy.",
    remedy: "Save the table as a CSV file instead, and open that in the spreadsheet.",
  };
}
