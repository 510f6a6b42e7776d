import * as v from "valibot";
import { isCleanText, shown } from "./plan-text.ts";
import { FILE_UNITS } from "./setting.ts";
import { inGroup, SETTINGS, type SettingPath } from "./settings.ts";

/** A finite number from `least` to `most`, named in the message by `words`. */
export function quantity(words: string, least: number, most: number, unit = "") {
  const range = `from ${least} to ${most}${unit && ` ${unit}`}`;
  return v.custom<number>(
    (value) => typeof value === "number" && value >= least && value <= most,
    (issue) => `Expected ${words} ${range}; came ${shown(issue.input)}.`,
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
  return v.picklist(
    allowed,
    (issue) => `Expected ${words} to be one of ${allowed.join(", ")}; came ${shown(issue.input)}.`,
  );
}

/** True or false. */
export function yesOrNo(words: string) {
  return v.boolean((issue) => `Expected ${words} as true or false; came ${shown(issue.input)}.`);
}

/** Plain text of `least` to `most` characters; when `least` is above 0, with something to be seen. */
export function text(words: string, least: number, most: number) {
  return v.custom<string>(
    (value) =>
      typeof value === "string" && value.trim().length >= least && isCleanText(value, most),
    (issue) =>
      `Expected ${words} as ${least} to ${most} characters of plain text; came ${shown(issue.input)}.`,
  );
}

/** An object with these entries and no others. */
export function fields<T extends v.ObjectEntries>(words: string, entries: T) {
  return v.strictObject(entries, (issue) => {
    if (issue.expected === "never") {
      return `Expected ${words} without the unknown entry ${issue.received}.`;
    }
    const names = Object.keys(entries).join(", ");
    return `Expected ${words} as an object with ${names}; came ${shown(issue.input)}.`;
  });
}
