(() => {
"use strict";
const by = (id) => document.getElementById(id);
const all = (what, within = document) => [...within.querySelectorAll(what)];
const made = (tag, words, kind) => {
  const one = document.createElement(tag);
  if (words !== undefined) one.textContent = words;
  if (kind) one.className = kind;
  return one;
};

// Words come from the catalogue; each value stands in its sentence where the sentence wants it.
const WORDS = JSON.parse(by("words").textContent);
const LANGUAGE = "tussock-language";
// Where a browser keeps nothing for a page, nothing is remembered.
const memory = (act) => { try { return act(localStorage); } catch { return null; } };
const remembered = memory((store) => store.getItem(LANGUAGE));
let language = WORDS[remembered] ? remembered : document.documentElement.lang;
const word = (id, values = {}) => Object.entries(values).reduce((text, [name, value]) => text.replace(`{ $${name} }`, () => value), WORDS[language][id] ?? id);
function speak() {
  document.documentElement.lang = language;
  for (const one of all("[data-say]")) one.textContent = word(one.dataset.say);
  for (const one of all("[data-aria-label]")) one.setAttribute("aria-label", word(one.dataset.ariaLabel));
  for (const one of all("[data-title]")) one.setAttribute("title", word(one.dataset.title));
}

// What is inside this file: the library, its worker, the invented garden.
const unpacked = (id) => Uint8Array.from(atob(by(id).textContent), (letter) => letter.charCodeAt(0));
const inside = (id) => {
  const packed = new Blob([unpacked(id)]).stream().pipeThrough(new DecompressionStream("gzip"));
  return new Response(packed).arrayBuffer();
};
const worker_url = URL.createObjectURL(new Blob([by("worker").textContent], { type: "text/javascript" }));
let compiled;
const library = () => (compiled ??= inside("library").then((bytes) => WebAssembly.compile(bytes)));

// One instance of the library at work. It is thrown away where the work is stopped or breaks.
class Counter {
  constructor(module) {
    this.worker = new Worker(worker_url);
    this.asked = new Map();
    this.last = 0;
    this.worker.onmessage = ({ data }) => this.hear(data);
    this.worker.onerror = (event) => {
      event.preventDefault();
      this.end({ message: word("page-no-worker", { reason: event.message || word("page-not-let") }), hints: [] });
    };
    this.ready = this.call({ work: "start", module });
  }
  call(message, handed = []) {
    if (this.ended) return Promise.reject(this.ended);
    return new Promise((done, failed) => {
      this.asked.set(++this.last, { done, failed });
      this.worker.postMessage({ id: this.last, ...message }, handed);
    });
  }
  hear(data) {
    if (data.words !== undefined) return say(word(`page-stage-${data.words}`), data.done);
    if (data.panicked !== undefined) { this.fault = data.panicked; return; }
    if (data.broken !== undefined) {
      const why = this.fault ?? data.broken;
      return this.end({ message: word("page-broke-off", { why }), hints: [word("page-broke-off-hint")] });
    }
    const { done, failed } = this.asked.get(data.id);
    this.asked.delete(data.id);
    if (data.outcome === 1) failed(data.answer);
    else done(data.file ?? data.answer);
  }
  act(wish) { return this.call({ work: "act", wish }); }
  end(why) {
    this.worker.terminate();
    this.ended = why;
    for (const { failed } of this.asked.values()) failed(why);
    this.asked.clear();
  }
}

// Another language: all that is shown is said again.
by("language").append(...Object.keys(WORDS).map((tag) => {
  const choice = made("option", WORDS[tag]["page-this-language"]);
  choice.value = tag;
  choice.lang = tag;
  return choice;
}));
by("language").value = language;
by("remember").checked = remembered !== null;
const remember = () => memory((store) => (by("remember").checked ? store.setItem(LANGUAGE, language) : store.removeItem(LANGUAGE)));
by("remember").addEventListener("change", remember);
by("language").addEventListener("change", async () => {
  language = by("language").value;
  remember();
  speak();
  list_given();
  list_kept().catch(() => {});
  if (!shown || working) return;
  const answer = await shown.counter.act({ act: "speak", language }).catch(fault);
  if (answer) { show(shown.counter, answer, shown.given); view("open"); }
});
if (remembered !== null) speak();

// What was given. Files are read when they are needed, so that the page holds none of them.
const given = { before: [], after: [], plan: [], afterPlan: [], settings: [] };
const KINDS = { settings: 0, plan: 1, before: 2, afterPlan: 3, after: 4 };
const SINGLE = ["plan", "afterPlan", "settings"];
function give(list, files) {
  given[list] = SINGLE.includes(list) ? files.slice(-1) : [...given[list], ...files];
  list_given();
}
function list_given() {
  for (const list of all(".given[data-of]")) {
    list.replaceChildren(...given[list.dataset.of].map((file, index) => {
      const row = made("li");
      row.append(made("span", file.name));
      const out = made("button", word("page-take-out"));
      out.type = "button";
      out.setAttribute("aria-label", word("page-take-out-file", { file: file.name }));
      out.addEventListener("click", () => {
        given[list.dataset.of].splice(index, 1);
        list_given();
        list.parentElement.querySelector("input[type=file]")?.focus();
      });
      row.append(out);
      return row;
    }));
  }
}
// What is dropped or pasted goes where its name says.
function sort_in(files) {
  const is_compare = document.body.dataset.view === "compare";
  for (const file of files) {
    const ending = file.name.split(".").pop().toLowerCase();
    if (ending === "toml") give("settings", [file]);
    else if (ending === "geojson") give("plan", [file]);
    else give(is_compare && given.before.length > 0 ? "after" : "before", [file]);
  }
  if (!is_compare && files.length > 0) view("open");
}

// Views.
let shown; // { counter, files, private_files, left_out }
function view(name) {
  document.body.dataset.view = name;
  document.body.classList.toggle("framed", name === "see");
  for (const button of all("nav button")) {
    if (button.dataset.view === name) button.setAttribute("aria-current", "page");
    else button.removeAttribute("aria-current");
  }
  for (const section of all("main > section")) section.hidden = section.id !== name;
  scrollTo(0, 0);
}
for (const button of all("nav button")) button.addEventListener("click", () => view(button.dataset.view));

function fault(failure) {
  const box = by("fault");
  box.replaceChildren();
  box.hidden = !failure;
  if (!failure) return;
  box.append(made("p", failure.message ?? String(failure)));
  for (const hint of failure.hints ?? []) box.append(made("p", word("page-hint", { hint }), "hint"));
  box.scrollIntoView({ block: "nearest" });
}

// Progress, and a way to stop.
let working;
function say(words, done) {
  if (!working) return;
  working.words = words;
  by("done").value = done;
  tick();
}
function tick() {
  const seconds = Math.floor((performance.now() - working.since) / 1000);
  by("stage").textContent = seconds > 0 ? word("page-seconds", { stage: working.words, seconds }) : working.words;
}
async function busy(counter, job) {
  fault();
  working = { counter, words: word("page-starting"), since: performance.now(), timer: setInterval(tick, 1000) };
  by("busy").hidden = false;
  all("main button, main input").forEach((one) => { one.disabled = true; });
  say(working.words, 0);
  try {
    return await job();
  } catch (failure) {
    if (failure !== STOPPED) fault(failure);
    return undefined;
  } finally {
    clearInterval(working.timer);
    working = undefined;
    by("busy").hidden = true;
    all("main button, main input").forEach((one) => { one.disabled = false; });
  }
}
const STOPPED = { message: word("page-stopped"), hints: [] };
by("stop").addEventListener("click", () => working?.counter?.end(STOPPED));

// A new instance for each piece of work: what is shown stays until there is something new.
async function work(lists, wish) {
  if (working) return;
  let counter;
  const answer = await busy(undefined, async () => {
    counter = new Counter(await library());
    working.counter = counter;
    await counter.ready;
    for (const list of lists) {
      for (const [index, file] of given[list].entries()) {
        say(word("page-reading", { file: file.name }), index / given[list].length);
        const bytes = await file.arrayBuffer().catch((error) => {
          throw { message: word("page-unreadable", { file: file.name, reason: error.message }), hints: [word("page-choose-again")] };
        });
        await counter.call({ work: "take", kind: KINDS[list], name: file.name, bytes }, [bytes]);
      }
    }
    return counter.act(wish);
  });
  if (!answer) {
    counter?.end(STOPPED);
    return;
  }
  shown?.counter.end(STOPPED);
  show(counter, answer);
}
const cut_width_m = () => {
  const width = by("width");
  if (width.value.trim() === "" && !width.validity.badInput) return null;
  return Number(width.value) / 100;
};
function start(lists, wish, needed) {
  if (!by("width").checkValidity()) {
    view("open");
    by("width").reportValidity();
    return;
  }
  if (needed.some((list) => given[list].length === 0)) {
    fault({ message: word(needed.length > 1 ? "page-side-empty" : "page-no-log"), hints: [word("page-no-log-hint")] });
    return;
  }
  work(lists, { ...wish, cut_width_m: cut_width_m() });
}
const analyse = () => start(["settings", "plan", "before"], { act: "analyse", language, suggestions: by("suggestions").checked ? "yes" : "no" }, ["before"]);
const compare = () => start(["settings", "plan", "before", "afterPlan", "after"], { act: "compare", language }, ["before", "after"]);
by("analyse").addEventListener("click", analyse);
by("go-compare").addEventListener("click", compare);

// The page to hand over, in a frame that may do nothing but show itself.
function show(counter, answer, of = { plan: [...given.plan], settings: [...given.settings] }) {
  shown = { counter, given: of, ...answer };
  const is_comparison = answer.answer === "compared";
  const frame = by("page");
  frame.srcdoc = answer.page.replace("<head>", '<head><base href="about:srcdoc">');
  frame.parentElement.classList.toggle("plain", is_comparison);
  shown.page = undefined;
  by("told").replaceChildren();
  by("keep-row").hidden = true;
  by("typed").open = !is_narrow.matches;
  unfold(false);
  by("hints").replaceChildren(...(answer.hints ?? []).map((hint) => made("p", word("page-hint", { hint }))));
  by("private-row").hidden = is_comparison;
  by("keep-form").hidden = is_comparison;
  by("keep-said").textContent = "";
  by("private").checked = false;
  list_files();
  all("nav button").forEach((button) => { button.disabled = false; });
  view("see");
  by("see-title").tabIndex = -1;
  by("see-title").focus({ preventScroll: true });
}

// Asking. On a phone what is known lies over the page, and is folded away for the map.
const is_narrow = matchMedia("(max-width:900px)");
const unfold = (is_open) => by("fold").setAttribute("aria-expanded", String(is_open || !is_narrow.matches));
is_narrow.addEventListener("change", () => unfold(false));
by("fold").addEventListener("click", () => unfold(by("fold").getAttribute("aria-expanded") === "false"));
let asked;
async function ask(place, kept) {
  if (working || !shown || shown.answer !== "shown") return;
  asked = place;
  const letter = parseFloat(getComputedStyle(by("told")).fontSize) * 0.602;
  const columns = Math.max(40, Math.floor((by("ask").clientWidth - 36) / letter));
  const wish = { act: "ask", said: by("said").value.trim() || null, at_deg: null, at_m: null, columns, kept, ...place };
  try {
    const answer = await shown.counter.act(wish);
    fault();
    if (answer.answer === "shown") {
      show(shown.counter, answer, shown.given);
      return;
    }
    by("told").textContent = answer.text;
    by("keep-row").hidden = false;
    if (is_narrow.matches) by("typed").open = false;
    unfold(true);
    by("ask").scrollTop = 0;
  } catch (failure) {
    by("told").replaceChildren();
    by("keep-row").hidden = true;
    fault(failure);
  }
}
by("ask-form").addEventListener("submit", (event) => {
  event.preventDefault();
  ask({ [event.target.elements.unit.value]: by("at").value }, "no");
});
by("keep").addEventListener("click", () => ask(asked, "yes"));
addEventListener("message", (event) => {
  const { east_m, north_m } = event.data ?? {};
  if (event.source !== by("page").contentWindow || !Number.isFinite(east_m) || !Number.isFinite(north_m)) return;
  const at = `${east_m.toFixed(2)},${north_m.toFixed(2)}`;
  by("at").value = at;
  by("ask-form").elements.unit.value = "at_m";
  ask({ at_m: at }, "no");
});

// Saving: each file is made when it is wanted.
const KEPT_FOR = {
  "report.html": "page-file-page",
  "findings.json": "page-file-findings",
  "findings.geojson": "page-file-geojson",
  "pockets.gpx": "page-file-gpx",
  "comparison.html": "page-file-page",
  "comparison.json": "page-file-comparison",
};
const TYPES = { json: "application/json", geojson: "application/geo+json", html: "text/html", gpx: "application/gpx+xml" };
function list_files() {
  const is_private = by("private").checked;
  const names = (is_private ? shown.private_files : shown.files) ?? [];
  by("files").replaceChildren(...names.map((name) => {
    const row = made("li");
    const button = made("button", name);
    button.type = "button";
    button.addEventListener("click", async () => {
      try {
        const bytes = await shown.counter.act({ act: "make", name, private: is_private ? "yes" : "no" });
        const link = made("a");
        link.href = URL.createObjectURL(new Blob([bytes], { type: TYPES[name.split(".").pop()] }));
        link.download = name;
        link.click();
        setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
        fault();
      } catch (failure) {
        fault(failure);
      }
    });
    row.append(button, made("span", KEPT_FOR[name] && word(KEPT_FOR[name]), "quiet"));
    return row;
  }));
  by("left-out").replaceChildren(...(shown.left_out ?? []).map(([name, why]) => made("li", word("page-no-file", { file: name, why }))));
}
by("private").addEventListener("change", list_files);
by("print").addEventListener("click", () => {
  view("see");
  by("page").contentWindow.postMessage("print", "*");
});

// Choosing, dropping, pasting.
for (const input of all("input[type=file]")) {
  input.addEventListener("change", () => {
    give(input.dataset.list, [...input.files]);
    // The same file can be chosen again, after it was taken out.
    input.value = "";
  });
}
let over = 0;
const dropping = (is_over) => { by("drop").hidden = !is_over; };
addEventListener("dragenter", (event) => { event.preventDefault(); over += 1; dropping(true); });
addEventListener("dragleave", () => { over -= 1; if (over <= 0) dropping(false); });
addEventListener("dragover", (event) => event.preventDefault());
addEventListener("drop", (event) => {
  event.preventDefault();
  over = 0;
  dropping(false);
  if (!working) sort_in([...event.dataTransfer.files]);
});
const of_text = (text) => new File([text], "pasted.txt", { type: "text/plain" });
addEventListener("paste", (event) => {
  if (working || event.target.matches?.("input, textarea")) return;
  const files = [...event.clipboardData.files];
  const text = event.clipboardData.getData("text");
  if (files.length === 0 && text.trim() === "") return;
  event.preventDefault();
  sort_in(files.length > 0 ? files : [of_text(text)]);
});
by("take-pasted").addEventListener("click", () => {
  const text = by("pasted").value;
  if (text.trim() === "") return;
  give("before", [of_text(text)]);
  by("pasted").value = "";
});

// What is kept on this device, where somebody asked for it.
const STORE = "tussock", GARDENS = "gardens";
const keeps_nothing = (error) => ({ message: word("page-keeps-nothing", { reason: error?.message ?? word("page-no-reason") }), hints: [word("page-save-instead")] });
async function with_gardens(mode, act) {
  const store = await new Promise((done, failed) => {
    const opening = indexedDB.open(STORE, 1);
    opening.onupgradeneeded = () => opening.result.createObjectStore(GARDENS, { keyPath: "name" });
    opening.onsuccess = () => done(opening.result);
    opening.onerror = () => failed(keeps_nothing(opening.error));
  });
  return new Promise((done, failed) => {
    const turn = store.transaction(GARDENS, mode);
    const asked = act(turn.objectStore(GARDENS));
    turn.oncomplete = () => { store.close(); done(asked.result); };
    turn.onabort = () => { store.close(); failed(keeps_nothing(turn.error)); };
  });
}
async function list_kept() {
  const is_there = (await indexedDB.databases()).some((one) => one.name === STORE);
  const gardens = is_there ? await with_gardens("readonly", (store) => store.getAll()) : [];
  by("kept").hidden = gardens.length === 0;
  by("kept-list").replaceChildren(...gardens.map((garden) => {
    const row = made("li");
    row.append(made("span", garden.name));
    const open = made("button", word("page-open-kept"));
    open.type = "button";
    open.setAttribute("aria-label", word("page-open-garden", { garden: garden.name }));
    open.addEventListener("click", () => {
      const files = (list) => list.map(({ name, bytes }) => new File([bytes], name));
      Object.assign(given, { before: files(garden.findings), plan: files(garden.plan), settings: files(garden.settings), after: [], afterPlan: [] });
      list_given();
      analyse();
    });
    row.append(open);
    return row;
  }));
}
by("keep-form").addEventListener("submit", async (event) => {
  event.preventDefault();
  const name = by("keep-name").value.trim();
  if (name === "") return;
  try {
    const read = (list) => Promise.all(list.map(async (file) => ({ name: file.name, bytes: await file.arrayBuffer() })));
    const findings = await shown.counter.act({ act: "make", name: "findings.json", private: "no" });
    const garden = { name, findings: [{ name: "findings.json", bytes: findings }], plan: await read(shown.given.plan), settings: await read(shown.given.settings) };
    await with_gardens("readwrite", (store) => store.put(garden));
    by("keep-said").textContent = word("page-is-kept", { garden: name });
    await list_kept();
    fault();
  } catch (failure) {
    fault(failure);
  }
});
by("forget").addEventListener("click", () => {
  const forgetting = indexedDB.deleteDatabase(STORE);
  forgetting.onsuccess = () => list_kept();
  forgetting.onerror = () => fault({ message: word("page-cannot-delete", { reason: forgetting.error?.message ?? word("page-no-reason") }), hints: [word("page-clear-data")] });
});
// A browser that keeps nothing has nothing to list.
list_kept().catch(() => {});

// The invented garden.
function demo(lists) {
  for (const list of Object.keys(given)) given[list] = [];
  for (const file of all("script[data-list]").filter((one) => lists.includes(one.dataset.list))) {
    give(file.dataset.list, [new File([unpacked(file.id)], file.dataset.name)]);
  }
}
by("demo").addEventListener("click", () => {
  by("width").value = "";
  demo(["before", "plan", "settings"]);
  analyse();
});
by("demo-compare").addEventListener("click", () => {
  by("width").value = "";
  demo(Object.keys(given));
  compare();
});
document.body.dataset.view = "open";
})();
