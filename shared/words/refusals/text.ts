import type { Failure } from "../../failure.ts";
import type { Units } from "../units.ts";

/** Says one reason to refuse: what was expected and what came, and what to do; `say` says a reason inside it. */
export type SayRefusal = (
  given: never,
  units: Units,
  say: (why: Failure) => RefusalText,
) => RefusalText;

export type RefusalText = readonly [message: string, remedy: string];

/** The texts of a part, by the code of each reason. */
export type RefusalTexts = Readonly<Record<string, SayRefusal>>;
