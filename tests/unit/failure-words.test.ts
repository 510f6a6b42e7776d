import { describe, expect, it } from "vitest";
import { asFailure, Refusal } from "../../shared/failure.ts";
import { rowsComplaint } from "../../shared/time/check-rows.ts";
import { failureText, failureWords } from "../../shared/words/failure.ts";
import { said } from "../helpers/said.ts";

describe("a refusal with figures", () => {
  const refusal = new Refusal("plan/too-wide", "Spread over {0}; at most {1}.", "Look at {0}.", {
    figures: [
      { as: "far", m: 12_000 },
      { as: "length", m: 1.5 },
    ],
  });

  it("has them in the units of who reads it, and survives being thrown", () => {
    const failure = asFailure(refusal);
    expect(failureText(failure, "us")).toBe("Spread over 7.5 mi; at most 4.9 ft. Look at 7.5 mi.");
    expect(failureWords(failure, "metric").message).toBe("Spread over 12 km; at most 1.50 m.");
  });

  it("leaves braces that no figure fills, and every text without figures, as they are", () => {
    const plain = { code: "x", message: "https://tiles/{0}/{1}.png", remedy: "" };
    expect(failureWords(plain, "us").message).toBe("https://tiles/{0}/{1}.png");
    const named = { ...asFailure(refusal), message: 'The file "{7}" is {0} wide.' };
    expect(failureWords(named, "metric").message).toBe('The file "{7}" is 12 km wide.');
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
