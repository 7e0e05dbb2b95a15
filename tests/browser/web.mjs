// Does with the local page what people do with it, at a desk and on a phone, in a browser that is offline: opens it from the disk,
// takes the invented garden, logs of one's own, a plan and settings; sees, asks, compares, saves, stops. Every file is compared
// with what the command makes, byte for byte; faults must have its words; nothing may be asked for, logged or barred.
// Usage: CHROMIUM=... TUSSOCK=target/debug/tussock node web.mjs folder-for-screens target/web/tussock.html
import { execFileSync, spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { basename, join, resolve } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { gzipSync } from "node:zlib";
import { chromium } from "playwright-core";

const [screens, file] = process.argv.slice(2).map((path) => resolve(path));
const root = resolve(fileURLToPath(import.meta.url), "../../..");
const fixture = (path) => join(root, "fixtures", path);
const tussock = resolve(process.env.TUSSOCK);
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const scratch = mkdtempSync(join(tmpdir(), "tussock-web-"));
mkdirSync(screens, { recursive: true });

const DEMO = {
  before: ["demo/before/2026-05-04.gpx.gz", "demo/before/2026-05-05.gpx.gz"].map(fixture),
  after: ["demo/after/2026-05-11.gpx.gz", "demo/after/2026-05-12.gpx.gz"].map(fixture),
  plan: fixture("demo/plan.geojson"),
  after_plan: fixture("demo/plan-after.geojson"),
  settings: fixture("demo/settings.toml"),
};
/** Three that can be analysed; then one that is no garden, and one whose columns have no names. */
const RECORDINGS = ["coverage/plaza_lawnmower/Plaza1_GT.derived.csv", "nmea/misc/TrimbleR2SampleData.txt", "static/adsb-grid/east_gnss.csv", "gpx/gps-accuracy/routeA/Lezyne.gpx", "coverage/water_depth/260939.LOG"].map((path) => fixture(`recordings/${path}`));

const faults = [];
const measured = [];
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM,
  args: ["--no-sandbox", "--disable-dev-shm-usage", "--enable-precise-memory-info"],
});

/** What the command says and makes. */
function command(...args) {
  const out = mkdtempSync(join(scratch, "out-"));
  const ran = spawnSync(tussock, [...args, "--out", out], { encoding: "utf8", cwd: scratch });
  return { out, failed: ran.status !== 0, words: ran.stderr };
}

/** The page, in a context of its own without a network; what it should not do becomes a fault. */
async function open(settings, fault) {
  const url = pathToFileURL(file).href;
  const context = await browser.newContext({ acceptDownloads: true, reducedMotion: "reduce", ...settings });
  await context.setOffline(true);
  const page = await context.newPage();
  page.setDefaultTimeout(180_000);
  page.on("console", (message) => {
    if (["error", "warning"].includes(message.type())) fault(`console: ${message.text()}`);
  });
  page.on("pageerror", (error) => fault(`script: ${error.message}`));
  page.on("dialog", async (dialog) => { fault(`dialog: ${dialog.message()}`); await dialog.dismiss(); });
  page.on("request", (request) => {
    const asked = request.url();
    if (asked !== url && !asked.startsWith("blob:") && !asked.startsWith("data:")) fault(`asked for ${asked}`);
  });
  await page.goto(url, { waitUntil: "load" });
  return { context, page };
}

/** What axe-core finds. Its own script is let in by the debugger, past the policy of the page. */
async function barriers(page, where, fault) {
  const session = await page.context().newCDPSession(page);
  await session.send("Runtime.evaluate", { expression: axe });
  const { result, exceptionDetails } = await session.send("Runtime.evaluate", {
    expression: `axe.run(document, { iframes: false, runOnly: { type: "tag", values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] } })
      .then((found) => JSON.stringify(found.violations.map((one) => [one.id, one.help, one.nodes.length, one.nodes[0].html.slice(0, 200), one.nodes[0].failureSummary.slice(0, 200)])))`,
    awaitPromise: true,
    returnByValue: true,
  });
  if (exceptionDetails) return fault(`axe: ${exceptionDetails.text}`);
  for (const violation of JSON.parse(result.value)) fault(`${where}: axe: ${violation.join(" | ")}`);
}

const frame_of = (page) => page.frameLocator("#page");
const failure_of = (page) => page.locator("#fault p").allInnerTexts();
const choose = (page, list, paths) => page.locator(`section:not([hidden]) input[data-list=${list}]`).setInputFiles(paths);

/** Presses and waits until there is an answer or a fault. Seconds that it took. */
async function until_answered(page, press) {
  const start = performance.now();
  await press();
  await page.waitForFunction(() => document.getElementById("busy").hidden && (document.body.dataset.view === "see" || !document.getElementById("fault").hidden));
  return (performance.now() - start) / 1000;
}
const press = (page, name) => page.getByRole("button", { name, exact: true }).filter({ visible: true }).first().click();

async function saved(page, name) {
  const [download] = await Promise.all([page.waitForEvent("download"), press(page, name)]);
  if (download.suggestedFilename() !== name) throw new Error(`${download.suggestedFilename()} instead of ${name}`);
  return readFileSync(await download.path());
}

/** All files that the page offers are those of the command. */
async function compare_files(page, out, where, fault) {
  await press(page, "Save");
  const names = await page.locator("#files button").allInnerTexts();
  if (names.length === 0) fault(`${where}: no file is offered`);
  for (const name of names) {
    const [ours, theirs] = [await saved(page, name), readFileSync(join(out, name))];
    if (!ours.equals(theirs)) {
      const at = ours.findIndex((byte, index) => byte !== theirs[index]);
      writeFileSync(join(screens, `differs-${name}`), ours);
      fault(`${where}: ${name} differs from the command's at byte ${at}: ${ours.subarray(at - 40, at + 40)} instead of ${theirs.subarray(at - 40, at + 40)}`);
    }
  }
  return names;
}

/** The invented garden: analysed, looked at, asked, saved, compared. */
async function demo(name, settings) {
  const fault = (text) => faults.push(`${name}: ${text}`);
  const is_phone = settings.viewport.width < 600;
  const { context, page } = await open(settings, fault);
  const look = (what) => page.screenshot({ path: `${screens}/web-${name}-${what}.png` });
  const fits = async (where) => {
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    if (wide > settings.viewport.width) fault(`${where} scrolls sideways: ${wide} px`);
  };
  await look("open");
  await fits("open");
  await barriers(page, "open", fault);

  const seconds = await until_answered(page, () => press(page, "Take the invented garden"));
  measured.push(`${name}: demo with suggestions, library unpacked first: ${seconds.toFixed(1)} s`);
  if ((await failure_of(page)).length > 0) return fault(`demo: ${await failure_of(page)}`);
  const shown = frame_of(page);
  await shown.locator("svg.map").first().waitFor();
  const words = await shown.locator("body").innerText();
  for (const wanted of ["Is the log good enough?", "What was missed?", "driven over"]) {
    if (!words.toLowerCase().includes(wanted.toLowerCase())) fault(`the page does not say ${wanted}`);
  }
  await look("see");
  await fits("see");
  await barriers(page, "see", fault);
  // Links within the page lead within the page.
  await shown.locator(".finder a").first().click();
  if (!(await shown.locator("#picked").isVisible())) fault("a place chosen in the list says nothing");

  // A place by tap, in the ground that was missed.
  await shown.getByRole("button", { name: "whole lawn" }).first().click();
  const box = await shown.locator("svg.map").first().boundingBox();
  const point = { x: box.width * 0.84, y: box.height * 0.1 };
  await shown.locator("svg.map").first()[is_phone ? "tap" : "click"]({ position: point });
  await page.locator("#told").filter({ hasText: "Where" }).waitFor();
  const typed = await page.locator("#at").inputValue();
  await look("asked");
  await barriers(page, "asked", fault);
  const analysed = command("analyse", ...DEMO.before, "--plan", DEMO.plan, "--settings", DEMO.settings);
  const told = execFileSync(tussock, ["ask", join(analysed.out, "findings.json"), `--at-m=${typed}`], { encoding: "utf8" });
  if (!told.includes("Missed: it lies in pocket M1")) fault(`tapped in M1, asked at ${typed}: ${told}`);
  const flat = (text) => text.replace(/\s+/g, " ").trim();
  const heard = await page.locator("#told").innerText();
  if (flat(heard) !== flat(told)) fault(`asked at ${typed}: ${flat(heard)} instead of ${flat(told)}`);

  // The same by keyboard, in degrees, and a place that is none.
  if (!(await page.locator("#at").isVisible())) await page.locator("#typed summary").click();
  await page.locator("#at").fill("here");
  await page.locator("#at").press("Enter");
  await page.locator("#fault").filter({ hasText: "is no place, expected metres east,north, such as 4.5,-2" }).waitFor();
  await page.locator("input[value=at_deg]").check();
  await page.locator("#at").fill("53.86006,12.42021");
  await page.locator("#at").press("Enter");
  await page.locator("#told").filter({ hasText: "Where" }).waitFor();
  if (await page.locator("#fault").isVisible()) fault("a fault stays after it was mended");

  // Files, before and after an answer is put at the head of the page.
  const names = await compare_files(page, analysed.out, "demo", fault);
  if (names.join() !== "findings.json,findings.geojson,report.html,pockets.gpx") fault(`files offered: ${names}`);
  await look("save");
  await fits("save");
  await barriers(page, "save", fault);
  await press(page, "See");
  await press(page, "Begin the page with this answer");
  await shown.locator(".a-asked").waitFor();
  const headed = command("analyse", ...DEMO.before, "--plan", DEMO.plan, "--settings", DEMO.settings, "--complaint", "53.86006,12.42021");
  await compare_files(page, headed.out, "demo with a place asked about", fault);
  const hidden = command("analyse", ...DEMO.before, "--plan", DEMO.plan, "--settings", DEMO.settings, "--private", "--complaint", "53.86006,12.42021");
  await page.locator("#private").check();
  await compare_files(page, hidden.out, "demo, private", fault);

  // Kept on the device where asked for, opened after the page was closed, and deleted in one tap.
  await page.locator("#keep-name").fill("Garden <b>7</b>");
  await press(page, "Keep");
  await page.locator("#keep-said").filter({ hasText: "is kept" }).waitFor();
  await page.reload();
  await page.locator("#kept").waitFor();
  await look("kept");
  await until_answered(page, () => page.locator("#kept-list button").click());
  await shown.locator(".a-asked").waitFor();
  await press(page, "Open");
  await press(page, "Delete all that is kept");
  await page.locator("#kept").waitFor({ state: "hidden" });
  if ((await page.evaluate(() => indexedDB.databases())).length > 0) fault("something is still kept");

  // Paper is asked for from the frame.
  const inner = page.frames().find((one) => one !== page.mainFrame());
  await inner.evaluate(() => { window.print = () => { document.documentElement.dataset.printed = "yes"; }; });
  await press(page, "Save");
  await press(page, "Print the page");
  await shown.locator("html[data-printed=yes]").waitFor();

  // Compared: the garden before and after.
  await press(page, "Compare");
  await look("compare");
  await fits("compare");
  await barriers(page, "compare", fault);
  const compared_s = await until_answered(page, () => press(page, "Take the invented garden"));
  measured.push(`${name}: demo compared: ${compared_s.toFixed(1)} s`);
  const compared = command("compare", "--before", ...DEMO.before, "--after", ...DEMO.after, "--plan", DEMO.plan, "--after-plan", DEMO.after_plan, "--settings", DEMO.settings);
  await look("compared");
  await compare_files(page, compared.out, "demo compared", fault);

  // Another language: of the page and of what it shows; remembered only where that is asked for.
  const language = () => page.evaluate(() => document.documentElement.lang);
  await page.locator("nav button").first().click();
  await page.locator("#language").selectOption("de");
  await shown.locator("html[lang=de]").waitFor({ state: "attached" });
  if ((await language()) !== "de") fault(`in German lang is ${await language()}`);
  if ((await page.locator("#find, #analyse").first().innerText()) === "Find what was missed") fault("in German it speaks English");
  await look("german");
  await fits("german");
  await barriers(page, "german", fault);
  await page.reload();
  if ((await language()) !== "en") fault("a language is remembered though nobody asked");
  await page.locator("#language").selectOption("de");
  await page.locator("#remember").check();
  await page.reload();
  if ((await language()) !== "de") fault("the language is forgotten");
  await page.locator("#remember").uncheck();
  if ((await page.evaluate(() => localStorage.length)) > 0) fault("the language is still remembered");
  await context.close();
}

/** Files of one's own: chosen, dropped and pasted; with and without suggestions; damaged, mistaken, hostile; stopped; saved and opened. */
async function own_files(name, settings) {
  const fault = (text) => faults.push(`${name}: ${text}`);
  const { context, page } = await open(settings, fault);
  const again = async () => { await page.reload(); };
  const analyse = () => until_answered(page, () => press(page, "Find what was missed"));

  // Without a file.
  await analyse();
  if (!(await failure_of(page)).join().includes("no log is given")) fault("no word that no log is given");

  // The demo's night without suggestions, by its own files.
  await choose(page, "before", DEMO.before.slice(0, 1));
  await choose(page, "plan", [DEMO.plan]);
  await choose(page, "settings", [DEMO.settings]);
  await page.locator("#suggestions").uncheck();
  const night_s = await analyse();
  const heap = await page.evaluate(() => performance.memory?.usedJSHeapSize ?? 0);
  measured.push(`${name}: a night without suggestions: ${night_s.toFixed(1)} s, ${(heap / 2 ** 20).toFixed(0)} MiB of script`);
  const night = command("analyse", DEMO.before[0], "--plan", DEMO.plan, "--settings", DEMO.settings, "--no-suggestions");
  await compare_files(page, night.out, "a night without suggestions", fault);

  // Its saved findings, opened.
  await again();
  await choose(page, "before", [join(night.out, "findings.json")]);
  await analyse();
  await compare_files(page, night.out, "saved findings", fault);

  // Recordings, with a width and without any other file.
  for (const recording of RECORDINGS) {
    await again();
    await choose(page, "before", [recording]);
    await page.locator("#width").fill("50");
    await analyse();
    const theirs = command("analyse", recording, "--cut-width", "50cm");
    const said = (await failure_of(page)).join("\n");
    if (theirs.failed) {
      const wanted = theirs.words.replaceAll(recording, basename(recording)).replace(/^error: /, "").trim();
      if (said.replace(/\s+/g, " ") !== wanted.replace(/\s+/g, " ")) fault(`${recording}: ${said} instead of ${wanted}`);
    } else await compare_files(page, theirs.out, recording, fault);
  }

  // Dropped: a damaged log, and one whose name would be markup.
  await again();
  const whole = readFileSync(DEMO.before[0]);
  const hostile = '<img src=x onerror="alert(1)"> \u202egpx.csv';
  const dropped = [
    { name: "torn.gpx.gz", bytes: whole.subarray(0, whole.length * 0.6).toString("base64") },
    { name: hostile, bytes: readFileSync(RECORDINGS[1]).toString("base64") },
  ];
  for (const { name: dropped_name, bytes } of dropped) {
    await again();
    await page.evaluate(([of, base64]) => {
      const given = new DataTransfer();
      given.items.add(new File([Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))], of));
      for (const kind of ["dragenter", "dragover", "drop"]) {
        document.body.dispatchEvent(new DragEvent(kind, { dataTransfer: given, bubbles: true, cancelable: true }));
      }
    }, [dropped_name, bytes]);
    if (!(await page.locator("#open .given").first().innerText()).includes(dropped_name.slice(0, 10))) fault(`${dropped_name} is not listed`);
    await page.locator("#width").fill("22");
    await page.locator("#suggestions").uncheck();
    await analyse();
    if ((await page.locator("img").count()) > 0) fault("a name became markup");
    const text = (await failure_of(page)).join() || (await frame_of(page).locator("body").innerText());
    if (text.length < 20) fault(`${dropped_name}: says nothing`);
  }

  // Mistaken files, in the words of the command.
  const mistakes = [
    ["before", "holiday.jpg", Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 0, 0, 0, 1, 2, 3, 4])],
    ["before", "route.gpx", Buffer.from('<gpx><trk><trkseg><trkpt lat="1" lon="2"/></trkseg></trk></gpx>')],
    ["before", "empty.log", Buffer.from("")],
    ["before", "night.zst", Buffer.from([0x28, 0xb5, 0x2f, 0xfd, 0, 0, 0, 0, 0, 0, 0, 0])],
    ["plan", "garden.geojson", Buffer.from('{"type":"FeatureCollection","features":[]}')],
    ["plan", "crossed.geojson", Buffer.from('{"type":"FeatureCollection","features":[{"type":"Feature","properties":{"role":"lawn"},"geometry":{"type":"Polygon","coordinates":[[[1,1],[1.001,1.001],[1.001,1],[1,1.001],[1,1]]]}}]}')],
    ["settings", "garden.toml", Buffer.from("[machine]\ncutwidth_m = 0.22\n")],
    ["settings", "binary.toml", Buffer.from([0x5b, 0xff, 0xfe])],
  ];
  for (const [list, mistaken, bytes] of mistakes) {
    await again();
    const path = join(scratch, mistaken);
    writeFileSync(path, bytes);
    await choose(page, "before", list === "before" ? [path] : [DEMO.before[0]]);
    if (list !== "before") await choose(page, list, [path]);
    await analyse();
    const args = list === "before" ? [path] : [DEMO.before[0], `--${list}`, path];
    const theirs = command("analyse", ...args);
    const said = (await page.locator("#fault").innerText()).replace(/\s+/g, " ").trim();
    const wanted = theirs.words.replaceAll(path, mistaken).replace(/^error: /, "").replace(/\s+/g, " ").trim();
    // Zstandard is C code that is not inside.
    const is_ours = mistaken === "night.zst" ? said.includes("Zstandard data (unpack it first)") : said === wanted;
    if (!is_ours) fault(`${mistaken}: "${said}" instead of "${wanted}"`);
  }
  await page.screenshot({ path: `${screens}/web-${name}-fault.png` });
  await barriers(page, "fault", fault);

  // Pasted, and stopped; then done after all.
  await again();
  await page.locator("summary", { hasText: "Paste a log" }).click();
  await page.locator("#pasted").fill(readFileSync(RECORDINGS[1], "utf8"));
  await press(page, "Take this text");
  await page.locator("#width").fill("50");
  await analyse();
  await press(page, "Open");
  await choose(page, "before", DEMO.before);
  await page.locator("#open").getByRole("button", { name: "take out pasted.txt" }).click();
  await choose(page, "plan", [DEMO.plan]);
  await choose(page, "settings", [DEMO.settings]);
  await page.locator("#suggestions").check();
  await press(page, "Find what was missed");
  await page.locator("#stage").filter({ hasText: /locating|counting|suggesting/ }).waitFor();
  await page.screenshot({ path: `${screens}/web-${name}-busy.png` });
  const stop_at = performance.now();
  await press(page, "Stop");
  await page.locator("#busy").waitFor({ state: "hidden" });
  measured.push(`${name}: stopped in ${(performance.now() - stop_at).toFixed(0)} ms`);
  if ((await failure_of(page)).length > 0) fault("stopping is told as a fault");
  // What was shown before still answers.
  await press(page, "See");
  await page.locator("#typed").evaluate((details) => { details.open = true; });
  await page.locator("#at").fill("0,0");
  await page.locator("#at").press("Enter");
  await page.locator("#told").filter({ hasText: "Where" }).waitFor();
  await context.close();
}

/** By keyboard alone, from the first key to the answer. */
async function by_keyboard(settings) {
  const fault = (text) => faults.push(`keyboard: ${text}`);
  const { context, page } = await open(settings, fault);
  const focus_on = async (name) => {
    for (let tries = 0; tries < 60; tries += 1) {
      await page.keyboard.press("Tab");
      const words = await page.evaluate(() => document.activeElement?.textContent ?? "");
      if (words.startsWith(name)) return;
    }
    throw new Error(`${name} cannot be reached by keyboard`);
  };
  await focus_on("Take the invented garden");
  await until_answered(page, () => page.keyboard.press("Enter"));
  await focus_on("Type a place");
  await context.close();
}

const size = statSync(file).size;
measured.push(`size: ${size} bytes, of which gzip would still take ${(100 * (1 - gzipSync(readFileSync(file)).length / size)).toFixed(0)} %`);
if (size > 5_000_000) faults.push(`${size} bytes, expected at most 5,000,000`);
const DESK = { viewport: { width: 1280, height: 900 } };
const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2, colorScheme: "dark" };
const only = process.env.ONLY ?? "";
for (const [name, settings] of [["desk", DESK], ["phone", PHONE]]) {
  if (!only || only.includes("demo")) await demo(name, settings).catch((error) => faults.push(`${name}: ${error.message}`));
}
if (!only || only.includes("own")) await own_files("own", DESK).catch((error) => faults.push(`own: ${error.message}`));
if (!only || only.includes("keys")) await by_keyboard(DESK).catch((error) => faults.push(`keyboard: ${error.message}`));
await browser.close();
for (const line of measured) console.log(line);
for (const line of faults) console.error(`fault: ${line}`);
console.log(`${faults.length} faults`);
process.exit(faults.length > 0 ? 1 : 0);
