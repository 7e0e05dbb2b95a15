"use strict";
// Runs the library beside the page, so that the page never freezes.
let library;
const text = (at, bytes) => new TextDecoder().decode(new Uint8Array(library.memory.buffer, at, bytes));
const put = (parts) => {
  const bytes = parts.reduce((sum, part) => sum + part.byteLength, 0);
  let at = library.room(bytes);
  for (const part of parts) {
    new Uint8Array(library.memory.buffer, at, part.byteLength).set(new Uint8Array(part));
    at += part.byteLength;
  }
};
const imports = {
  env: {
    progress: (at, bytes, done) => postMessage({ words: text(at, bytes), done }),
    panicked: (at, bytes) => postMessage({ panicked: text(at, bytes) }),
  },
};
const utf8 = (words) => new TextEncoder().encode(words);
const work = {
  start({ module }) {
    library = new WebAssembly.Instance(module, imports).exports;
    library.init();
    return 0;
  },
  take({ kind, name, bytes }) {
    const letters = utf8(name);
    put([bytes, letters]);
    return library.take(kind, letters.byteLength);
  },
  act({ wish }) {
    put([utf8(JSON.stringify(wish))]);
    return library.act();
  },
};
onmessage = ({ data }) => {
  try {
    const outcome = work[data.work](data);
    if (data.work === "start") return postMessage({ id: data.id, outcome });
    const at = library.answer(), bytes = library.answer_bytes();
    if (outcome === 2) return postMessage({ id: data.id, outcome, file: library.memory.buffer.slice(at, at + bytes) });
    postMessage({ id: data.id, outcome, answer: JSON.parse(text(at, bytes)) });
  } catch (error) {
    // A fault of ours, or no memory left: this instance is of no use any more.
    postMessage({ id: data.id, broken: String(error?.message ?? error) });
  }
};
