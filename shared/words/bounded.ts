const MOST_QUOTED = 200;
const MOST_SAID = 1200;

/** A text that quotes a file, short enough to be read: long quotes lose their end, a long text its middle. */
export function bounded(text: string): string {
  if (text.length <= MOST_QUOTED) return text;
  const quoted = text.replace(/"([^"]*)"/g, (whole, inner: string) =>
    inner.length > MOST_QUOTED ? `"${inner.slice(0, MOST_QUOTED)}..."` : whole,
  );
  if (quoted.length <= MOST_SAID) return quoted;
  return `${quoted.slice(0, MOST_SAID - MOST_QUOTED)} ... ${quoted.slice(-MOST_QUOTED)}`;
}
