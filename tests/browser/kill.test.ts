import { afterAll, beforeAll, expect, it } from "vitest";
import { serveDocumentPage } from "../kill/document-page.ts";
import { killMany } from "../kill/kill-run.ts";

let house: Awaited<ReturnType<typeof serveDocumentPage>>;

beforeAll(async () => {
  house = await serveDocumentPage();
});
afterAll(() => house?.close());

it("no kept edit is lost when the browser is killed, 20 times at random moments", {
  timeout: 600_000,
}, async () => {
  const { kills, edits, losses } = await killMany(house.address, 20, 20);
  expect(losses).toEqual([]);
  expect(kills).toBe(20);
  expect(edits).toBeGreaterThan(20);
});
