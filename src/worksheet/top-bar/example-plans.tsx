import { openDemo } from "../../live/demo.ts";
import { DEMO_SITES } from "../../live/demo-sites.ts";

/** The finished plans of invented sites that come with the program. */
export function ExamplePlans({ onDone }: { readonly onDone: () => void }) {
  return (
    <>
      <p class="hint">
        Invented sites, each with a finished plan. Your plan can be had back by undo.
      </p>
      <ul class="example-plans">
        {DEMO_SITES.map((site) => (
          <li key={site.key}>
            <button
              type="button"
              class="tool-button"
              onClick={() => {
                onDone();
                void openDemo(site.key);
              }}
            >
              {site.label}
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}
