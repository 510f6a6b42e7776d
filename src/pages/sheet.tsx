import type { ComponentChildren } from "preact";
import type { Exported } from "../../shared/exports/exported.ts";
import { shortCautions } from "../../shared/words/line-state.ts";
import { TitleBlock } from "./title-block.tsx";

interface SheetProps {
  readonly of: Exported;
  readonly name: string;
  /** `Sheet 2 of 5`, or `Office pages`. */
  readonly label: string;
  /** Whether crews carry it: with the cautions, in short, on every page. */
  readonly forCrew: boolean;
  readonly children: ComponentChildren;
}

/**
 * One sheet, from a page of its own on. It is a table for the browser's sake, which repeats head and foot of a
 * table on every page it is printed on.
 */
export function Sheet({ of, name, label, forCrew, children }: SheetProps) {
  return (
    <section class="sheet-page" aria-label={name}>
      <table class="sheet-frame" role="presentation">
        <thead>
          <tr>
            <td>
              <TitleBlock of={of} sheet={`${label}: ${name}`} />
            </td>
          </tr>
        </thead>
        {forCrew && (
          <tfoot>
            <tr>
              <td>
                <ul class="sheet-cautions">
                  {shortCautions(of).map((caution) => (
                    <li key={caution}>{caution}</li>
                  ))}
                </ul>
              </td>
            </tr>
          </tfoot>
        )}
        <tbody>
          <tr>
            <td>{children}</td>
          </tr>
        </tbody>
      </table>
    </section>
  );
}
