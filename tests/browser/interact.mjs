// Moving, drawing nearer and choosing: by mouse, by touch and by keyboard.
import { basename, dirname } from "node:path";

const box_of = (page) => page.locator("svg.map").first().evaluate((svg) => svg.getAttribute("viewBox").split(" ").map(Number));
const middle = async (page) => {
  const box = await page.locator("svg.map").first().boundingBox();
  return [box.x + box.width / 2, box.y + box.height / 2, box];
};

/** Waits for something to become true: a busy machine needs a moment for a tap to become a click. */
async function until(is_so) {
  for (let tries = 0; tries < 60; tries += 1) {
    if (await is_so()) return true;
    await new Promise((done) => setTimeout(done, 50));
  }
  return false;
}

export async function interact(open, file, screens, fault) {
  const name = basename(dirname(file));
  const { context, page } = await open(file, {}, fault);
  const is_drawn = (await page.locator("svg.map path").count()) > 0;
  await context.close();
  if (!is_drawn) return;
  const expect = (is_so, what) => { if (!is_so) fault(what); };
  await by_mouse(open, file, `${screens}/${name}`, expect, fault);
  await by_keyboard(open, file, expect, fault);
  await by_touch(open, file, `${screens}/${name}`, expect, fault);
  await without_script(open, file, expect, fault);
}

async function by_mouse(open, file, target, expect, fault) {
  const { context, page } = await open(file, { viewport: { width: 1280, height: 900 }, reducedMotion: "reduce" }, fault);
  const full = await box_of(page);
  const [x, y] = await middle(page);
  await page.mouse.dblclick(x, y);
  const near = await box_of(page);
  expect(near[2] < full[2] * 0.6, `double-click came no nearer: ${near}`);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 60, y + 40, { steps: 5 });
  await page.mouse.up();
  const moved = await box_of(page);
  expect(moved[0] < near[0] && moved[1] < near[1], `dragging did not move the map: ${near} ${moved}`);
  // The words of a place that was hit lie over the lower half of the map.
  const [, , box] = await middle(page);
  await page.mouse.move(x, box.y + box.height * 0.25);
  await page.mouse.wheel(0, -300);
  expect(await until(async () => (await box_of(page))[2] < moved[2]), "the wheel came no nearer");
  await page.getByRole("button", { name: "whole lawn" }).first().click();
  expect((await box_of(page)).every((value, index) => Math.abs(value - full[index]) < 0.01), "whole lawn does not show all");
  await page.getByRole("button", { name: "nearer" }).first().click();
  expect((await box_of(page))[2] < full[2], "the button came no nearer");
  await page.getByRole("button", { name: "whole lawn" }).first().click();

  const links = page.locator(".finder a, .maplink");
  if (await links.count()) {
    const key = await links.first().getAttribute("data-item");
    await links.first().click();
    expect((await box_of(page))[2] < full[2], "a place chosen in the list is not shown on the map");
    expect(await page.locator(`svg.map a[data-item=${key}].chosen`).count() > 0, "the chosen place has no mark");
    if (await page.locator("#picked").count()) {
      expect(await page.locator("#picked").isVisible(), "the words of the chosen place are not there");
    }
    await page.screenshot({ path: `${target}-chosen.png` });
    await page.keyboard.press("Escape");
    expect(await page.locator(".chosen").count() === 0, "Escape keeps the choice");
    // Where marks lie on each other, one that is uppermost.
    const [at, on_map] = await page.locator("svg.map").first().evaluate((svg) => {
      for (const hit of svg.querySelectorAll(".ly:not(.off) a .hit")) {
        const box = hit.getBoundingClientRect();
        const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
        const mark = hit.closest("a");
        if (mark.contains(document.elementFromPoint(x, y))) return [[x, y], mark.dataset.item];
      }
      return [[0, 0], ""];
    });
    await page.mouse.click(...at);
    expect(on_map && await page.locator(`[id=${on_map}].chosen`).count() === 1, "a place chosen on the map is not chosen in the list");
    await page.keyboard.press("Escape");
  }
  for (const input of await page.locator("input[data-layer]").all()) {
    const layer = await input.getAttribute("data-layer");
    const groups = page.locator(`svg.map g[data-layer=${layer}]`);
    const is_on = await input.isChecked();
    const shown = async () => groups.first().evaluate((group) => getComputedStyle(group).display !== "none");
    if ((await groups.count()) === 0) { fault(`layer ${layer} is nowhere on the map`); continue; }
    expect((await shown()) === is_on, `layer ${layer} does not begin as its switch says`);
    await input.click();
    expect((await shown()) !== is_on, `layer ${layer} does not switch`);
    if (is_on) await input.click();
  }
  for (const choice of await page.locator("input[name=ground]").all()) {
    await choice.click();
    const value = await choice.getAttribute("value");
    const shown = await page.locator("svg.map g.ly > image").evaluateAll((images) =>
      images.filter((image) => getComputedStyle(image.parentElement).display !== "none").map((image) => image.parentElement.dataset.layer));
    expect(shown.join() === value, `ground ${value} shows ${shown}`);
    if (value) await page.locator(".first, body").first().screenshot({ path: `${target}-ground-${value}.png` });
  }
  await context.close();
}

async function by_keyboard(open, file, expect, fault) {
  const { context, page } = await open(file, { viewport: { width: 1280, height: 900 }, reducedMotion: "reduce" }, fault);
  const full = await box_of(page);
  let steps = 0;
  const is_map = () => page.evaluate(() => document.activeElement.matches("svg.map"));
  while (!(await is_map()) && steps < 40) { await page.keyboard.press("Tab"); steps += 1; }
  expect(await is_map(), "the map cannot be reached by Tab");
  await page.keyboard.press("+");
  await page.keyboard.press("+");
  const near = await box_of(page);
  expect(near[2] < full[2], "+ comes no nearer");
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("ArrowDown");
  const moved = await box_of(page);
  expect(moved[0] > near[0] && moved[1] > near[1], "arrow keys do not move the map");
  await page.keyboard.press("0");
  expect(Math.abs((await box_of(page))[2] - full[2]) < 0.01, "0 does not show all");
  if (await page.locator("svg.map a").count()) {
    await page.keyboard.press("Tab");
    const key = await page.evaluate(() => document.activeElement.getAttribute("data-item"));
    expect(key, "the marks cannot be reached by Tab");
    await page.keyboard.press("Enter");
    expect(await page.locator(`svg.map a[data-item="${key}"].chosen`).count() > 0, "Enter does not choose a mark");
  }
  await context.close();
}

async function by_touch(open, file, target, expect, fault) {
  const { context, page } = await open(file, { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, reducedMotion: "reduce" }, fault);
  const map = page.locator("svg.map").first();
  await map.scrollIntoViewIfNeeded();
  const full = await box_of(page);
  const [x, y] = await middle(page);
  const session = await context.newCDPSession(page);
  const touch = (type, points) => session.send("Input.dispatchTouchEvent", { type, touchPoints: points.map(([px, py], id) => ({ x: px, y: py, id })) });
  await touch("touchStart", [[x - 20, y], [x + 20, y]]);
  for (let step = 1; step <= 6; step += 1) await touch("touchMove", [[x - 20 - step * 10, y], [x + 20 + step * 10, y]]);
  await touch("touchEnd", []);
  const near = await box_of(page);
  expect(near[2] < full[2] * 0.8, `pinching came no nearer: ${near}`);
  await touch("touchStart", [[x, y]]);
  for (let step = 1; step <= 6; step += 1) await touch("touchMove", [[x + step * 8, y]]);
  await touch("touchEnd", []);
  expect((await box_of(page))[0] < near[0], "one finger does not move a map that is near");
  // A tap right after a swipe stops the swipe and is no click.
  await page.waitForTimeout(700);
  await page.getByRole("button", { name: "whole lawn" }).first().tap();
  expect(await until(async () => Math.abs((await box_of(page))[2] - full[2]) < 0.01), "whole lawn does not show all after touch");
  const hit = page.locator("svg.map .ly:not(.off) a .hit").first();
  if (await hit.count()) {
    await page.waitForTimeout(700);
    const at = await hit.boundingBox();
    await page.touchscreen.tap(at.x + at.width / 2, at.y + at.height / 2);
    expect(await until(async () => (await page.locator("svg.map a.chosen").count()) > 0), "a tap does not choose a mark");
    await page.screenshot({ path: `${target}-tapped.png` });
  }
  await context.close();
}

async function without_script(open, file, expect, fault) {
  const { context, page } = await open(file, { viewport: { width: 1280, height: 900 }, javaScriptEnabled: false }, fault);
  const link = page.locator(".finder a").first();
  if (await link.count()) {
    const key = await link.getAttribute("data-item");
    await link.click();
    expect(page.url().endsWith(`#${key}`), "without script a place in the list leads nowhere");
    expect(await page.locator(`[id=${key}]`).isVisible(), "without script the card of a place does not show");
  }
  for (const hidden of [".tools", ".picks", ".sw input"]) {
    const first = page.locator(hidden).first();
    if (await first.count()) expect(!(await first.isVisible()), `${hidden} shows without script, which it needs`);
  }
  await context.close();
}
