import { asFailure, Refusal } from "./failure.ts";

/**
 * A part of the program that is fetched when it is first needed.
 * @param what names the part in the refusal, e.g. "the printed pages"
 * @throws Refusal `program/part-missing` when it cannot be fetched or started; the next call tries again
 */
export async function loadPart<Part>(what: string, load: () => Promise<Part>): Promise<Part> {
  try {
    return await load();
  } catch (thrown) {
    const { bug } = asFailure(thrown);
    throw new Refusal(
      "program/part-missing",
      `A part of the program could not be loaded: ${what}.`,
      "Check the network and that the folder the page came from is still there, then try again. If it happens again, reload the page: your plan is saved.",
      bug && { bug },
    );
  }
}
