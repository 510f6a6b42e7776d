import type { BagOrder } from "../bag-order.ts";
import { formatCount } from "../units.ts";

/** `17,028 placed, 851 spare, 1,430 on the poly sheeting`: what the bags to order are for. */
export function bagOrderParts({ placed, spare, onPolySheeting }: BagOrder): string {
  return [
    `${formatCount(placed)} placed`,
    ...(spare > 0 ? [`${formatCount(spare)} spare`] : []),
    ...(onPolySheeting > 0 ? [`${formatCount(onPolySheeting)} on the poly sheeting`] : []),
  ].join(", ");
}
