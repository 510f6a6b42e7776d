import { asFailure, type Failure, Refusal } from "../../shared/failure.ts";

const GO_ON = "You can go on. Save the plan as a file before you close this page.";

/** What the browser's refusal to save something means for the person. */
export function autosaveFailure(thrown: unknown): Failure {
  if (thrown instanceof Refusal) return asFailure(thrown);
  const { name, message } = thrown instanceof Error ? thrown : new Error(String(thrown));
  if (name === "QuotaExceededError") {
    return {
      code: "autosave/full",
      message: "The browser has no room left: your last edits are not saved.",
      remedy: `${GO_ON} Once disk space is free, the plan is saved again.`,
    };
  }
  return {
    code: "autosave/refused",
    message: `The browser does not save this plan: ${message}`,
    remedy: `${GO_ON} A private window or blocked site data may be the cause.`,
  };
}

/** What the browser's refusal to save the elevation data means for the person; the plan alone is still saved. */
export function terrainFailure(thrown: unknown): Failure {
  const failure = autosaveFailure(thrown);
  if (failure.code !== "autosave/full") return failure;
  return {
    ...failure,
    message: "The browser has no room left to save this elevation data.",
    remedy: "You can go on. After the page is closed, open the files again.",
  };
}

/** The plan is saved again after there was no room for it. */
export function storedAgain(): Failure {
  return {
    code: "autosave/again",
    message: "The plan is saved in this browser again.",
    remedy: "",
  };
}

/** The saved plan could not be opened. */
export function unreadable(cause: Failure): Failure {
  return {
    code: "autosave/unreadable",
    message: `The plan saved in this browser cannot be opened: ${cause.message}`,
    remedy: "It is left as it is. Open the plan from its file, or go on with a new one.",
  };
}

/** The plan is edited on another open page. */
export function viewOnly(): Failure {
  return {
    code: "autosave/view-only",
    message: "This plan is open for editing on another page; here it can only be looked at.",
    remedy: "Press Edit here first, or work on a copy.",
  };
}

/** Another page took the plan over while this one did not answer. */
export function takenOver(): Failure {
  return {
    code: "autosave/taken-over",
    message: "Another page has taken this plan over, because this one did not answer.",
    remedy: "This page goes on with its own copy. Nothing is lost in either.",
  };
}

/** Every place to save a plan is held. */
export function noSlot(): Failure {
  return {
    code: "autosave/too-many-pages",
    message: "So many pages of Drystead are open that this one's plan is not saved.",
    remedy: "Save the plan as a file before you close this page, or close other pages and reload.",
  };
}

/** The plan is back without its ground. */
export function terrainLost(): Failure {
  return {
    code: "autosave/terrain-lost",
    message: "The plan is back, but the browser has lost the elevation data saved with it.",
    remedy: "Open the elevation data again in Elevation data.",
  };
}
