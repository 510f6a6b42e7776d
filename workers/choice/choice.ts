export { bagCurve } from "./bag-curve.ts";
export { choose } from "./choose.ts";
export { moreBuys } from "./more-buys.ts";
