import { asFailure, failureOf, Refusal } from "./failure.ts";
import type { ProgramPart } from "./words/refusals/program.ts";

/**
 * A part of the program that is fetched when it is first needed.
 * @throws Refusal `program/part-missing` when it cannot be fetched or started; the next call tries again
 */
export async function loadPart<Part>(part: ProgramPart, load: () => Promise<Part>): Promise<Part> {
  try {
    return await load();
  } catch (thrown) {
    const { bug } = asFailure(thrown);
    throw new Refusal({ ...failureOf("program/part-missing", { part }), ...(bug && { bug }) });
  }
}
