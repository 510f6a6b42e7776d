/**
 * How many seeded cases a test takes that spends seconds on them: `whole` where the environment says
 * `DRYSTEAD_TESTS=whole`, and `usual` elsewhere.
 */
export function howMany(usual: number, whole: number): number {
  return process.env.DRYSTEAD_TESTS === "whole" ? whole : usual;
}
