/** Takes the README's picture of the demo: `node --import tsx tests/browser/picture.ts`. */
import { openHouse } from "./harness.ts";
import { mapIsIdle, planIsSized, sample } from "./screen.ts";

const house = await openHouse();
const { page } = await house.visit({ width: 1440, height: 900 });
await planIsSized(page);
await page.waitForTimeout(2000);
await mapIsIdle(page);
await page.screenshot({ path: sample("screen.png") });
await house.close();
