import type { Failure } from "../failure.ts";

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

/** That ground of one's own took the place of an example that had been changed. */
export function exampleLeft(name: string): Failure {
  return {
    code: "plan/example-left",
    message: `This is a new plan on ${name}.`,
    remedy: "Nothing of the example is in it. Undo brings the example back with your changes.",
  };
}
