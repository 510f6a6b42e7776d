/**
 * Whoever imports this module has all of proj4's methods. Node's proj4 has them from the start; the page starts with
 * transverse Mercator alone, and its build puts the others here (tests/tools/projection-methods.ts).
 */
export {};
