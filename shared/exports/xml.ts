/** Well-formed XML: only {@link element} and {@link textElement} make it, so that no text gets in unescaped. */
export interface Markup {
  readonly xml: string;
}

type Attributes = Readonly<Record<string, string>>;

const NO_XML_CHARACTER = /[^\t\n\r\u{20}-\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]/gu;
const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&apos;",
  "\r": "&#13;",
};

/** An element with others in it; those that are null are left out. */
export function element(
  name: string,
  children: readonly (Markup | null)[],
  attributes: Attributes = {},
): Markup {
  const inside = children.flatMap((child) => (child ? [child.xml] : []));
  return { xml: `${startTag(name, attributes)}\n${inside.join("\n")}\n</${name}>` };
}

/** An element with a text or a number in it; null where there is none. */
export function textElement(
  name: string,
  value: string | number | boolean | null | undefined,
  attributes: Attributes = {},
): Markup | null {
  if (value === null || value === undefined) return null;
  return { xml: `${startTag(name, attributes)}${escaped(String(value))}</${name}>` };
}

/** A document of one root element, in UTF-8. */
export function xmlDocument({ xml }: Markup): string {
  return `<?xml version="1.0" encoding="UTF-8"?>\n${xml}\n`;
}

/** A text for XML 1.0: markup escaped, characters that XML cannot hold left out. */
export function escaped(text: string): string {
  return text.replace(NO_XML_CHARACTER, "").replace(/[&<>"'\r]/g, (sign) => ENTITIES[sign]!);
}

function startTag(name: string, attributes: Attributes): string {
  const written = Object.entries(attributes).map(([key, value]) => ` ${key}="${escaped(value)}"`);
  return `<${name}${written.join("")}>`;
}
