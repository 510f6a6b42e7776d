import { refusal } from "../failure.ts";

/** What is read of an XML element: of the browser's own parser, or of one that stands in for it. */
export interface XmlNode {
  readonly nodeName: string;
  readonly localName: string | null;
  readonly namespaceURI: string | null;
  readonly textContent: string | null;
  readonly childNodes: ArrayLike<unknown>;
  readonly getAttribute: (name: string) => string | null;
  readonly getAttributeNS: (space: string | null, name: string) => string | null;
}

/** A document of XML text; what it throws, or a `parsererror` in it, means that the text is none. */
export type ParseXml = (xml: string) => {
  readonly documentElement: unknown;
  readonly getElementsByTagName: (name: string) => { readonly length: number };
};

const XLINK = "http://www.w3.org/1999/xlink";

/**
 * The root of a document. Entities of its own are not read.
 * @throws Refusal `forecast/xml`
 */
export function xmlRoot(text: string, parse: ParseXml): XmlNode {
  if (/<!(?:DOCTYPE|ENTITY)/i.test(text)) {
    const isPage = /<!DOCTYPE\s+html/i.test(text);
    throw refusal("forecast/xml", { is: isPage ? "page" : "entities" });
  }
  try {
    const xml = parse(text);
    const root = xml.documentElement as XmlNode | null;
    if (root && xml.getElementsByTagName("parsererror").length === 0) return root;
  } catch {
    throw refusal("forecast/xml", { is: "broken" });
  }
  throw refusal("forecast/xml", { is: "broken" });
}

/** The elements directly in one, of a name without its prefix. */
export function childrenOf(node: XmlNode, name: string): XmlNode[] {
  return elementsIn(node).filter((each) => each.localName === name);
}

/** The first element along a path of names, null where there is none. */
export function under(node: XmlNode | null, ...path: readonly string[]): XmlNode | null {
  return path.reduce<XmlNode | null>(
    (at, name) => (at ? (childrenOf(at, name)[0] ?? null) : null),
    node,
  );
}

/** All elements of a name at any depth, in the order of the document. */
export function allOf(node: XmlNode, name: string): XmlNode[] {
  const found: XmlNode[] = [];
  const open = [node];
  while (open.length > 0) {
    const next = open.pop()!;
    if (next.localName === name) found.push(next);
    open.push(...elementsIn(next).reverse());
  }
  return found;
}

/** What an element is said to be by its link: its title, else the end of its address. */
export function linkName(node: XmlNode | null): string | null {
  if (!node) return null;
  const title = node.getAttributeNS(XLINK, "title")?.trim();
  if (title) return title;
  const href = node.getAttributeNS(XLINK, "href")?.trim();
  return href ? (href.split(/[/#]/).at(-1) ?? null) : null;
}

/** The end of the address an element links to. */
export function linkEnd(node: XmlNode | null): string | null {
  const href = node?.getAttributeNS(XLINK, "href")?.trim();
  return href ? (href.split(/[/#]/).at(-1) ?? null) : null;
}

export function textOf(node: XmlNode | null): string {
  return node?.textContent?.trim() ?? "";
}

/** The elements right under one. */
export function elementsIn({ childNodes }: XmlNode): XmlNode[] {
  return Array.from(childNodes).filter(
    (each): each is XmlNode => (each as { nodeType?: number }).nodeType === 1,
  );
}
