// Opens a page as people do: wide and on a phone, light and dark, with script and without.
// Usage: CHROMIUM=/usr/bin/chromium node check.mjs report.html folder-for-screens
import { mkdirSync, statSync } from "node:fs";
import { resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { chromium } from "playwright-core";

const [file, screens] = process.argv.slice(2).map((path) => resolve(path));
const page_url = pathToFileURL(file).href;
mkdirSync(screens, { recursive: true });

const faults = [];
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM,
  args: ["--no-sandbox", "--disable-dev-shm-usage"],
});
try {
  for (const width of [1280, 390]) {
    for (const colorScheme of ["light", "dark"]) {
      for (const javaScriptEnabled of [true, false]) {
        const name = `${width}-${colorScheme}-${javaScriptEnabled ? "script" : "no-script"}`;
        const fault = (text) => faults.push(`${name}: ${text}`);
        const context = await browser.newContext({
          viewport: { width, height: width > 600 ? 900 : 844 },
          colorScheme,
          javaScriptEnabled,
        });
        const page = await context.newPage();
        page.on("console", (message) => {
          if (["error", "warning"].includes(message.type())) fault(`console: ${message.text()}`);
        });
        page.on("pageerror", (error) => fault(`script: ${error.message}`));
        page.on("request", (request) => {
          const url = request.url();
          if (url !== page_url && !url.startsWith("data:")) fault(`asked for ${url}`);
        });
        await page.goto(page_url, { waitUntil: "load" });
        const title = await page.title();
        if (title.trim() === "") fault("no title");
        // Geometry is asked of the browser itself, so that it works without script too.
        const session = await context.newCDPSession(page);
        const { cssContentSize } = await session.send("Page.getLayoutMetrics");
        if (cssContentSize.width > width) fault(`scrolls sideways: ${cssContentSize.width} px of content`);
        if (cssContentSize.height < 300) fault(`only ${cssContentSize.height} px high`);
        // The first screen answers: a verdict on the log, a map.
        const heading = page.locator("h1, h2").first();
        if (!(await heading.isVisible())) fault("no heading to be seen");
        // Definitions for drawings stand in drawings of no size; the map is one that a person can see.
        const sizes = await Promise.all((await page.locator("svg, img").all()).map((drawing) => drawing.boundingBox()));
        if (!sizes.some((box) => box && box.width > 200 && box.height > 200)) fault("no map to be seen");
        const text = await page.locator("body").innerText();
        if (!/good enough/.test(text)) fault("no verdict on the log");
        if (!/driven over/i.test(text)) fault("does not say how much was driven over");
        const target = `${screens}/${name}.png`;
        await page.screenshot({ path: target, fullPage: true });
        console.log(`${name}: ${cssContentSize.width} x ${cssContentSize.height} px, ${statSync(target).size} bytes of picture`);
        await context.close();
      }
    }
  }
  const page = await browser.newPage();
  await page.goto(page_url);
  const paper = await page.pdf({ path: `${screens}/paper.pdf`, format: "A4" });
  console.log(`paper: ${paper.length} bytes of PDF`);
  if (paper.length < 5000) faults.push("paper: nearly empty");
} finally {
  await browser.close();
}
for (const fault of faults) console.error(`FAULT ${fault}`);
console.log(`${faults.length} faults`);
process.exit(faults.length === 0 ? 0 : 1);
