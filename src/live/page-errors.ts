import { asFailure } from "../../shared/failure.ts";
import { tell } from "../document/notices.ts";

/** Says in a notice what was thrown on the page and nobody caught; it goes to the console as well. */
export function tellPageErrors(): void {
  // an event without an error is the browser's own remark, not something thrown
  window.addEventListener("error", ({ error }) => {
    if (error) tellBug(error);
  });
  window.addEventListener("unhandledrejection", ({ reason }) => tellBug(reason));
}

function tellBug(thrown: unknown): void {
  if (thrown instanceof DOMException && thrown.name === "AbortError") return;
  const failure = asFailure(thrown);
  if (failure.code !== "cancelled") tell("error", failure);
}
