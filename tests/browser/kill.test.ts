import { afterAll, beforeAll, expect, it } from "vitest";
import { serveDocumentPage } from "../kill/document-page.ts";
import { killMany } from "../kill/kill-run.ts";

/** Few, because each starts a browser anew; `npm run kill` makes as many as it is told to. */
const KILLS = 5;

let house: Awaited<ReturnType<typeof serveDocumentPage>>;

beforeAll(async () => {
  house = await serveDocumentPage();
});
afterAll(() => house?.close());

it("no kept edit is lost when the browser is killed, 5 times at random moments", {
  timeout: 600_000,
}, async () => {
  const { kills, edits, losses } = await killMany(house.address, KILLS, 20);
  expect(losses).toEqual([]);
  expect(kills).toBe(KILLS);
  expect(edits).toBeGreaterThan(KILLS);
});
