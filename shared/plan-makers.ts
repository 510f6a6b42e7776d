import * as v from "valibot";
import { isCleanText } from "./plan-text.ts";
import { FILE_UNITS } from "./setting.ts";
import { inGroup, SETTINGS, type SettingPath } from "./settings.ts";
import {
  choiceWords,
  entriesWords,
  plainTextWords,
  quantityWords,
  unknownEntryWords,
  yesOrNoWords,
} from "./words/refusals/plan-values.ts";

/** A finite number from `least` to `most`, named in the message by `words`. */
export function quantity(words: string, least: number, most: number, unit = "") {
  return v.custom<number>(
    (value) => typeof value === "number" && value >= least && value <= most,
    (issue) => quantityWords(words, [least, most], unit, issue.input),
  );
}

/** The number at a setting's path, within the setting's range; `of` says of what it is one. */
export function setting(path: SettingPath, of = "") {
  const { name, kind, lowSI, highSI } = SETTINGS[path];
  return quantity(`${name}${of} (${path})`, lowSI, highSI, FILE_UNITS[kind]);
}

/** Every number of one group of settings, by its name. */
export function settingsIn<Group extends string>(group: Group) {
  return inGroup(group, (path) => setting(path));
}

/** One of a few words. */
export function oneOf<const T extends readonly string[]>(words: string, allowed: T) {
  return v.picklist(allowed, (issue) => choiceWords(words, allowed, issue.input));
}

/** True or false. */
export function yesOrNo(words: string) {
  return v.boolean((issue) => yesOrNoWords(words, issue.input));
}

/** Plain text of `least` to `most` characters; when `least` is above 0, with something to be seen. */
export function text(words: string, least: number, most: number) {
  return v.custom<string>(
    (value) =>
      typeof value === "string" && value.trim().length >= least && isCleanText(value, most),
    (issue) => plainTextWords(words, [least, most], issue.input),
  );
}

/** An object with these entries and no others. */
export function fields<T extends v.ObjectEntries>(words: string, entries: T) {
  return v.strictObject(entries, (issue) => {
    if (issue.expected === "never") return unknownEntryWords(words, issue.received);
    return entriesWords(words, Object.keys(entries), issue.input);
  });
}
