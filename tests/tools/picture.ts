/** Takes the README's picture of the demo: `node --import tsx tests/tools/picture.ts`. */
import { openHouse } from "../helpers/harness.ts";
import { mapIsIdle, planIsSized, sample } from "../helpers/screen.ts";

const house = await openHouse();
const { page } = await house.visit({ width: 1440, height: 900, coarse: false });
await planIsSized(page);
await page.waitForTimeout(2000);
await mapIsIdle(page);
await page.screenshot({ path: sample("screen.png") });
await house.close();
