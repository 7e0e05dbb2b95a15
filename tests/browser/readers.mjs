// Where readers stumbled once: endless pages, controls below the fold, words over words, charts and tables cut on a phone,
// tables with screens of nothing in them, headings and words that say nothing.
import { basename, dirname } from "node:path";

const SCREENS = 6;
const SIZES = [[1280, 900], [1366, 768], [390, 844]];
const GONE = [
  "nothing that luck does not explain", "bare with", "reason carries", "gaps too thin to see",
  "in most logs of", "not worked out yet",
];

/** Runs in the page: texts of drawings that lie on each other, as [one, other]. */
function tangled(drawing) {
  const texts = [...drawing.querySelectorAll("text")].filter((text) => text.checkVisibility() && text.getBoundingClientRect().width > 0);
  const boxes = texts.map((text) => text.getBoundingClientRect());
  const found = [];
  boxes.forEach((one, index) => boxes.slice(0, index).forEach((other, at) => {
    // The box of a text is higher than its letters.
    const wide = Math.min(one.right, other.right) - Math.max(one.left, other.left);
    const high = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top);
    const letters = Math.min(one.height, other.height);
    if (wide > 1 && high > letters * 0.35) found.push([texts[index].textContent, texts[at].textContent]);
  }));
  return found;
}

/** Runs in the page: words of a drawing that its edge cuts. */
function cut(drawing) {
  const edge = drawing.getBoundingClientRect();
  return [...drawing.querySelectorAll("text")].filter((text) => {
    const box = text.getBoundingClientRect();
    return box.width > 0 && (box.left < edge.left - 1 || box.right > edge.right + 1 || box.top < edge.top - 2 || box.bottom > edge.bottom + 2);
  }).map((text) => text.textContent);
}

/** Runs in the page: rows of tables with more nothing than a line, and tables that their place cuts. */
function empty_or_cut() {
  const found = [];
  for (const row of document.querySelectorAll("table tr")) {
    const box = row.getBoundingClientRect();
    if (box.height === 0) continue;
    const range = document.createRange();
    range.selectNodeContents(row);
    const lines = [...range.getClientRects()].filter((line) => line.width > 0).sort((one, other) => one.top - other.top);
    let [end, most] = [box.top, 0];
    for (const line of lines.filter((line) => line.height < 60)) {
      most = Math.max(most, line.top - end);
      end = Math.max(end, line.bottom);
    }
    most = Math.max(most, box.bottom - end);
    if (most > 48) found.push(`a row of ${Math.round(box.height)} px has ${Math.round(most)} px of nothing: ${row.textContent.trim().slice(0, 40)}`);
  }
  for (const around of document.querySelectorAll(".scroll")) {
    if (around.scrollWidth > around.clientWidth + 1) found.push(`a table is cut: ${around.getAttribute("aria-label")}`);
  }
  return found;
}

export async function readers(open, file, fault) {
  const name = basename(dirname(file));
  const is_comparison = basename(file) === "comparison.html";
  // A page of more than fits may be longer, and its title takes the room of the map.
  const is_much = /hostile|crowded/.test(name);
  for (const [width, height] of SIZES) {
    for (const javaScriptEnabled of [true, false]) {
      const say = (text) => fault(`${width} x ${height}${javaScriptEnabled ? "" : " without script"}: ${text}`);
      const phone = width < 600;
      const settings = { viewport: { width, height }, javaScriptEnabled, hasTouch: phone, isMobile: phone, reducedMotion: "reduce" };
      const { context, page } = await open(file, settings, say);
      const maps = page.locator("svg.map");
      for (const map of await maps.all()) {
        if (javaScriptEnabled || !is_much) {
          for (const [one, other] of await map.evaluate(tangled)) say(`${one} lies on ${other} on the map`);
        }
        const board = await map.evaluate((svg) => {
          const scale = svg.closest(".board")?.querySelector("svg.scale");
          return scale ? Math.abs(scale.getBoundingClientRect().width - svg.getBoundingClientRect().width) : 0;
        });
        if (board > 1) say(`the scale is ${board} px wider or narrower than its map`);
      }
      if (!javaScriptEnabled) { await context.close(); continue; }

      const screens = (await page.evaluate(() => document.documentElement.scrollHeight)) / height;
      console.log(`${name} at ${width} x ${height}: ${screens.toFixed(1)} screens`);
      // A place asked about takes a third of one of its own.
      const most = SCREENS + (await page.locator(".a-asked").count()) / 3;
      if (screens > most && !is_much) say(`${screens.toFixed(1)} screens, ${most.toFixed(1)} at most`);

      if (!is_much && !(is_comparison && phone)) {
        const controls = phone ? ".tools button, .legend > summary" : ".tools button, input[data-layer], input[name=ground]";
        // A map without anything on it has no buttons; a folded legend is judged by its fold.
        for (const control of await page.locator(controls).all()) {
          if (!(await control.isVisible())) continue;
          const box = await control.boundingBox();
          const which = (await control.textContent()) || (await control.getAttribute("data-layer")) || (await control.getAttribute("value"));
          if (!box || box.y + box.height > height) say(`the control "${which}" of the map is below the first screen`);
        }
      }
      const line = page.locator("svg.map path.legs").first();
      if (await line.count() && await page.locator("input[data-layer=legs]").count()) {
        const style = await line.evaluate((path) => { const style = getComputedStyle(path); return [parseFloat(style.strokeWidth), Number(style.strokeOpacity)]; });
        const has_ground = await page.locator("input[name=ground]").count() > 0;
        if (has_ground && style[0] * style[1] > 0.3) say(`driven lines hide the ground: ${style}`);
      }
      // Near, and with every layer on, words still keep apart.
      await page.evaluate(() => document.querySelectorAll("details").forEach((part) => { part.open = true; }));
      for (const input of await page.locator("input[data-layer]").all()) await input.check();
      for (let step = 0; step < 3 && await maps.count(); step += 1) {
        for (const [one, other] of await maps.first().evaluate(tangled)) say(`step ${step}, all layers: ${one} lies on ${other}`);
        const nearer = page.getByRole("button", { name: "nearer" }).first();
        if (await nearer.isVisible().catch(() => false)) await nearer.click();
      }
      for (const plot of await page.locator("svg.plot").all()) {
        for (const [one, other] of await plot.evaluate(tangled)) say(`${one} lies on ${other} in a chart`);
        for (const words of await plot.evaluate(cut)) say(`${words} is cut in a chart`);
      }
      if (phone) for (const found of await page.evaluate(empty_or_cut)) say(found);
      const text = (await page.locator("body").innerText()).toLowerCase();
      for (const words of GONE) if (text.includes(words)) say(`says "${words}"`);
      await context.close();
    }
  }
  if (is_comparison) return;
  // The folded maps are on paper too.
  const { context, page } = await open(file, { viewport: { width: 390, height: 844 }, javaScriptEnabled: false }, fault);
  await page.emulateMedia({ media: "print" });
  const folded = page.locator("details.kept, details.legend");
  for (const part of await folded.all()) {
    const shows = await part.evaluate((details) => {
      details.open = false;
      return [...details.children].slice(1).some((child) => child.checkVisibility({ contentVisibilityAuto: true }) && child.getBoundingClientRect().height > 0);
    });
    if (!shows) fault("what is folded on screen is missing on paper");
  }
  await context.close();
}
