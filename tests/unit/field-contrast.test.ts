import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { ROOT } from "../helpers/terminal.ts";

/* Contrast in sunlight, from the declared colors. Source: WCAG 2.2, success criterion 1.4.6 (enhanced), 7:1. */

const LEAST = 7;
const css = (path: string) => readFileSync(join(ROOT, path), "utf8");
const THEME = css("src/ui/theme.css");
const FIELD = css("src/field/field.css");

interface Rule {
  readonly selector: string;
  readonly sets: ReadonlyMap<string, string>;
}

/** The innermost rules of a style sheet, with what they set. */
function rulesOf(text: string): Rule[] {
  const found = text.replace(/\/\*.*?\*\//gs, "").matchAll(/([^{}]+)\{([^{}]*)\}/g);
  return [...found].map(([, selector, body]) => ({
    selector: selector!.trim(),
    sets: new Map(
      body!.split(";").flatMap((each) => {
        const [, name, value] = /^\s*([\w-]+)\s*:\s*(.+?)\s*$/s.exec(each) ?? [];
        return name && value ? [[name, value] as const] : [];
      }),
    ),
  }));
}

/** The custom properties of a theme; dark ones come after those of light. */
function colors(theme: "light" | "dark"): ReadonlyMap<string, string> {
  const rules = [...rulesOf(THEME), ...rulesOf(FIELD)];
  const isDark = ({ selector }: Rule) => selector.includes('[data-theme="dark"]');
  const taken = rules.filter((rule) => theme === "dark" || !isDark(rule));
  return new Map(
    [...taken.filter((rule) => !isDark(rule)), ...taken.filter(isDark)].flatMap(({ sets }) =>
      [...sets].filter(([name]) => name.startsWith("--")),
    ),
  );
}

function rgb(value: string, named: ReadonlyMap<string, string>): number[] | null {
  const [, name] = /^var\((--[\w-]+)\)$/.exec(value) ?? [];
  if (name) return rgb(named.get(name) ?? "", named);
  const [, short] = /^#([\da-f]{3})$/i.exec(value) ?? [];
  const hex = short ? short.replace(/./g, "$&$&") : /^#([\da-f]{6})$/i.exec(value)?.[1];
  return hex ? [0, 2, 4].map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255) : null;
}

function luminance(color: readonly number[]): number {
  const [r, g, b] = color.map((part) =>
    part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4,
  );
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
}

function contrast(one: readonly number[], other: readonly number[]): number {
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (light! + 0.05) / (dark! + 0.05);
}

it("contrast is calculated as published", () => {
  const none = new Map();
  expect(contrast(rgb("#000", none)!, rgb("#ffffff", none)!)).toBeCloseTo(21, 9);
  expect(contrast(rgb("#777777", none)!, rgb("#fff", none)!)).toBeCloseTo(4.48, 2);
});

describe.each(["light", "dark"] as const)("text of the field views, %s", (theme) => {
  const named = colors(theme);
  const texts = rulesOf(FIELD)
    .filter(({ sets }) => sets.has("color") && !/inherit|currentColor/.test(sets.get("color")!))
    .filter(({ selector }) => theme === "dark" || !selector.includes('[data-theme="dark"]'));

  it("is told from its ground at 7 to 1", () => {
    expect(texts.length).toBeGreaterThan(10);
    const faint = texts.flatMap(({ selector, sets }) => {
      const behind = sets.get("background") ?? "var(--panel)";
      const [text, ground] = [rgb(sets.get("color")!, named), rgb(behind, named)];
      if (!text || !ground) return [`${selector}: ${sets.get("color")} on ${behind} is not known`];
      const found = contrast(text, ground);
      return found < LEAST ? [`${selector}: ${found.toFixed(2)} on ${behind}`] : [];
    });
    expect(faint).toEqual([]);
  });
});
