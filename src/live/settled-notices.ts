import { effect, untracked } from "@preact/signals";
import { withdrawAll } from "../document/notices.ts";
import { example } from "./demo-sites.ts";
import { tool } from "./screen.ts";

/** Takes notices away once what they speak of is settled: the example is back, a tool is taken again. */
export function keepNoticesSettled(): () => void {
  const stops = [
    effect(() => {
      if (example.value) untracked(() => withdrawAll("plan/example-left", "ground/other-data"));
    }),
    effect(() => {
      if (tool.value !== "move") untracked(() => withdrawAll("draw/"));
    }),
  ];
  return () => {
    for (const stop of stops) stop();
  };
}
