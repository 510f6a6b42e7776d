import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { BRITISH, FOREIGN, NEVER, NEVER_ON_SCREEN } from "../helpers/never-said.ts";
import { sentencesGlued, wordsInSource } from "../helpers/words-in-source.ts";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));

/** Texts that may have a word of the list, by file, and why. */
const ALLOWED: readonly { readonly file: string; readonly text: RegExp; readonly why: string }[] = [
  { file: "document/edits/settings.ts", text: /^Weight, dry and loose$/, why: "weight of sand" },
  { file: "quantities/amounts.tsx", text: /^(?:dry, wet|Weight of the sand, dry)$/, why: "sand" },
  { file: "words/order-sheet.ts", text: /^\{\} dry, \{\} wet/, why: "sand, dry and wet" },
  { file: "pages/pages-room.tsx", text: /^Sheet \{\} of \{\}/, why: "a page's number on paper" },
  { file: "pages/pages-bar.tsx", text: /^\.sheet /, why: "a selector" },
  { file: "words/makeup/line.ts", text: /\bdry\b/, why: "weight of sand" },
  { file: "words/building-states.ts", text: /^dry$/, why: "an id" },
  { file: "words/watch.ts", text: /^sheet$/, why: "an id" },
  { file: "shared/handbook.ts", text: /sheet, (?:no date|Manitoba area)/, why: "a document" },
  { file: "refusals/plan-values.ts", text: /section\.sheet/, why: "a field of the file" },
  { file: "command/print-pages.ts", text: /^\.sheets-none/, why: "a selector" },
  {
    file: "command/sweep.ts",
    text: /"state" is the first .* dry \(/s,
    why: "a field of the answer",
  },
  { file: "command/trace.ts", text: /"dry" is null/, why: "a field of the answer" },
];

/** What a person reads: of `shared/words` also each word that stands alone. */
const said = ["src", "shared", "workers"]
  .flatMap((folder) => filesIn(folder, /\.tsx?$/))
  .flatMap((file) => {
    const source = readFileSync(join(ROOT, file), "utf8");
    const texts = wordsInSource(file, source, isOfWords(file));
    return texts.map((each) => ({ file, ...each }));
  });

function isOfWords(file: string): boolean {
  return file.startsWith("shared/words/");
}

/** Refusals of files may name what the file has: a raster, an alignment. */
const OF_FILES =
  /\/refusals\/(?:address|file-faults|ground|import-reading|plan|raster|terminal|vrt)\.ts$/;

function isNever({ file, text }: { readonly file: string; readonly text: string }): boolean {
  if (NEVER.test(text) || BRITISH.test(text)) return true;
  const isOnScreen = file.startsWith("src/") || (isOfWords(file) && !OF_FILES.test(file));
  return isOnScreen && NEVER_ON_SCREEN.test(text);
}

/** Values of a plan file are told in its own meters, and what may be typed in examples of either. */
const OWN_UNITS = /\/refusals\/(?:plan-values|typed)\.ts$/;

function filesIn(folder: string, name: RegExp): string[] {
  const found = readdirSync(join(ROOT, folder), { recursive: true, encoding: "utf8" });
  return found.filter((each) => name.test(each)).map((each) => `${folder}/${each}`);
}

function isAllowed({ file, text }: { readonly file: string; readonly text: string }): boolean {
  return ALLOWED.some((each) => file.endsWith(each.file) && each.text.test(text));
}

describe("what is written in the source for a person to read", () => {
  it("has no word that the trade does not use, no British spelling, and promises nothing", () => {
    const never = said.filter((each) => isNever(each) && !isAllowed(each));
    expect(never.map(({ file, line, text }) => `${file}:${line} ${text}`)).toEqual([]);
  });

  it("has figures with units only where they are written in both systems", () => {
    const countIn = (file: string, pattern: RegExp) =>
      said.filter((each) => each.file === file && pattern.test(each.text)).length;
    const files = [...new Set(said.map(({ file }) => file))].filter((file) =>
      /^shared\/(?:words|sections|holding|checks|checks-trace|time|survey)\//.test(file),
    );
    expect(files.length).toBeGreaterThan(100);
    const uneven = files.filter(
      (file) =>
        !OWN_UNITS.test(file) && countIn(file, FOREIGN.us) !== countIn(file, FOREIGN.metric),
    );
    expect(uneven).toEqual([]);
  });

  it("is put together from figures in shared/words alone", () => {
    const glued = filesIn("src", /\.tsx?$/).flatMap((file) =>
      sentencesGlued(file, readFileSync(join(ROOT, file), "utf8")).map(
        ({ line, text }) => `${file}:${line} ${text}`,
      ),
    );
    expect(glued).toEqual([]);
    const bad = `const a = formatLength(1, "us");
      const b = \`No more than \${a} over the limit\`;
      const c = <p>It is over its limit by {formatLength(1, "us")}.</p>;
      const d = \`Station \${formatStation(1, "us")}\`;`;
    expect(sentencesGlued("a.tsx", bad).map(({ line }) => line)).toEqual([2, 3]);
  });

  it("every exception is still needed", () => {
    const unused = ALLOWED.filter(
      (allowed) =>
        !said.some(({ file, text }) => file.endsWith(allowed.file) && allowed.text.test(text)),
    );
    expect(unused).toEqual([]);
  });

  it("is found in strings, templates and JSX, and not in types, imports and class names", () => {
    const source = `import { x } from "A b";
      type T = "Never this";
      const a = { "Not a key": "It holds", b: \`The \${x} stands\` };
      const c = <p class="one Two" title="On top">Read <b>me</b></p>;`;
    const texts = wordsInSource("a.tsx", source).map(({ text }) => text);
    expect(texts).toEqual(["It holds", "The {} stands", "On top", "Read", "me"]);
    const alone = wordsInSource("a.ts", `const a = b === "dry" ? "keeps" : \`\${b} holds\`;`, true);
    expect(alone.map(({ text }) => text)).toEqual(["keeps", "{} holds"]);
  });
});
