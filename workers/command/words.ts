import { Misuse } from "./verb.ts";

/** Options a verb knows: how many values each takes. */
export type Known = Readonly<Record<string, "one" | "many">>;

export interface Read {
  readonly plain: readonly string[];
  readonly options: ReadonlyMap<string, readonly string[]>;
}

/**
 * Sorts the words of a command line into plain ones and options. An option takes `--name value` or
 * `--name=value`; one that takes many takes every word up to the next option, and may be repeated.
 * @throws Misuse for an unknown or repeated option and for one without its value
 */
export function readWords(words: readonly string[], known: Known): Read {
  const plain: string[] = [];
  const options = new Map<string, string[]>();
  for (let i = 0; i < words.length; ) {
    const word = words[i++]!;
    if (!isOption(word)) {
      plain.push(word);
      continue;
    }
    const [name, given] = split(word);
    const takes = Object.hasOwn(known, name) ? known[name] : undefined;
    if (!takes) throw new Misuse(`Unknown option ${name}.`);
    if (takes === "one" && options.has(name)) throw new Misuse(`${name} is given twice.`);
    const values = options.get(name) ?? [];
    const before = values.length;
    if (given !== null) values.push(given);
    const most = takes === "one" ? before + 1 : Number.POSITIVE_INFINITY;
    while (values.length < most && i < words.length && !isOption(words[i]!)) {
      values.push(words[i++]!);
    }
    if (values.length === before || values.at(-1) === "")
      throw new Misuse(`${name} needs a value.`);
    options.set(name, values);
  }
  return { plain, options };
}

/** A negative number is a value, and so is `-`, standard input or output. */
function isOption(word: string): boolean {
  return word.startsWith("-") && word !== "-" && !/^-\.?\d/.test(word);
}

function split(word: string): [string, string | null] {
  const equals = word.indexOf("=");
  return equals < 0 ? [word, null] : [word.slice(0, equals), word.slice(equals + 1)];
}
