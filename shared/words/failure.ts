import type { Failure } from "../failure.ts";
import type { UnitSystem } from "../units.ts";
import { bounded } from "./bounded.ts";
import type { RefusalTexts, SayRefusal } from "./refusals/text.ts";
import { REFUSALS } from "./refusals.ts";
import { unitsOf } from "./units.ts";

const texts: Record<string, SayRefusal> = { ...REFUSALS };

/** Has the reasons of a part that is loaded when it is needed said too. */
export function addTexts(more: RefusalTexts): void {
  Object.assign(texts, more);
}

/** False where the text is in a part that is not loaded yet. */
export function hasText({ code }: Failure): boolean {
  return code in texts;
}

/** Where the text could not be loaded. */
function withoutText(code: string) {
  return {
    message: `This was refused (${code}), and the text that says why could not be loaded.`,
    remedy:
      "Check the network, then try again. If it happens again, reload the page: your plan is saved.",
  };
}

/** What was expected and what came, and what to do, with its figures in one unit system. */
export function failureWords(
  { code, given }: Failure,
  system: UnitSystem,
): { readonly message: string; readonly remedy: string } {
  const say = texts[code];
  if (!say) return withoutText(code);
  const [message, remedy] = say(given as never, unitsOf(system), (why) => {
    const words = failureWords(why, system);
    return [words.message, words.remedy];
  });
  return { message: bounded(message), remedy: bounded(remedy) };
}

/** The same as one text. */
export function failureText(failure: Failure, system: UnitSystem): string {
  const { message, remedy } = failureWords(failure, system);
  return `${message} ${remedy}`;
}
