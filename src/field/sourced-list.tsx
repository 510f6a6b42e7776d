interface Sourced {
  readonly text: string;
  readonly source: string;
}

/** Sentences one under another, each with where it comes from. */
export function SourcedList({ items }: { readonly items: readonly Sourced[] }) {
  return (
    <ul class="crew-list">
      {items.map(({ text, source }) => (
        <li key={text}>
          {text} <small>{source}</small>
        </li>
      ))}
    </ul>
  );
}
