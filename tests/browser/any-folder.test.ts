import { afterAll, beforeAll, expect, it } from "vitest";
import { type House, openHouse } from "../helpers/harness.ts";
import { type PlainServer, plainServer } from "../helpers/plain-server.ts";

/* The built program on a plain file server that knows nothing of it, in a folder of its own. */

let house: House;
let server: PlainServer;
beforeAll(async () => {
  house = await openHouse();
  server = await plainServer("/county/flood%20plans/drystead/");
});
afterAll(async () => {
  await server.stop();
  await house.close();
});

it("starts from any folder of any file server, with the licenses beside it", async () => {
  const { address } = server;
  const { page, troubles, leave } = await house.visit({ address, coarse: true });
  await page.getByText("17,879").first().waitFor();
  const notices = await page.request.get(`${address}third-party-notices.md`);
  expect(await notices.text()).toContain("## maplibre-gl ");
  expect(troubles).toEqual([]);
  await leave();
});
