// Opens pages as people do: wide and on a phone, light and dark, with script and without, on paper; moves the map by mouse,
// touch and keyboard, chooses places in the list and on the map, looks where readers stumbled, and lets axe-core look for
// barriers (WCAG 2.2 AA).
// Usage: CHROMIUM=/usr/bin/chromium node check.mjs folder-for-screens page.html...
import { execFileSync } from "node:child_process";
import { mkdirSync, readFileSync, statSync } from "node:fs";
import { createRequire } from "node:module";
import { basename, dirname, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { chromium } from "playwright-core";
import { interact } from "./interact.mjs";
import { readers } from "./readers.mjs";

const [screens, ...files] = process.argv.slice(2).map((path) => resolve(path));
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
mkdirSync(screens, { recursive: true });

const faults = [];
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM,
  args: ["--no-sandbox", "--disable-dev-shm-usage"],
});

/** A page in a context of its own; what it should not do becomes a fault. */
async function open(file, settings, fault) {
  const page_url = pathToFileURL(file).href;
  const context = await browser.newContext(settings);
  const page = await context.newPage();
  page.setDefaultTimeout(60_000); // two cores, three browsers: painting may wait
  page.on("console", (message) => {
    if (["error", "warning"].includes(message.type())) fault(`console: ${message.text()}`);
  });
  page.on("pageerror", (error) => fault(`script: ${error.message}`));
  page.on("dialog", async (dialog) => {
    fault(`dialog: ${dialog.message()}`);
    await dialog.dismiss();
  });
  page.on("request", (request) => {
    const url = request.url().split("#")[0];
    if (url !== page_url && !url.startsWith("data:")) fault(`asked for ${url}`);
  });
  await page.goto(page_url, { waitUntil: "load" });
  return { context, page };
}

/** What axe-core finds. Its own script is let in by the debugger, past the policy of the page. */
async function barriers(page, fault) {
  const session = await page.context().newCDPSession(page);
  await session.send("Runtime.evaluate", { expression: axe });
  const { result, exceptionDetails } = await session.send("Runtime.evaluate", {
    expression: `axe.run(document, { runOnly: { type: "tag", values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] } })
      .then((found) => JSON.stringify(found.violations.map((one) => [one.id, one.help, one.nodes.length, one.nodes[0].html.slice(0, 200), one.nodes[0].failureSummary.slice(0, 200)])))`,
    awaitPromise: true,
    returnByValue: true,
  });
  if (exceptionDetails) return fault(`axe: ${exceptionDetails.text}`);
  for (const violation of JSON.parse(result.value)) fault(`axe: ${violation.join(" | ")}`);
}

async function look(file) {
  const name_of_page = basename(dirname(file));
  // Reports alone answer with answers; before and after, and a plan on paper, have sentences of their own.
  const has_no_answers = ["comparison.html", "plan.html"].includes(basename(file));
  for (const width of [1280, 390]) {
    for (const colorScheme of ["light", "dark"]) {
      for (const javaScriptEnabled of [true, false]) {
        const name = `${name_of_page}-${width}-${colorScheme}-${javaScriptEnabled ? "script" : "no-script"}`;
        const fault = (text) => faults.push(`${name}: ${text}`);
        const height = width > 600 ? 900 : 844;
        const { context, page } = await open(
          file,
          { viewport: { width, height }, colorScheme, javaScriptEnabled, hasTouch: width < 600, reducedMotion: "reduce" },
          fault,
        );
        if ((await page.title()).trim() === "") fault("no title");
        // Geometry is asked of the browser itself, so that it works without script too.
        const session = await context.newCDPSession(page);
        const { cssContentSize } = await session.send("Page.getLayoutMetrics");
        if (cssContentSize.width > width) fault(`scrolls sideways: ${cssContentSize.width} px of content`);
        if (cssContentSize.height < 300) fault(`only ${cssContentSize.height} px high`);
        const sizes = await Promise.all((await page.locator("svg.map").all()).map((drawing) => drawing.boundingBox()));
        if (!sizes.some((box) => box && box.width > 200 && box.height > 90)) fault("no map to be seen");
        const text = await page.locator("body").innerText();
        if (!/driven over/i.test(text)) fault("does not say how much was driven over");
        if (!has_no_answers) {
          // Map and answers begin on the first screen, with script and without.
          const first = await page.locator(".answer .word").first().boundingBox();
          if (!first || first.y > height) fault("no answer on the first screen");
          for (const words of ["Is the log good enough?", "What was missed?", "Why?", "What to change?", "How sure?"]) {
            if (!text.includes(words)) fault(`does not answer ${words}`);
          }
          // With a place asked about, its answer and what was missed come first; the rest may follow below.
          const has_asked = (await page.locator(".a-asked").count()) > 0;
          const last = await (has_asked ? page.locator(".a-missed .word") : page.locator(".answer .word").last()).boundingBox();
          if (width > 600 && (!last || last.y > height) && !/hostile|crowded/.test(name_of_page)) {
            fault("the last answer is not on the first screen");
          }
        }
        const target = `${screens}/${name}.png`;
        await page.screenshot({ path: target });
        await page.screenshot({ path: `${screens}/${name}-whole.png`, fullPage: true });
        if (javaScriptEnabled) await barriers(page, fault);
        console.log(`${name}: ${cssContentSize.width} x ${cssContentSize.height} px, ${statSync(target).size} bytes of picture`);
        await context.close();
      }
    }
  }
}

async function paper(file) {
  if (["comparison.html", "plan.html"].includes(basename(file))) return;
  const name = basename(dirname(file));
  const page = await browser.newPage();
  await page.goto(pathToFileURL(file).href);
  for (const format of ["A4", "Letter"]) {
    const path = `${screens}/${name}-${format}.pdf`;
    await page.pdf({ path, format });
    const info = execFileSync("pdfinfo", [path], { encoding: "utf8" });
    const pages = Number(/Pages:\s+(\d+)/.exec(info)?.[1]);
    console.log(`${name} on ${format}: ${pages} pages`);
    if (pages !== 2) faults.push(`${name} on ${format}: ${pages} pages, expected 2`);
    execFileSync("pdftoppm", ["-r", "60", "-png", path, `${screens}/${name}-${format}`]);
  }
  await page.close();
}

try {
  for (const file of files) {
    const fault = (text) => faults.push(`${basename(dirname(file))}: ${text}`);
    for (const part of [() => look(file), () => paper(file), () => readers(open, file, fault), () => interact(open, file, screens, fault)]) {
      // What cannot be clicked is a fault of the page, and the next page is looked at all the same.
      await part().catch((error) => fault(error.message.split("\n").slice(0, 3).join(" ")));
    }
  }
} finally {
  await browser.close();
}
for (const fault of faults) console.error(`FAULT ${fault}`);
console.log(`${faults.length} faults`);
process.exit(faults.length === 0 ? 0 : 1);
