// Makes the local page: one file that opens from a disk, with the library inside.
//
//   node crates/web/build.mjs [FILE]      target/web/tussock.html where no file is named
//
// Needs Rust and Node. The compiler's target for browsers is added by rustup, where that is there.
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";

const TARGET = "wasm32-unknown-unknown";
/** Larger files are refused by mail and slow to open on a phone. */
const MOST_BYTES = 5_000_000;
const root = resolve(dirname(fileURLToPath(import.meta.url)), "../..");
const target = resolve(root, process.env.CARGO_TARGET_DIR ?? "target");
const file = resolve(process.argv[2] ?? join(target, "web/tussock.html"));

function stop(message) {
  console.error(`error: ${message}`);
  process.exit(2);
}
const run = (command, args, options = {}) => spawnSync(command, args, { cwd: root, encoding: "utf8", ...options });

/** Whether the compiler has the library of the target. */
function has_target() {
  const asked = run("rustc", ["--print", "target-libdir", "--target", TARGET]);
  if (asked.status !== 0) stop(`rustc: ${asked.error?.message ?? asked.stderr.trim()}`);
  return existsSync(asked.stdout.trim());
}

if (!has_target()) {
  console.error(`the compiler has no ${TARGET}: adding it with rustup`);
  const added = run("rustup", ["target", "add", TARGET], { stdio: "inherit" });
  if (added.status !== 0 || !has_target()) {
    stop(`the compiler has no ${TARGET} and rustup cannot add it: install it with the compiler (rustup target add ${TARGET})`);
  }
}
const built = run("cargo", ["build", "--locked", "--package", "tussock-web", "--target", TARGET, "--profile", "wasm"], {
  stdio: "inherit",
});
if (built.status !== 0) stop("the library cannot be built for browsers, see above");

const text = (path) => readFileSync(join(root, path), "utf8");
const page = (name) => text(`crates/web/page/${name}`);
const base64 = (bytes) => bytes.toString("base64");
const digest = (words) => `'sha256-${createHash("sha256").update(words).digest("base64")}'`;
const report = (name) => text(`crates/report/templates/${name}`);
const library = gzipSync(readFileSync(join(target, TARGET, "wasm/tussock_web.wasm")), { level: 9 });

/** The invented garden, before and after its change. */
const DEMO = [
  ["before", "before/2026-05-04.gpx.gz"],
  ["before", "before/2026-05-05.gpx.gz"],
  ["plan", "plan.geojson"],
  ["settings", "settings.toml"],
  ["after", "after/2026-05-11.gpx.gz"],
  ["after", "after/2026-05-12.gpx.gz"],
  ["afterPlan", "plan-after.geojson"],
];
const demo = DEMO.map(([list, path], index) => {
  const bytes = readFileSync(join(root, "fixtures/demo", path));
  const name = path.split("/").pop();
  return `<script type="text/plain" id="demo-${index}" data-list="${list}" data-name="${name}">${base64(bytes)}</script>`;
});

/** Messages of the page: one line each, without plurals, so that its script needs no library for them. */
const words_of = (language) =>
  Object.fromEntries([...text(`crates/report/messages/${language}.ftl`).matchAll(/^(page-[\w-]+) = (.+)$/gm)].map(([, id, said]) => [id, said]));
const LANGUAGES = ["en", "de", "fr", "es", "it", "nl", "sv", "pl"];
const all_words = Object.fromEntries(LANGUAGES.map((language) => [language, words_of(language)]));
const words = all_words.en;
const in_html = (said) => said.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/"/g, "&quot;");
const said = (id) => in_html(words[id] ?? stop(`no message ${id} in the catalogue`));
/** The page with its words, for browsers that run no script. */
const with_words = (html) =>
  html.replace(/ data-(aria-label|title)="([\w-]+)"/g, (all, name, id) => `${all} ${name}="${said(id)}"`).replace(/ data-say="([\w-]+)"[^>]*>/g, (all, id) => all + said(id));

const script = page("page.js");
const style = page("page.css");
// Frames inherit this policy, so that what the report's own policy allows must be allowed here too.
const policy = [
  "default-src 'none'",
  `script-src ${digest(script)} ${digest(report("report.js"))} 'wasm-unsafe-eval'`,
  "worker-src blob:",
  `style-src ${digest(style)} ${digest(report("report.css") + report("print.css"))}`,
  "img-src data:",
  "base-uri about:",
  "form-action 'none'",
].join("; ");
const parts = { policy, style, script, worker: page("worker.js"), library: base64(library), words: JSON.stringify(all_words).replace(/</g, "\\u003c"), demo: demo.join("\n") };
const html = with_words(page("page.html")).replace(/\{\{(\w+)\}\}/g, (_, name) => parts[name]);
if (html.length > MOST_BYTES) stop(`the page has ${html.length} bytes, expected at most ${MOST_BYTES}`);
mkdirSync(dirname(file), { recursive: true });
writeFileSync(file, html);
console.log(`${file}: ${html.length} bytes`);
