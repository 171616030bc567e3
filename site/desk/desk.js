// The desk's one script. Pages work without it; with it the reading comes as she types.
"use strict";

const one = (what, where = document) => where.querySelector(what);
const all = (what, where = document) => [...where.querySelectorAll(what)];
const say = (words) => { one("#said").textContent = words; };

async function ask(address, sent) {
  let answer;
  try {
    answer = await fetch(address, {
      method: sent === undefined ? "GET" : "POST",
      headers: sent === undefined ? {} : { "content-type": "application/json" },
      body: sent === undefined ? undefined : JSON.stringify(sent),
    });
  } catch {
    throw new Error("The desk can’t be reached. Your text stays on this page; start the desk again, then open this recipe at its new address.");
  }
  let got = {};
  try { got = await answer.json(); } catch { /* a refusal is plain text */ }
  if (answer.status === 403) throw new Error("The desk was started again. Open the address it printed now: what you typed is kept there.");
  if (!answer.ok && !got.how) throw new Error(got.wrong || "The desk could not do that.");
  return got;
}

// The list: how each recipe stands, asked for one after the other once it comes into view.
function states() {
  const waiting = [];
  let busy = false;
  const next = async () => {
    if (busy || !waiting.length) return;
    busy = true;
    const cell = waiting.shift();
    try {
      const counts = await ask(cell.dataset.state);
      const words = [["error", "must change"], ["warning", "to look at"]];
      const parts = words.filter(([level]) => counts[level]).map(([level, name]) => [level, `${counts[level]} ${name}`]);
      for (const [level, text] of parts.length ? parts : [["fine", "nothing to put right"]]) {
        const span = document.createElement("span");
        span.className = `word ${level}`;
        span.textContent = text;
        cell.append(span);
      }
    } catch { cell.textContent = "not known"; }
    busy = false;
    next();
  };
  const watch = new IntersectionObserver((seen) => {
    for (const entry of seen) if (entry.isIntersecting) { watch.unobserve(entry.target); waiting.push(entry.target); }
    next();
  });
  all("[data-state]").forEach((cell) => watch.observe(cell));
}

function writing(pen) {
  const key = pen.dataset.key;
  const text = one("#text"), under = one(".under"), reading = one("#reading"), kept = one("#kept");
  const base = pen.elements.base, baseText = pen.elements.base_text, told = one("#told");
  let marks = JSON.parse(pen.dataset.marks), timer = 0, asked = 0, saving = false, fresh = true;

  const sent = (more) => ({ text: text.value, base: base.value, base_text: baseText.value, window: pen.elements.window.value, ...more });
  const changed = () => text.value !== baseText.value;

  function draw() {
    under.textContent = "";
    const value = text.value;
    let at = 0;
    for (const [first, end, kind, name] of marks.slice().sort((a, b) => a[0] - b[0])) {
      const start = Math.max(at, first); // of claims that overlap, the later one is marked from where the first ends
      if (end <= start || end > value.length) continue;
      under.append(value.slice(at, start));
      const mark = document.createElement("mark");
      mark.className = kind;
      mark.textContent = value.slice(start, end);
      mark.dataset.name = name;
      under.append(mark);
      at = end;
    }
    under.append(value.slice(at) + "\n ");
    under.scrollTop = text.scrollTop;
  }

  // Marks move with the text until the reading is made again.
  let before = text.value;
  function shift() {
    const now = text.value;
    let head = 0;
    while (head < before.length && head < now.length && before[head] === now[head]) head++;
    let tail = 0;
    while (tail < before.length - head && tail < now.length - head && before[before.length - 1 - tail] === now[now.length - 1 - tail]) tail++;
    const by = now.length - before.length, last = before.length - tail;
    marks = marks.flatMap(([start, end, kind, name]) => {
      if (end <= head) return [[start, end, kind, name]];
      if (start >= last) return [[start + by, end + by, kind, name]];
      return [];
    });
    before = now;
  }

  function state(words) {
    kept.textContent = words || (changed() ? "Not saved yet" : "As it is in the file");
    document.title = document.title.replace(/^(\* )?/, changed() ? "* " : "");
  }

  function take(got) {
    const open = new Set(all("details[open]", reading).map((each) => each.dataset.key));
    const focused = document.activeElement && reading.contains(document.activeElement) ? document.activeElement : null;
    const mine = focused && (focused.dataset.remedy || (focused.closest("details") || {}).id);
    reading.innerHTML = got.reading;
    all("details", reading).forEach((each) => { if (open.has(each.dataset.key)) each.open = true; });
    if (focused) {
      const again = mine && all("[data-remedy], details", reading).find((each) => each.dataset.remedy === mine || each.id === mine);
      if (again && again.matches("button")) again.focus(); else if (again) one("summary", again).focus(); else reading.focus();
    }
    marks = got.marks;
    before = text.value;
    for (const field of all("[data-field]")) {
      const value = got.form[field.dataset.field];
      field.disabled = value === undefined;
      if (field !== document.activeElement || field.value === field.defaultValue) field.value = field.defaultValue = value || "";
    }
    draw();
    fresh = true;
  }

  async function read() {
    const mine = ++asked;
    const value = text.value;
    try {
      const got = await ask(`/read/${key}`, sent());
      if (mine !== asked || value !== text.value) return;
      take(got);
      if (!saving && (changed() || kept.textContent !== "Saved")) state(); // asked before it was saved, answered after
      const { error, warning } = got.counts;
      say(error || warning ? `${error} must change, ${warning} to look at again` : "Nothing to put right");
    } catch (problem) { if (mine === asked) state(problem.message); }
  }

  function soon() {
    fresh = false;
    clearTimeout(timer);
    timer = setTimeout(read, 350);
  }

  // Put a text in the editor as one step that can be undone.
  function put(value) {
    const old = text.value;
    let head = 0;
    while (head < old.length && head < value.length && old[head] === value[head]) head++;
    let tail = 0;
    while (tail < old.length - head && tail < value.length - head && old[old.length - 1 - tail] === value[value.length - 1 - tail]) tail++;
    const top = text.scrollTop;
    text.focus({ preventScroll: true });
    text.setSelectionRange(head, old.length - tail);
    const put = value.slice(head, value.length - tail);
    const done = put ? document.execCommand("insertText", false, put) : document.execCommand("delete");
    if (!done || text.value !== value) text.value = value;
    text.scrollTop = top;
    return [head, head + put.length];
  }

  async function save() {
    if (saving) return;
    saving = true;
    clearTimeout(timer);
    const value = text.value;
    state("Saving");
    try {
      const got = await ask(`/save/${key}`, sent());
      base.value = got.base;
      baseText.value = got.base_text;
      told.innerHTML = got.told || "";
      if (got.how === "saved") {
        state(changed() ? "" : "Saved");
        say("Saved");
        if (changed()) soon();
      } else if (text.value === value) {
        put(got.text);
        take(got);
        state(got.how === "merged" ? "Saved, with the other edit" : "Not saved");
        one("#outcome").focus();
      } else { base.value = got.base; soon(); }
    } catch (problem) { state(problem.message); say(problem.message); }
    saving = false;
  }

  async function mend(button) {
    const top = window.scrollY;
    try {
      const got = await ask(`/mend/${key}`, sent({ remedy: button.dataset.remedy }));
      const [from] = put(got.text);
      shift();
      take(got);
      text.setSelectionRange(from, from);
      state();
      say("Put in the text");
      window.scrollTo(0, top);
      soon();
    } catch (problem) { state(problem.message); say(problem.message); soon(); }
  }

  async function fill(field) {
    if (field.value === field.defaultValue) return;
    field.defaultValue = field.value;
    const focused = document.activeElement;
    try {
      const got = await ask(`/form/${key}`, sent({ name: field.dataset.field, value: field.value }));
      put(got.text);
      if (focused) focused.focus();
      take(got);
      state();
      soon();
    } catch (problem) { state(problem.message); say(problem.message); }
  }

  function show(from, to) {
    text.focus();
    text.setSelectionRange(from, from);
    const lineHeight = parseFloat(getComputedStyle(text).lineHeight);
    const probe = document.createRange();
    let rest = from;
    for (const node of [...under.childNodes]) {
      const size = node.textContent.length;
      if (rest < size || node === under.lastChild) {
        const leaf = node.firstChild || node;
        probe.setStart(leaf, Math.min(rest, leaf.length));
        break;
      }
      rest -= size;
    }
    probe.collapse(true);
    const y = probe.getBoundingClientRect().top - under.getBoundingClientRect().top + under.scrollTop;
    text.scrollTop = Math.max(0, y - 5 * lineHeight);
    text.setSelectionRange(from, to);
  }

  // The claim the cursor stands in is opened in the list.
  function open() {
    if (!fresh || document.activeElement !== text) return;
    const at = text.selectionStart;
    if (at !== text.selectionEnd) return;
    const found = marks.filter(([start, end]) => start <= at && at <= end).sort((a, b) => (a[1] - a[0]) - (b[1] - b[0]))[0];
    if (!found) return;
    const entry = document.getElementById(found[3]);
    if (!entry || entry.open) return;
    entry.open = true;
    if (matchMedia("(min-width: 62rem)").matches) entry.scrollIntoView({ block: "nearest" });
    say(`Claim: ${one("summary", entry).textContent.trim()}`);
  }

  text.addEventListener("input", () => { shift(); draw(); state(); soon(); });
  text.addEventListener("scroll", () => { under.scrollTop = text.scrollTop; });
  text.addEventListener("keyup", open);
  text.addEventListener("click", open);
  pen.addEventListener("submit", (event) => { event.preventDefault(); save(); });
  document.addEventListener("keydown", (event) => {
    if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === "s") { event.preventDefault(); save(); }
  });
  reading.addEventListener("click", (event) => {
    const button = event.target.closest("button");
    if (!button) return;
    if (button.dataset.remedy) mend(button);
    else if (button.dataset.from) show(Number(button.dataset.from), Number(button.dataset.to));
  });
  told.addEventListener("click", (event) => {
    if (!event.target.closest("[data-theirs]")) return;
    put(baseText.value);
    told.innerHTML = "";
    state();
    read();
  });
  all("[data-field]").forEach((field) => {
    field.defaultValue = field.value;
    field.addEventListener("change", () => fill(field));
    field.addEventListener("keydown", (event) => { if (event.key === "Enter") { event.preventDefault(); fill(field); } });
  });
  // Back at this window: has the file changed elsewhere meanwhile?
  window.addEventListener("focus", async () => {
    try {
      const { stamp } = await ask(`/stamp/${key}`);
      if (stamp === base.value || saving) return;
      if (changed()) state("The file was changed elsewhere; saving lays both edits together");
      else location.reload();
    } catch { /* it is said when she saves */ }
  });
  window.addEventListener("beforeunload", (event) => { if (changed()) event.preventDefault(); });
  new ResizeObserver(draw).observe(text);
  draw();
  state();
  if (changed()) soon(); // typed before this script came, or taken up from another window
}

// What is seen follows the file: it is made again when the recipe was saved elsewhere.
function seeing(part) {
  const look = async () => {
    try {
      const { stamp } = await ask(`/stamp/${part.dataset.key}`);
      if (stamp !== part.dataset.stamp) { location.reload(); return; }
    } catch { return; }
    setTimeout(look, 1500);
  };
  setTimeout(look, 1500);
}

// Longer work: how far it is, until it ends.
function working(part) {
  const stop = one("#stop");
  // What was filled in or sent since must not be lost to a fresh page.
  let sent = false;
  document.addEventListener("submit", () => { sent = true; });
  const touched = () => sent || all("input:not([type=hidden]), textarea").some((field) => field.value !== field.defaultValue);
  const look = async () => {
    try {
      const got = await ask("/out/state");
      part.innerHTML = got.html;
      stop.hidden = got.state !== "running";
      if (got.state === "running") setTimeout(look, 400);
      else { say(one("p", part).textContent); if (got.state !== "none") setTimeout(() => { if (!touched()) location.reload(); }, 600); }
    } catch (problem) { say(problem.message); }
  };
  if (part.dataset.work === "running") look();
}

// A caption file dropped or chosen is read here and sent as text.
function hearing(field) {
  const target = document.getElementById(field.dataset.into);
  const name = document.getElementById(field.dataset.name);
  const take = async (file) => {
    if (!file) return;
    if (file.size > 6e6) { say("This file is too large for captions or a transcript."); return; }
    target.value = await file.text();
    if (name) name.value = file.name;
    say(`${file.name} is read; press Listen`);
    target.form.requestSubmit();
  };
  field.addEventListener("change", () => take(field.files[0]));
  if (field.files.length && !target.value) take(field.files[0]); // chosen before this script came
  const zone = field.closest("form");
  zone.addEventListener("dragover", (event) => event.preventDefault());
  zone.addEventListener("drop", (event) => { event.preventDefault(); take(event.dataTransfer.files[0]); });
}

document.documentElement.classList.add("has-script");
states();
if (one("#pen")) writing(one("#pen"));
if (one("[data-stamp]")) seeing(one("[data-stamp]"));
if (one("#work")) working(one("#work"));
all("[data-into]").forEach(hearing);
all("[data-filter]").forEach((field) => field.addEventListener("input", () => {
  const words = field.value.toLowerCase().split(/\s+/).filter(Boolean);
  for (const row of all(field.dataset.filter)) row.hidden = !one("input:checked", row) && !words.every((word) => row.textContent.toLowerCase().includes(word));
}));
