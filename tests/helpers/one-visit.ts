import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, expect } from "vitest";
import { type House, openHouse, type Visit, type VisitOptions } from "./harness.ts";
import { planIsSized } from "./screen.ts";

/**
 * One visit to the demo for all tests of a file: `arrived` is called once the plan is sized. After each test nothing
 * may have gone wrong on any page, and nothing may have asked another host.
 */
export function oneVisit(
  options: VisitOptions,
  arrived: (page: Page, visit: Visit) => void | Promise<void>,
): void {
  let house: House;
  let visit: Visit;
  beforeAll(async () => {
    house = await openHouse();
    visit = await house.visit(options);
    await planIsSized(visit.page);
    await arrived(visit.page, visit);
  });
  afterAll(() => house.close());
  afterEach(() => {
    expect(visit.troubles).toEqual([]);
    expect(house.strayRequests).toEqual([]);
  });
}
