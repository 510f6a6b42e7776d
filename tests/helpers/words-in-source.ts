import { parseSync } from "vite";

/** A text that a person may read, as the source has it; `{}` for each figure or name put in. */
export interface SaidText {
  readonly line: number;
  readonly text: string;
}

/** A node of the parser's tree, as far as it is read here. */
interface Node {
  readonly type: string;
  readonly start: number;
  readonly [field: string]: unknown;
}

/** Where a string is a type, a file, a key or a mark for code, not for a person. */
const NOT_SAID = new Set(["ImportDeclaration", "ImportExpression", "TSLiteralType"]);
const CODE_ATTRIBUTE = /^(?:class|id|for|href|type|role|d|points|transform|viewBox|data-.*)$/;

/**
 * Every text of a source that is written as words: it holds a space, starts with a capital, or is JSX text. With
 * `single` also one word in small letters, such as a part of a sentence, where it is not compared with anything.
 */
export function wordsInSource(path: string, source: string, single = false): readonly SaidText[] {
  const { program, errors } = parseSync(path, source);
  if (errors.length > 0) throw new Error(`${path}: ${errors[0]!.message}`);
  const said: SaidText[] = [];
  visit(program as unknown as Node);
  return said;

  function visit(node: Node): void {
    if (isCode(node) || (single && isCompared(node))) return;
    const text = textOf(node);
    if (text !== null && isWords(text, node.type, single)) {
      said.push({ line: source.slice(0, node.start).split("\n").length, text });
    }
    for (const [field, value] of Object.entries(node)) {
      if (field === "key" && node.type === "Property" && node.computed !== true) continue;
      for (const child of Array.isArray(value) ? value : [value]) if (isNode(child)) visit(child);
    }
  }
}

function isNode(value: unknown): value is Node {
  return typeof value === "object" && value !== null && "type" in value && "start" in value;
}

function isCode(node: Node): boolean {
  if (NOT_SAID.has(node.type)) return true;
  if (node.type !== "JSXAttribute") return false;
  const { name } = node.name as { name: unknown };
  return typeof name === "string" && CODE_ATTRIBUTE.test(name);
}

function isCompared({ type, operator, left, right }: Node): boolean {
  const isText = (side: unknown) => isNode(side) && side.type === "Literal";
  return type === "BinaryExpression" && operator !== "+" && (isText(left) || isText(right));
}

function textOf(node: Node): string | null {
  if (node.type === "JSXText") return tidy(node.value as string);
  if (node.type === "Literal" && typeof node.value === "string") return tidy(node.value);
  if (node.type !== "TemplateLiteral") return null;
  const quasis = node.quasis as readonly { value: { cooked: string } }[];
  return tidy(quasis.map(({ value }) => value.cooked).join("{}"));
}

function tidy(text: string): string {
  return text.replace(/\s+/g, " ").trim();
}

function isWords(text: string, type: string, single: boolean): boolean {
  if (!/[a-z]/i.test(text)) return false;
  if (single && /^[a-z]+$/.test(text)) return true;
  return type === "JSXText" || /\s/.test(text) || /^[A-Z]/.test(text);
}
