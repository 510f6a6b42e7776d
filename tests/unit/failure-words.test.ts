import { describe, expect, it } from "vitest";
import { asFailure, failureOf, refusal } from "../../shared/failure.ts";
import { rowsComplaint } from "../../shared/time/check-rows.ts";
import { failureText, failureWords } from "../../shared/words/failure.ts";
import { said } from "../helpers/said.ts";

describe("a refusal with figures", () => {
  const failure = asFailure(refusal("plan/too-wide", { widestM: 14_000, mostM: 12_000 }));

  it("has them in the units of who reads it, and survives being thrown", () => {
    expect(failureText(failure, "us")).toMatch(/spread over 8\.7 mi; .* at most 7\.5 mi\. Check/);
    expect(failureWords(failure, "metric").message).toMatch(/spread over 14 km; .* at most 12 km/);
  });

  it("is the same after a copy between threads", () => {
    expect(structuredClone(failure)).toEqual(failure);
  });

  it("tells of a name with braces in it as it is", () => {
    const named = failureOf("raster/empty", { name: "https://tiles/{0}/{1}.tif" });
    expect(said(named).message).toContain('"https://tiles/{0}/{1}.tif" is empty');
  });
});

it("a forecast's level outside of reason is told in the reader's units alone", () => {
  const row = (hour: number, levelM: number) => ({
    ...{ at: `2026-04-03T${String(hour).padStart(2, "0")}:00-05:00`, levelM },
    ...{ lowM: null, highM: null },
  });
  const wrong = rowsComplaint([row(1, 5), row(2, -9999)], "stage", (i) => ({
    line: i + 1,
  }))!.failure;
  expect(failureWords(wrong, "us").message).toBe(
    "Line 2: expected a stage from -328.1 ft to 656.2 ft; came -32,805.1 ft.",
  );
  expect(failureWords(wrong, "metric").message).toBe(
    "Line 2: expected a stage from -100.00 m to 200.00 m; came -9,999.00 m.",
  );
});

it("elevations given as stages are refused with the way to take them as elevations", () => {
  const row = (hour: number, levelM: number) => ({
    ...{ at: `2026-04-03T0${hour}:00-05:00`, levelM },
    ...{ lowM: null, highM: null },
  });
  const remedy = (levelM: number, levels: "stage" | "elevation") =>
    said(rowsComplaint([row(1, 5), row(2, levelM)], levels, (i) => ({ line: i }))!.failure).remedy;
  expect(remedy(265, "stage")).toMatch(/^If these are elevations, choose Elevation/);
  for (const missing of [-9999, -999, 99_999]) {
    expect(remedy(missing, "stage")).not.toContain("Elevation");
  }
  expect(remedy(-999, "elevation")).not.toContain("choose Elevation");
});
