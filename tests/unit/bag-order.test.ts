import { describe, expect, it } from "vitest";
import { bagOrder } from "../../shared/bag-order.ts";
import { CUBIC_YARD_M3 } from "../../shared/constants.ts";
import { DEFAULT_PRACTICE } from "../../shared/defaults.ts";
import { SETTINGS } from "../../shared/settings.ts";
import { bagOrderParts } from "../../shared/words/bag-order.ts";
import { makeup } from "../../shared/words/makeup/line.ts";
import { settingNote } from "../../shared/words/setting-notes.ts";
import { unitsOf } from "../../shared/words/units.ts";
import { flat, planWith, rectangle, ring, size } from "../helpers/grounds.ts";

const PLAN = planWith(100.3);
const LINE = size(PLAN, ring(rectangle(25, 20)), flat(100));

describe("the bags to order", () => {
  const order = bagOrder(LINE.totals);

  it("are one number: placed, spare, and on the poly sheeting", () => {
    const { total, placed, spare, onPolySheeting } = order;
    expect(placed + spare + onPolySheeting).toBe(total);
    expect(total).toBe(LINE.totals.bags + LINE.totals.sheetBags);
    for (const part of [placed, spare, onPolySheeting]) expect(part).toBeGreaterThan(0);
  });

  it("say what they are for, and leave out what is none", () => {
    const some = { total: 19_309, placed: 17_028, spare: 851, onPolySheeting: 1430 };
    expect(bagOrderParts(some)).toBe("17,028 placed, 851 spare, 1,430 on the poly sheeting");
    expect(bagOrderParts({ ...some, spare: 0, onPolySheeting: 0 })).toBe("17,028 placed");
    const { inputs } = makeup("bagOrder", {
      plan: PLAN,
      line: LINE,
      totals: LINE.totals,
      system: "us",
    });
    expect(inputs.map(({ name }) => name)).toEqual([
      ...["placed in the levee", "spares", "on the poly sheeting", "empty bags to bring"],
    ]);
  });
});

describe("the load of a truck", () => {
  it("is a county's 10 cu yd until it is typed, and says that no source has it", () => {
    expect(DEFAULT_PRACTICE.truckM3).toBeCloseTo(10 * CUBIC_YARD_M3, 9);
    expect(LINE.totals.trucks).toBe(Math.ceil(LINE.totals.sandM3 / (10 * CUBIC_YARD_M3)));
    expect(SETTINGS["practice.truckM3"].source).toBe("common practice, no source");
    expect(settingNote("practice.truckM3", unitsOf("us"))).toMatch(/dump truck.*3\.0 cu yd wet/);
  });
});
