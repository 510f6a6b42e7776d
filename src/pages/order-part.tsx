import { QuantitiesPart } from "./quantities-part.tsx";
import { Sheet } from "./sheet.tsx";
import type { SheetFrame } from "./title-block.tsx";

/** What to get for the line. */
export function OrderSheet(frame: SheetFrame) {
  return <Sheet {...frame} name="Order" pieces={[<QuantitiesPart of={frame.of} />]} />;
}
