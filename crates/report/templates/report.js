(() => {
"use strict";
const doc = document, root = doc.documentElement;
root.classList.add("js");
const all = (what, within = doc) => [...within.querySelectorAll(what)];
const NEAREST = 14;

// One map that can be moved and drawn nearer. Its window on the drawing is x, y, wide.
class Sheet {
  constructor(frame) {
    this.frame = frame;
    this.svg = frame.querySelector("svg.map");
    const box = this.svg.viewBox.baseVal;
    this.full = { width: box.width, height: box.height };
    this.ratio = box.height / box.width;
    this.perMetre = Number(this.svg.dataset.unitsPerM) || 1;
    this.scale = frame.parentElement.querySelector("svg.scale");
    this.fingers = new Map();
    this.wasDragged = false;
    this.svg.setAttribute("tabindex", "0");
    this.all();
    const tools = frame.parentElement.querySelector(".tools");
    if (tools) {
      tools.hidden = false;
      tools.addEventListener("click", (event) => {
        const what = event.target.closest("button")?.dataset.do;
        if (what === "all") this.all();
        else if (what) this.nearer(what === "in" ? 1.6 : 1 / 1.6);
      });
    }
    this.listen();
  }
  show(x, y, width) {
    this.width = Math.min(this.full.width, Math.max(this.full.width / NEAREST, width));
    const height = this.width * this.ratio;
    this.x = Math.min(this.full.width - this.width, Math.max(0, x));
    this.y = Math.min(this.full.height - height, Math.max(0, y));
    this.svg.setAttribute("viewBox", `${this.x} ${this.y} ${this.width} ${height}`);
    // What shows only when near is there before words are kept apart.
    this.frame.classList.toggle("near", this.width < this.full.width * 0.999);
    this.fit();
  }
  // Signs and words keep their size on screen.
  fit() {
    const pixels = this.svg.getBoundingClientRect().width;
    if (pixels > 0) this.scale?.style.setProperty("--k", pixels / this.full.width);
    if (pixels > 0) this.svg.style.setProperty("--k", pixels / this.width);
    this.measure();
    this.untangle();
  }
  // Words that would lie on others give way: ids stay longest, then distances, then names of what was installed.
  untangle() {
    const rank = (text) => ["id", "tp", "nm"].findIndex((name) => text.classList.contains(name));
    const texts = all(".words text", this.svg).sort((one, other) => rank(one) - rank(other));
    texts.forEach((text) => text.classList.remove("under"));
    const kept = [];
    const under = texts.filter((text) => {
      const box = text.getBoundingClientRect();
      if (box.width === 0) return false;
      const lies = kept.some((other) => box.left < other.right && box.right > other.left && box.top + 3 < other.bottom && box.bottom - 3 > other.top);
      if (!lies) kept.push(box);
      return lies;
    });
    under.forEach((text) => text.classList.add("under"));
  }
  measure() {
    if (!this.scale) return;
    const { unit, unitM, decimal } = this.scale.dataset;
    const fits = ((this.width / this.perMetre) * 0.28) / Number(unitM);
    const power = 10 ** Math.floor(Math.log10(fits));
    const round = [5, 2, 1].map((step) => step * power).find((length) => length <= fits) || power;
    const units = round * Number(unitM) * this.perMetre * (this.full.width / this.width);
    const [whole, half] = all("rect", this.scale);
    const words = this.scale.querySelector("text");
    whole.setAttribute("width", units);
    half.setAttribute("width", units / 2);
    words.setAttribute("x", Number(whole.getAttribute("x")) + units + 10);
    words.textContent = `${round < 1 ? Number(round.toPrecision(2)) : round} ${unit}`.replace(".", decimal);
  }
  all() { this.show(0, 0, this.full.width); }
  nearer(times, at) {
    const width = Math.min(this.full.width, Math.max(this.full.width / NEAREST, this.width / times));
    const [px, py] = at || [0.5, 0.5];
    const x = this.x + px * (this.width - width);
    const y = this.y + py * (this.width - width) * this.ratio;
    this.show(x, y, width);
  }
  shift(dx, dy) { this.show(this.x + dx * this.width, this.y + dy * this.width * this.ratio, this.width); }
  place(event) {
    const box = this.svg.getBoundingClientRect();
    return [(event.clientX - box.left) / box.width, (event.clientY - box.top) / box.height];
  }
  // Draws a mark so near that it fills a good part of the map.
  focusOn(mark) {
    const box = mark.getBBox();
    const width = Math.max(box.width, box.height / this.ratio, this.perMetre * 3) * 2.4;
    const x = Number(mark.dataset.x), y = Number(mark.dataset.y);
    this.show(x - width / 2, y - (width * this.ratio) / 2, width);
  }
  listen() {
    const svg = this.svg;
    svg.addEventListener("pointerdown", (event) => {
      if (event.button > 0) return;
      this.fingers.set(event.pointerId, event);
      this.wasDragged = false;
      this.from = { x: event.clientX, y: event.clientY };
    });
    svg.addEventListener("pointermove", (event) => {
      const last = this.fingers.get(event.pointerId);
      if (!last) return;
      if (this.fingers.size === 1) {
        if (!this.wasDragged && Math.hypot(event.clientX - this.from.x, event.clientY - this.from.y) < 6) return;
        if (!this.wasDragged) svg.setPointerCapture(event.pointerId);
        this.wasDragged = true;
        const box = svg.getBoundingClientRect();
        this.shift((last.clientX - event.clientX) / box.width, (last.clientY - event.clientY) / box.height);
      } else {
        this.wasDragged = true;
        const other = [...this.fingers.values()].find((finger) => finger.pointerId !== event.pointerId);
        const apart = (one) => Math.hypot(one.clientX - other.clientX, one.clientY - other.clientY) || 1;
        const [ax, ay] = this.place(event), [bx, by] = this.place(other);
        this.nearer(apart(event) / apart(last), [(ax + bx) / 2, (ay + by) / 2]);
      }
      this.fingers.set(event.pointerId, event);
    });
    const gone = (event) => this.fingers.delete(event.pointerId);
    svg.addEventListener("pointerup", gone);
    svg.addEventListener("pointercancel", gone);
    // The end of a drag is no choice.
    svg.addEventListener("click", (event) => {
      if (!this.wasDragged) return;
      this.wasDragged = false;
      event.preventDefault();
      event.stopPropagation();
    }, true);
    svg.addEventListener("dragstart", (event) => event.preventDefault());
    svg.addEventListener("dblclick", (event) => { event.preventDefault(); this.nearer(2, this.place(event)); });
    svg.addEventListener("wheel", (event) => {
      // A page that scrolls past is not caught; a map that was touched, or a pinch on a pad, is meant.
      if (!event.ctrlKey && !this.frame.parentElement.contains(doc.activeElement)) return;
      event.preventDefault();
      this.nearer(Math.exp(-event.deltaY * (event.ctrlKey ? 0.01 : 0.0016)), this.place(event));
    }, { passive: false });
    svg.addEventListener("keydown", (event) => {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      const steps = { ArrowLeft: [-0.15, 0], ArrowRight: [0.15, 0], ArrowUp: [0, -0.15], ArrowDown: [0, 0.15] };
      if (steps[event.key]) this.shift(...steps[event.key]);
      else if (event.key === "+" || event.key === "=") this.nearer(1.5);
      else if (event.key === "-") this.nearer(1 / 1.5);
      else if (event.key === "0" || event.key === "Home") this.all();
      else return;
      event.preventDefault();
    });
  }
}

const sheets = all(".frame").filter((frame) => frame.querySelector("svg.map a, svg.map g, svg.map path")).map((frame) => new Sheet(frame));
addEventListener("resize", () => sheets.forEach((sheet) => sheet.fit()));
// Paper shows all that is folded away on screen; afterwards it is folded again.
let unfolded = [];
addEventListener("beforeprint", () => {
  sheets.forEach((sheet) => sheet.all());
  unfolded = all("details:not([open])");
  unfolded.forEach((part) => { part.open = true; });
});
addEventListener("afterprint", () => unfolded.forEach((part) => { part.open = false; }));

// On a narrow screen the legend is folded between map and answers, and so are the small maps: they take a screen each.
const narrow = matchMedia("(max-width:900px)");
const fold = () => all("details.legend, details.kept").forEach((part) => { part.open = !narrow.matches; });
narrow.addEventListener("change", fold);
fold();

// Layers: the legend is the switchboard.
const layer = (name, isOn) => all("svg.map [data-layer]").filter((group) => group.dataset.layer === name).forEach((group) => group.classList.toggle("off", !isOn));
const untangle = () => sheets.forEach((sheet) => sheet.untangle());
const switches = all("input[data-layer]");
switches.forEach((box) => {
  layer(box.dataset.layer, box.checked);
  box.addEventListener("change", () => { layer(box.dataset.layer, box.checked); untangle(); });
});
untangle();
const grounds = all("input[name=ground]");
const ground = () => grounds.forEach((choice) => {
  if (choice.value) layer(choice.value, choice.checked);
  all(".ground").filter((key) => key.dataset.ground === choice.value).forEach((key) => { key.hidden = !choice.checked; });
});
grounds.forEach((choice) => choice.addEventListener("change", ground));
if (grounds.length) ground();

// A place chosen anywhere shows on the map, and its words beside it.
const picked = doc.getElementById("picked");
const item = (key) => all("[data-item]").filter((link) => link.dataset.item === key);
function words(key) {
  const card = doc.getElementById(key);
  if (!picked || !card) return;
  picked.replaceChildren();
  const title = card.querySelector("h3, .tag");
  const head = doc.createElement("p");
  head.className = "head";
  head.append(...[...(title.matches("h3") ? title.cloneNode(true).childNodes : [title.textContent])]);
  all("a", head).forEach((link) => link.replaceWith(link.textContent));
  picked.append(head);
  all(".brief, .tape", card).slice(0, 2).forEach((part) => {
    const copy = doc.createElement(part.matches("ul") ? "ul" : "p");
    copy.className = part.className;
    copy.append(...part.cloneNode(true).childNodes);
    picked.append(copy);
  });
  const more = doc.createElement("a");
  more.href = `#${key}`;
  more.textContent = picked.dataset.more;
  const shut = doc.createElement("button");
  shut.type = "button";
  shut.className = "shut";
  shut.textContent = "×";
  shut.setAttribute("aria-label", picked.dataset.close);
  shut.addEventListener("click", leave);
  picked.append(more, shut);
  picked.hidden = false;
}
function leave() {
  all(".chosen").forEach((one) => one.classList.remove("chosen"));
  if (picked) picked.hidden = true;
}
// What is folded away opens for the link that leads into it.
function unfold(key) {
  for (let part = doc.getElementById(key)?.closest("details"); part; part = part.parentElement.closest("details")) part.open = true;
}
function choose(key, isShown) {
  all(".chosen").forEach((one) => one.classList.remove("chosen"));
  const marks = item(key).filter((link) => link.matches("svg.map a"));
  item(key).forEach((link) => link.classList.add("chosen"));
  doc.getElementById(key)?.classList.add("chosen");
  unfold(key);
  words(key);
  marks.forEach((mark) => {
    const box = switches.find((one) => one.dataset.layer === mark.closest("[data-layer]")?.dataset.layer);
    if (box && !box.checked) { box.checked = true; layer(box.dataset.layer, true); untangle(); }
    if (isShown) sheets.find((sheet) => sheet.svg.contains(mark))?.focusOn(mark);
  });
  return marks[0];
}
doc.addEventListener("click", (event) => {
  const link = event.target.closest("[data-item]");
  if (!link) return;
  const key = link.dataset.item;
  if (link.matches("svg.map a")) {
    event.preventDefault();
    choose(key, false);
  } else if (link.matches(".finder a") || link.getAttribute("href").startsWith("#at-") || link.matches(".maplink")) {
    event.preventDefault();
    const mark = choose(key, true);
    if (!mark) return;
    const frame = mark.closest(".frame");
    frame.scrollIntoView({ block: "nearest", behavior: matchMedia("(prefers-reduced-motion: reduce)").matches ? "auto" : "smooth" });
    mark.focus({ preventScroll: true });
  } else choose(key, true);
});
// The local page shows this one in a frame: it is told which place was tapped, and says when to print.
if (window.name === "tussock" && parent !== window) {
  const here = sheets.filter((sheet) => sheet.svg.dataset.westM);
  here.forEach((sheet) => sheet.svg.addEventListener("pointerup", (event) => {
    if (event.button !== 0 || sheet.wasDragged) return;
    const [x, y] = sheet.place(event);
    const [across, down] = [sheet.x + x * sheet.width, sheet.y + y * sheet.width * sheet.ratio];
    const ring = doc.getElementById("tapped") || doc.createElementNS("http://www.w3.org/2000/svg", "circle");
    const look = { id: "tapped", cx: across, cy: down, r: sheet.width / 60, fill: "#fffefa", "fill-opacity": 0.6, stroke: "#1c2431", "stroke-width": 3 };
    Object.entries(look).forEach(([name, value]) => ring.setAttribute(name, value));
    sheet.svg.append(ring);
    const { westM, northM } = sheet.svg.dataset;
    parent.postMessage({ east_m: Number(westM) + across / sheet.perMetre, north_m: Number(northM) - down / sheet.perMetre }, "*");
  }));
  addEventListener("message", (event) => { if (event.source === parent && event.data === "print") print(); });
}
doc.addEventListener("keydown", (event) => {
  if (event.key !== "Escape" || !doc.querySelector(".chosen")) return;
  leave();
  sheets.forEach((sheet) => sheet.all());
});
})();
