import type { Check } from "../../shared/sizing-types.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { checkWords } from "../../shared/words/checks.ts";
import { Misuse } from "./verb.ts";

/** The option that says in which units sentences are. Figures of the JSON are SI whatever it says. */
export const UNITS_OPTION = { "--units": "one" } as const;

export const UNITS_HELP =
  "  --units us|metric  units of the sentences (us when left out); all other figures are SI";

/** The unit system of `--units`; US customary when it is not given. @throws Misuse for any other word */
export function systemFrom(options: ReadonlyMap<string, readonly string[]>): UnitSystem {
  const word = options.get("--units")?.[0] ?? "us";
  if (word === "us" || word === "metric") return word;
  throw new Misuse(`--units is us or metric; came ${word}.`);
}

/** Checks with their words beside their kind and figures. */
export function checksReport(checks: readonly Check[], system: UnitSystem) {
  return checks.map((check) => {
    const { message, remedy, rule, source } = checkWords(check, system);
    const { id, severity, fromM, toM, ...rest } = check;
    return { id, severity, fromM, toM, message, remedy, rule, source, ...rest };
  });
}

/** The unit system named on a command line, US customary where they do not say or cannot be followed. */
export function systemIn(words: readonly string[]): UnitSystem {
  const at = words.indexOf("--units");
  const word = at < 0 ? words.find((each) => each === "--units=metric") : words[at + 1];
  return word === "metric" || word === "--units=metric" ? "metric" : "us";
}
