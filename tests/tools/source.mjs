/**
 * What a TypeScript file imports and which URLs it builds beside itself, and its code with the text of
 * strings and comments blanked out. Reads tokens only as far as strings, templates, comments and regular
 * expressions need.
 */
export function readSource(text) {
  const strings = [];
  const code = blank(text, strings);
  const at = (pattern) =>
    [...code.matchAll(pattern)].map((match) => strings[Number(match[1])]).filter(isText);
  return {
    imports: [
      ...at(/\bfrom\s*"(\d+)"/g),
      ...at(/\bimport\s*"(\d+)"/g),
      ...at(/\bimport\s*\(\s*"(\d+)"/g),
    ],
    urls: at(/\bnew\s+URL\s*\(\s*"(\d+)"/g),
    code: code.replaceAll(/"\d+"/g, '""'),
  };
}

function isText(value) {
  return typeof value === "string";
}

/** Every string becomes its number in `strings` between quotes; comments and regular expressions vanish. */
function blank(text, strings) {
  let out = "";
  let i = 0;
  const depths = [];
  const template = () => {
    let start = i;
    while (i < text.length && text[i] !== "`") {
      if (text[i] === "$" && text[i + 1] === "{") {
        i += 2;
        depths.push(0);
        return false;
      }
      i += text[i] === "\\" ? 2 : 1;
    }
    strings.push(text.slice(start, i++));
    start = i;
    return true;
  };
  while (i < text.length) {
    const here = text[i];
    const two = text.slice(i, i + 2);
    if (two === "//") {
      i = endOf(text, "\n", i);
    } else if (two === "/*") {
      i = endOf(text, "*/", i + 2) + 2;
    } else if (here === '"' || here === "'") {
      const end = quoteEnd(text, i);
      strings.push(text.slice(i + 1, end));
      out += `"${strings.length - 1}"`;
      i = end + 1;
    } else if (here === "`") {
      i++;
      out += template() ? `"${strings.length - 1}"` : " ";
    } else if (here === "/" && startsExpression(out)) {
      i = regularExpressionEnd(text, i);
    } else if (here === "}" && depths.at(-1) === 0) {
      depths.pop();
      i++;
      if (template()) out += " ";
    } else {
      if (here === "{" && depths.length > 0) depths[depths.length - 1]++;
      if (here === "}" && depths.length > 0) depths[depths.length - 1]--;
      out += here;
      i++;
    }
  }
  return out;
}

function endOf(text, mark, from) {
  const end = text.indexOf(mark, from);
  return end < 0 ? text.length : end;
}

function quoteEnd(text, start) {
  let i = start + 1;
  while (i < text.length && text[i] !== text[start]) i += text[i] === "\\" ? 2 : 1;
  return i;
}

function startsExpression(before) {
  return /(?:^|[(,=:[!&|?{};+\-*%<>~^]|\b(?:return|typeof|case))\s*$/.test(before);
}

function regularExpressionEnd(text, start) {
  let inClass = false;
  let i = start + 1;
  while (i < text.length && (inClass || text[i] !== "/")) {
    if (text[i] === "\n") return start + 1;
    if (text[i] === "[") inClass = true;
    if (text[i] === "]") inClass = false;
    i += text[i] === "\\" ? 2 : 1;
  }
  return i + 1;
}
