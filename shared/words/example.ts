/** What the band over an example says of it; `rest` is left out where there is little room. */
export interface ExampleWords {
  readonly lead: string;
  readonly rest: string;
}

/** That a site that comes with the tool is invented: a farm, or a plane for teaching. */
export function exampleWords(isFarm: boolean): ExampleWords {
  return {
    lead: isFarm ? "Example: an invented farm." : "Example: an invented plane, for teaching.",
    rest: "Its ground, river and crew are made up.",
  };
}
