/** After so many changes the room may only get smaller. */
const MOST_CHANGES = 6;
const SAME_MM = 0.3;

/**
 * The room of a sheet's pages, where the heads that leave it depend on what is on each page: two layouts that each ask
 * for the other end with the smaller room.
 */
export class SteadyRoom {
  #of = "";
  #changes = 0;
  #lastMm = Number.NaN;
  #leastMm = Infinity;

  /** The room to lay out for, millimetres; `of` names what is laid out, and begins anew where it is another. */
  next(measuredMm: number, of: string): number {
    if (of !== this.#of) {
      this.#of = of;
      this.#changes = 0;
      this.#leastMm = Infinity;
    } else if (!(Math.abs(measuredMm - this.#lastMm) < SAME_MM)) {
      this.#changes += 1;
    }
    this.#lastMm = measuredMm;
    this.#leastMm = Math.min(this.#leastMm, measuredMm);
    return this.#changes > MOST_CHANGES ? this.#leastMm : measuredMm;
  }
}
