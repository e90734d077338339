// The picture in README.md, of the page as it is built: `node tests/browser/readme-screenshot.mjs`.
//
// The part is the capstan pawl of the invented boatyard: 4140, wants 50 to 54 HRC.
import { fileURLToPath } from "node:url";
import { Server, dist, launch } from "./lib.mjs";

const server = new Server("/", dist);
await server.start();
const browser = await launch();
const context = await browser.newContext({
  viewport: { width: 390, height: 844 },
  deviceScaleFactor: 2,
  hasTouch: true,
  isMobile: true,
  serviceWorkers: "block",
});
const page = await context.newPage();
await page.goto(server.url);
for (const [grade, word] of [[65, "bites"], [60, "bites"], [55, "bites"], [50, "skates"], [45, "skates"], [40, "skates"]]) {
  await page.getByRole("button", { name: `${grade} file ${word}` }).click();
}
await page.getByLabel("Wanted hardness").fill("50-54");
await page.keyboard.press("Enter");
await page.evaluate(() => scrollTo(0, 0));
await page.screenshot({ path: fileURLToPath(new URL("../../web/screenshots/file-test.png", import.meta.url)) });
await browser.close();
await server.stop();
