// Pages in every language, at a desk and on a phone: nothing cut, nothing over something else, no scrolling sideways, the other way
// round too, no barriers that axe-core finds, and a tree for screen readers that is whole and the same in each language. Demo pages
// are looked at with everything unfolded; the sheets hold every message with values as long as they come.
// Usage: CHROMIUM=/usr/bin/chromium node languages.mjs folder-for-screens page.html...
import { mkdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { basename, dirname, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { chromium } from "playwright-core";

const [screens, ...files] = process.argv.slice(2).map((path) => resolve(path));
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
mkdirSync(screens, { recursive: true });
const faults = [];
const orders = {};
const browser = await chromium.launch({ executablePath: process.env.CHROMIUM, args: ["--no-sandbox", "--disable-dev-shm-usage"] });

/** What axe-core finds, by the debugger, past the policy of the page. */
async function barriers(session) {
  await session.send("Runtime.evaluate", { expression: axe });
  const { result } = await session.send("Runtime.evaluate", {
    expression: `axe.run(document, { runOnly: { type: "tag", values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] } })
      .then((found) => JSON.stringify(found.violations.map((one) => [one.id, one.help, one.nodes[0].html.slice(0, 160)].join(" | "))))`,
    awaitPromise: true,
    returnByValue: true,
  });
  return JSON.parse(result.value).map((violation) => `axe: ${violation}`);
}

/** Roles that say nothing without a name. */
const named = new Set(["heading", "region", "button", "link", "image", "img", "group", "table", "checkbox", "radio", "combobox", "textbox", "slider"]);

/** What a screen reader is given: its faults, and its landmarks, headings, tables and controls in order. */
async function readAloud(session) {
  const { nodes } = await session.send("Accessibility.getFullAXTree");
  const seen = nodes.filter((node) => !node.ignored).map((node) => ({
    role: node.role?.value ?? "",
    name: node.name?.value?.trim() ?? "",
    level: node.properties?.find((one) => one.name === "level")?.value?.value ?? 0,
  }));
  const found = [];
  for (const role of ["main", "banner", "contentinfo"]) {
    const count = seen.filter((node) => node.role === role).length;
    if (count !== 1) found.push(`${count} of landmark ${role}`);
  }
  const headings = seen.filter((node) => node.role === "heading");
  if (headings.filter((node) => node.level === 1).length !== 1) found.push("not one heading of level 1");
  headings.forEach((node, at) => {
    if (at > 0 && node.level > headings[at - 1].level + 1) found.push(`heading "${node.name}" skips a level`);
  });
  for (const node of seen.filter((one) => named.has(one.role) && one.name === "" && one.role !== "group" && one.role !== "table")) found.push(`${node.role} without a name`);
  const tables = seen.filter((node) => node.role === "table").length;
  if (tables > 0 && !seen.some((node) => node.role === "rowheader")) found.push("tables without row headers");
  const kept = new Set(["main", "banner", "contentinfo", "heading", "region", "table", "button", "link"]);
  return { found, order: seen.filter((node) => kept.has(node.role)).map((node) => node.role + (node.level || "")).join(" ") };
}

/** Runs in the page: texts that are cut, leave their drawing, or lie over each other. */
function cramped() {
  const found = [];
  const shown = (one) => one.checkVisibility({ opacityProperty: true, visibilityProperty: true }) && !one.closest(".off, .skip");
  const named = (one) => `<${one.tagName.toLowerCase()} class="${one.getAttribute("class") ?? ""}"> ${one.textContent.trim().slice(0, 60)}`;
  for (const one of document.querySelectorAll("body *")) {
    const style = getComputedStyle(one);
    const may_scroll = one.matches(".scroll, .remarks") || one instanceof SVGElement;
    // What a box lets out is not cut: it lies over something else then, or makes the page scroll.
    const is_cut = style.overflowX !== "visible" || one.children.length === 0;
    if (is_cut && !may_scroll && one.clientWidth > 0 && style.display !== "inline" && one.scrollWidth > one.clientWidth + 1 && shown(one)) found.push(`cut: ${named(one)}`);
  }
  const texts = [...document.querySelectorAll("svg.plot text")].filter(shown).map((one) => ({ one, box: one.getBoundingClientRect(), of: one.closest("svg") }));
  for (const { one, box, of } of texts) {
    const whole = of.getBoundingClientRect();
    if (box.left < whole.left - 1 || box.right > whole.right + 1 || box.top < whole.top - 1 || box.bottom > whole.bottom + 1) found.push(`leaves its drawing: ${named(one)}`);
  }
  const leaves = [...document.querySelectorAll("body *")].filter((one) => !(one instanceof SVGElement) && shown(one) && [...one.childNodes].some((node) => node.nodeType === 3 && node.data.trim() !== ""));
  const lines = leaves.flatMap((one) => {
    const range = document.createRange();
    return [...one.childNodes].filter((node) => node.nodeType === 3 && node.data.trim() !== "").flatMap((node) => {
      range.selectNodeContents(node);
      return [...range.getClientRects()].filter((box) => box.width > 2).map((box) => ({ one, box }));
    });
  });
  const over = (list, by) => {
    const sorted = [...list].sort((a, b) => a.box.top - b.box.top);
    sorted.forEach((a, at) => {
      for (let next = at + 1; next < sorted.length && sorted[next].box.top < a.box.bottom - by; next += 1) {
        const b = sorted[next];
        if (a.one !== b.one && a.of === b.of && a.box.left < b.box.right - by && b.box.left < a.box.right - by) found.push(`over each other: ${named(a.one)} and ${named(b.one)}`);
      }
    });
  };
  over(texts, 3);
  over(lines, 4);
  return [...new Set(found)].slice(0, 12);
}

for (const file of files) {
  const name = `${basename(dirname(file))}-${basename(file, ".html")}`;
  const is_demo = basename(dirname(file)).startsWith("demo-");
  for (const width of [1280, 390]) {
    const page = await browser.newPage({ viewport: { width, height: 900 }, hasTouch: width < 600, reducedMotion: "reduce" });
    const fault = (text) => faults.push(`${name} at ${width}: ${text}`);
    page.on("pageerror", (error) => fault(`script: ${error.message}`));
    await page.goto(pathToFileURL(file).href);
    const language = await page.evaluate(() => document.documentElement.lang);
    const expected = /-([a-z]{2})(?:-|$)/.exec(name)?.[1];
    if (language !== expected) fault(`lang is ${language}, expected ${expected}`);
    await page.evaluate(() => document.querySelectorAll("details").forEach((part) => { part.open = true; }));
    for (const text of await page.evaluate(cramped)) fault(text);
    const sideways = () => page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    if ((await sideways()) > 0) fault(`scrolls sideways by ${await sideways()} px`);
    if (is_demo) {
      const session = await page.context().newCDPSession(page);
      for (const text of await barriers(session)) fault(text);
      const { found, order } = await readAloud(session);
      for (const text of found) fault(`read aloud: ${text}`);
      orders[width] ??= order;
      if (order !== orders[width]) fault("read aloud: another order of landmarks, headings, tables and controls than in the first language");
      await page.screenshot({ path: `${screens}/${name}-${width}.png`, fullPage: true });
      await page.evaluate(() => { document.documentElement.dir = "rtl"; });
      if ((await sideways()) > 0) fault(`from right to left: scrolls sideways by ${await sideways()} px`);
      for (const text of await page.evaluate(cramped)) fault(`from right to left: ${text}`);
      await page.screenshot({ path: `${screens}/${name}-${width}-rtl.png` });
    }
    await page.close();
  }
}
await browser.close();
for (const fault of faults) console.error(`FAULT ${fault}`);
console.log(`${files.length} pages, ${faults.length} faults`);
process.exit(faults.length === 0 ? 0 : 1);
