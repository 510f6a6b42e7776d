import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { parseSync } from "vite";
import { describe, expect, it } from "vitest";

const ROOT = new URL("../..", import.meta.url).pathname;
/** Makers of what a person reads. */
const MAKES_WORDS = /(?:Words|Text)$|^format[A-Z]/;
/** Where a sentence is held. */
const HELD = new Set(["message", "remedy", "what", "rule", "words", "wording"]);
const CUTS = new Set([
  ...["replace", "replaceAll", "match", "matchAll", "search", "split", "slice", "substring"],
  ...["startsWith", "endsWith", "includes", "indexOf", "lastIndexOf", "test", "exec"],
]);
/** Texts of other programs' errors, and what a person typed, are no sentences of ours. */
const OTHERS = /^(?:plainText|cleanText|cellText|fileText|momentText|clockText)$/;

/** A node of the parser's tree (ESTree with TypeScript). */
interface Node {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly [part: string]: unknown;
}

function isNode(value: unknown): value is Node {
  return typeof value === "object" && value !== null && "type" in value;
}

/** Places in a source that search, cut or compare a sentence. */
function touched(file: string, text: string): string[] {
  const holders = new Set<string>();
  const found: string[] = [];
  const written = ({ start, end }: Node) => text.slice(start, end);
  const isSentence = (node: unknown): boolean => {
    if (!isNode(node)) return false;
    switch (node.type) {
      case "TSNonNullExpression":
      case "ChainExpression":
        return isSentence(node.expression);
      case "Identifier":
        return holders.has(node.name as string);
      case "MemberExpression": {
        const [owner, name] = [written(node.object as Node), written(node.property as Node)];
        return !node.computed && HELD.has(name) && !/thrown|error|cause|issue|bug/i.test(owner);
      }
      case "CallExpression": {
        const name = written(node.callee as Node);
        return MAKES_WORDS.test(name) && /^\w+$/.test(name) && !OTHERS.test(name);
      }
      default:
        return false;
    }
  };
  const note = (node: Node) => {
    const line = text.slice(0, node.start).split("\n").length;
    found.push(`${file}:${line} ${written(node).replace(/\s+/g, " ").slice(0, 80)}`);
  };
  const visit = (node: Node) => {
    if (node.type === "VariableDeclarator" && isSentence(node.init)) {
      if ((node.id as Node).type === "Identifier") holders.add((node.id as Node).name as string);
    }
    if (node.type === "CallExpression" && (node.callee as Node).type === "MemberExpression") {
      const { object, property } = node.callee as Node;
      const method = written(property as Node);
      const cuts = CUTS.has(method) && isSentence(object);
      const looksFor =
        /^(?:test|exec)$/.test(method) && (node.arguments as unknown[]).some(isSentence);
      if (cuts || looksFor) note(node);
    }
    if (node.type === "BinaryExpression" && /^[!=]==?$/.test(node.operator as string)) {
      const sides = [node.left, node.right] as Node[];
      const isEmpty = sides.some((side) => side.type === "Literal" && side.value === "");
      const isHeld = sides.some((side) => side.type !== "Identifier" && isSentence(side));
      if (isHeld && !isEmpty) note(node);
    }
    for (const part of Object.values(node).flat()) if (isNode(part)) visit(part);
  };
  visit(parseSync(file, text).program as unknown as Node);
  return found;
}

function sources(folder: string): string[] {
  return readdirSync(join(ROOT, folder), { recursive: true, encoding: "utf8" })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => `${folder}/${name}`);
}

describe("a sentence, once made,", () => {
  it("is seen where it is searched, cut or compared", () => {
    const bad = `
      const a = checkWords(c, "us").message.replace(/x/, "");
      const said = formatLength(1, "us"); const n = said.split(" ");
      if (/fits/.test(check.remedy)) go();
      if (verdictWords(v) === "fails") go();
    `;
    expect(touched("a.ts", bad)).toHaveLength(4);
    expect(touched("a.ts", "const a = text.replace(/x/, ''); id.startsWith('b');")).toEqual([]);
  });

  it.each(["src", "shared", "workers"])("is never touched again in %s", (folder) => {
    const places = sources(folder).flatMap((file) =>
      touched(file, readFileSync(join(ROOT, file), "utf8")),
    );
    expect(places).toEqual([]);
  });
});
