// The picture in README.md, of the page as it is built: `node tests/browser/readme-screenshot.mjs`.
//
// The part is the capstan pawl of the invented boatyard: 4140, wants 50 to 54 HRC.
import { fileURLToPath } from "node:url";
import { BRACKET, fileKey, type } from "./hands.mjs";
import { DEVICES, Server, dist, launch } from "./lib.mjs";

const server = new Server("/", dist);
await server.start();
const browser = await launch();
const context = await browser.newContext({ ...DEVICES.phone, serviceWorkers: "block" });
const page = await context.newPage();
await page.goto(server.url);
for (const [grade, word] of BRACKET) await fileKey(page, grade, word).click();
await type(page, "Wanted hardness", "50-54");
await page.evaluate(() => scrollTo(0, 0));
await page.screenshot({ path: fileURLToPath(new URL("../../web/screenshots/file-test.png", import.meta.url)) });
await browser.close();
await server.stop();
