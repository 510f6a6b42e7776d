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

const MAKES_FIGURE = /^format(?!Count)[A-Z]/;
/** A button may be named with a figure; more words than these are a sentence. */
const MOST_WORDS = 4;

/** Sentences that a source puts together round a figure with its unit, as templates or as JSX. */
export function sentencesGlued(path: string, source: string): readonly SaidText[] {
  const { program, errors } = parseSync(path, source);
  if (errors.length > 0) throw new Error(`${path}: ${errors[0]!.message}`);
  const figures = new Set<string>();
  const glued: SaidText[] = [];
  visit(program as unknown as Node);
  return glued;

  function visit(node: Node): void {
    const { id, init } = node;
    if (node.type === "VariableDeclarator" && isNode(id) && isNode(init) && isMaker(init)) {
      figures.add(id.name as string);
    }
    const parts = partsOf(node);
    if (parts && parts.others.some(hasFigure) && countOf(parts.text) > MOST_WORDS) {
      glued.push({ line: source.slice(0, node.start).split("\n").length, text: parts.text });
    }
    for (const value of Object.values(node).flat()) if (isNode(value)) visit(value);
  }

  function hasFigure(node: Node): boolean {
    if (node.type === "Identifier") return figures.has(node.name as string);
    if (/^(?:JSXElement|JSXFragment|ArrowFunctionExpression)$/.test(node.type)) return false;
    return (
      isMaker(node) ||
      Object.values(node)
        .flat()
        .some((each) => isNode(each) && hasFigure(each))
    );
  }
}

function isMaker({ type, callee }: Node): boolean {
  return type === "CallExpression" && isNode(callee) && MAKES_FIGURE.test(String(callee.name));
}

/** The text of a template or an element, and what is put into it. */
function partsOf(node: Node): { readonly text: string; readonly others: readonly Node[] } | null {
  if (node.type === "TemplateLiteral") {
    return { text: textOf(node)!, others: node.expressions as readonly Node[] };
  }
  if (node.type !== "JSXElement") return null;
  const children = node.children as readonly Node[];
  const texts = children.map((child) => (child.type === "JSXText" ? child.value : "{}"));
  return {
    text: tidy(texts.join(" ")),
    others: children.filter(({ type }) => type === "JSXExpressionContainer"),
  };
}

function countOf(text: string): number {
  return text.match(/[a-z]{2,}/gi)?.length ?? 0;
}
