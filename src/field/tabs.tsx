import type { Signal } from "@preact/signals";
import { FIELD_VIEWS, type FieldView } from "../../shared/words/field-views.ts";
import { closePanel } from "./panel.ts";

/** The views, one shown: under the thumb upright, at the right on its side. Pressed again it puts away what lies over it. */
export function Tabs({ view }: { readonly view: Signal<FieldView> }) {
  return (
    <nav class="crew-tabs" aria-label="Field views">
      {FIELD_VIEWS.map(({ id, name }) => (
        <button
          key={id}
          type="button"
          aria-current={view.value === id ? "page" : undefined}
          onClick={() => {
            if (view.value === id) closePanel();
            view.value = id;
          }}
        >
          {name}
        </button>
      ))}
    </nav>
  );
}
