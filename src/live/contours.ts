import type { ContoursRequest } from "../../shared/messages.ts";
import { engine } from "../engine.ts";
import { latest } from "./latest.ts";

/** The contours of what is looked at: one request under way, the newest view next. */
export const contours = latest((request: ContoursRequest, signal) =>
  engine.contours(request, { signal }),
);
