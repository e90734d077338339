// Renders the icons from their drawings: `node tests/browser/icons.mjs`, after `cargo xtask app --build-only`.
//
// The pictures are committed; this runs only when a drawing changes.
import { readFileSync } from "node:fs";
import { launch } from "./lib.mjs";

const from = new URL("../../web/static/", import.meta.url);
const pictures = [
  ["icons/icon.svg", "icons/icon-192.png", 192],
  ["icons/icon.svg", "icons/icon-512.png", 512],
  ["icon-maskable.svg", "icons/icon-maskable-512.png", 512],
];

const browser = await launch();
const page = await browser.newPage();
for (const [drawing, picture, size] of pictures) {
  const svg = readFileSync(new URL(drawing, from), "base64");
  await page.setViewportSize({ width: size, height: size });
  await page.setContent(
    `<style>body{margin:0}img{display:block}</style><img width="${size}" src="data:image/svg+xml;base64,${svg}">`,
  );
  await page.screenshot({ path: new URL(picture, from).pathname, omitBackground: true });
}
await browser.close();
