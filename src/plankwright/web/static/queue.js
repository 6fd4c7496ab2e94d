// Entries wait on the phone while it has no connection: kept in its storage until the computer has answered.
//
// A form with data-queue, the id of its job, is queued when it cannot be sent; its field "key" says on each entry
// which one it is, so that none is added twice. data-queue-keeps names the fields that the next entry begins with.
const PREFIX = "plankwright.waiting.";
const FORM = "form[data-queue]";
const OFTEN_MS = 5_000;
const PATIENCE_MS = 8_000;
const MOST_NAMED = 12;
const NO_CONNECTION = "There is no connection.";
let sending = false;
let timer = 0;
let hindrance = "";
let shown = "";

// What is kept, by job.
function read(job) {
  try { return JSON.parse(localStorage.getItem(PREFIX + job)) ?? []; } catch { return []; }
}

function write(job, entries) {
  try {
    if (entries.length) localStorage.setItem(PREFIX + job, JSON.stringify(entries));
    else localStorage.removeItem(PREFIX + job);
    return true;
  } catch {
    return false;
  }
}

function jobs() {
  try {
    return Object.keys(localStorage).filter((name) => name.startsWith(PREFIX)).map((name) => name.slice(PREFIX.length));
  } catch {
    return [];
  }
}

const remove = (job, key) => write(job, read(job).filter((entry) => entry.key !== key));
const unsent = (job) => read(job).filter((entry) => !entry.trouble);

// A field of the name of a property, such as "length", is found only so.
const input = (form, name) => form.elements.namedItem(name);

function newKey() {
  return [...crypto.getRandomValues(new Uint8Array(12))].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

// An entry that could not be sent, or that has to wait behind others.
function keep(form, fields) {
  const job = form.dataset.queue;
  const of = Object.fromEntries(fields);
  const entry = {
    key: of.key || newKey(),
    url: form.getAttribute("action"),
    id: of.id,
    size: [of.length, of.width, of.thickness].filter(Boolean).join(" × "),
    fields: fields.filter(([name, value]) => value !== "" && name !== "key" && name !== "mends" && !name.startsWith("again.")),
    trouble: "",
  };
  const others = read(job).filter((other) => other.key !== entry.key && other.key !== of.mends);
  if (!write(job, [...others, entry])) {
    say("This phone cannot keep what you entered, and there is no connection. It still stands here: write it down, or send it again later.");
    return;
  }
  document.querySelector(".not-sent")?.remove();
  show();
  goOnAfter(job, entry);
  (form.dataset.queueKeeps === undefined ? null : input(form, "length"))?.focus();
  later();
}

// The forms as they are for the board after this one.
function goOnAfter(job, entry) {
  const id = following(entry.id, read(job).map((other) => other.id));
  for (const form of document.querySelectorAll(FORM)) {
    if (form.dataset.queue !== job) continue;
    input(form, "key").value = newKey();
    if (form.dataset.queueKeeps !== undefined) {
      begin(form, entry, id);
    } else {
      repeat(form, entry, id);
    }
  }
}

function begin(form, entry, id) {
  const kept = form.dataset.queueKeeps.split(" ");
  const of = new Map(entry.fields);
  for (const field of form.elements) {
    if (!field.name || ["key", "id", "again"].includes(field.name)) continue;
    field.value = kept.includes(field.name) ? (of.get(field.name) ?? "") : "";
    if (field.tagName === "SELECT" && field.selectedIndex < 0) field.selectedIndex = 0;
  }
  input(form, "id").value = id;
  // The form is as if it had come so: nothing is typed in it yet, and nothing is put back.
  for (const field of form.elements) {
    if (field.tagName === "INPUT") field.defaultValue = field.value;
    for (const option of field.options ?? []) option.defaultSelected = option.selected;
  }
  delete form.dataset.draftTyped;
  for (const told of form.querySelectorAll(".just-done, .problems, .draft-told")) told.remove();
  form.dispatchEvent(new Event("input", { bubbles: true }));
}

// What stands in the form for one more like the last board.
const OWN = /^(?:key|mends|id|note|moisture|quantity|flaws|flaw\..*)$/;

function repeat(form, entry, id) {
  for (const field of [...form.querySelectorAll("input")]) if (field.name !== "key") field.remove();
  for (const [name, value] of [...entry.fields.filter(([one]) => !OWN.test(one)), ["id", id]]) {
    const field = Object.assign(document.createElement("input"), { type: "hidden", name, value });
    form.append(field);
  }
  form.querySelector("[data-again=id]").textContent = id;
  form.querySelector("[data-again=size]").textContent = entry.size;
  form.querySelector("[data-again=without]")?.remove();
}

// Counts a mark up as the computer would: F13 after F12, 08 after 07.
function following(id, taken) {
  const match = /^(.*?)(\d+)$/s.exec(id ?? "");
  const [stem, digits] = match ? [match[1], match[2]] : [id ? `${id}-` : "", "0"];
  let number = BigInt(digits);
  let name;
  do {
    number += 1n;
    name = stem + number.toString().padStart(digits.length, "0");
  } while (taken.includes(name));
  return name;
}

// Sends what waits, in order, until something is in the way.
async function flush() {
  if (sending) return;
  sending = true;
  const sent = new Set();
  try {
    hindrance = "";
    for (const job of jobs()) {
      for (let [entry] = unsent(job); entry && !hindrance; [entry] = unsent(job)) {
        const answer = await send(entry);
        if (answer.kept) {
          remove(job, entry.key);
          sent.add(job);
        } else if (answer.refused) {
          write(job, read(job).map((other) => (other.key === entry.key ? { ...other, trouble: answer.refused } : other)));
        } else {
          hindrance = answer.hindrance;
        }
        show();
      }
    }
  } finally {
    sending = false;
    if (sent.has(jobHere())) document.body.dispatchEvent(new CustomEvent("boards-sent"));
    show();
    later();
  }
}

async function send(entry) {
  const giveUp = new AbortController();
  const patience = setTimeout(() => giveUp.abort(), PATIENCE_MS);
  try {
    const response = await fetch(entry.url, {
      method: "POST",
      headers: { accept: "text/plain" },
      body: new URLSearchParams([...entry.fields, ["key", entry.key]]),
      signal: giveUp.signal,
    });
    const text = (await response.text()).trim();
    const plain = (response.headers.get("content-type") ?? "").startsWith("text/plain");
    if (response.ok && text === `kept ${entry.key}`) return { kept: true };
    if (plain && [404, 409, 413, 422].includes(response.status)) return { refused: text };
    return { hindrance: plain && text.length < 400 ? text : "The computer did not take it; it is tried again." };
  } catch {
    return { hindrance: NO_CONNECTION };
  } finally {
    clearTimeout(patience);
  }
}

function later() {
  clearTimeout(timer);
  if (jobs().some((job) => unsent(job).length)) timer = setTimeout(flush, OFTEN_MS);
}

// What is shown of it.
const jobHere = () => /^\/jobs\/([^/]+)/.exec(location.pathname)?.[1] ?? "";

function make(tag, text = "", more = {}) {
  return Object.assign(document.createElement(tag), { textContent: text, ...more });
}

function named(entries) {
  const ids = entries.slice(0, MOST_NAMED).map((entry) => entry.id).join(", ");
  return entries.length > MOST_NAMED ? `${ids} and ${entries.length - MOST_NAMED} more` : ids;
}

function show() {
  const main = document.getElementById("main");
  if (!main) return;
  const parts = jobs().flatMap(partsOf);
  let box = document.querySelector(".waiting");
  if (!parts.length) {
    box?.remove();
    return;
  }
  // A text that is the same is not written anew: it would be read aloud again, and close what is open.
  const state = JSON.stringify([jobs().map(read), hindrance, jobHere(), Boolean(document.querySelector(FORM))]);
  if (box && shown === state) return;
  if (!box) {
    box = make("section", "", { className: "waiting" });
    box.setAttribute("aria-label", "Waiting on this phone");
    main.prepend(box);
  }
  shown = state;
  box.replaceChildren(...parts);
}

function partsOf(job) {
  const waiting = unsent(job);
  const refused = read(job).filter((entry) => entry.trouble);
  const parts = [];
  if (waiting.length) {
    const line = make("p");
    line.setAttribute("role", "status");
    const boards = waiting.length === 1 ? "1 board waits" : `${waiting.length} boards wait`;
    line.append(make("strong", `${boards} on this phone`), ` until it is connected again: ${named(waiting)}. `);
    const again = make("button", "Send now", { type: "button", className: "quiet" });
    again.dataset.waiting = "send";
    line.append(again);
    parts.push(line);
    if (hindrance && hindrance !== NO_CONNECTION) parts.push(make("p", hindrance));
  }
  if (refused.length) {
    const boards = refused.length === 1 ? "1 board was" : `${refused.length} boards were`;
    const words = make("span");
    words.append(make("strong", `${boards} not added`), `: ${named(refused)}.`);
    const said = make("summary");
    said.append(words);
    const list = make("ul");
    list.append(...refused.map((entry) => itemOf(job, entry)));
    const all = make("details", "", { open: true });
    all.append(said, list);
    parts.push(all);
  }
  if (job !== jobHere()) {
    const link = make("a", "Go to their tally", { href: `/jobs/${job}/tally` });
    parts.push(link);
  }
  return parts;
}

function itemOf(job, entry) {
  const item = make("li");
  const head = make("p");
  head.append(make("strong", entry.id), ` ${entry.size}`);
  item.append(head, make("p", entry.trouble));
  const buttons = make("div", "", { className: "row" });
  if (document.querySelector(`${FORM}[data-queue-keeps]`) && job === jobHere()) buttons.append(action("mend", entry, "Mend"));
  const drop = make("details");
  drop.append(make("summary", "Drop"), action("drop", entry, `Drop ${entry.id} for good`));
  buttons.append(drop);
  item.append(buttons);
  item.dataset.job = job;
  return item;
}

function action(what, entry, text) {
  const button = make("button", text, { type: "button" });
  button.dataset.waiting = what;
  button.dataset.key = entry.key;
  return button;
}

function mend(job, key) {
  const entry = read(job).find((other) => other.key === key);
  const form = document.querySelector(`${FORM}[data-queue-keeps]`);
  if (!entry || !form) return;
  for (const field of form.elements) {
    if (!field.name || field.name === "key") continue;
    const value = entry.fields.find(([name]) => name === field.name)?.[1];
    if (value !== undefined) field.value = value;
    else if (field.tagName === "INPUT") field.value = "";
  }
  for (const more of form.querySelectorAll("details")) more.open = true;
  input(form, "key").value = newKey();
  input(form, "mends").value = key;
  input(form, "id").focus();
  form.dispatchEvent(new Event("input", { bubbles: true }));
}

// A page that could not be fetched may be asked for again as soon as there is a connection.
async function lookForConnection() {
  const told = document.querySelector(".not-sent[data-until-connected]");
  if (!told) return;
  try {
    await fetch("/static/mark.svg", { method: "HEAD", cache: "no-store", signal: AbortSignal.timeout(PATIENCE_MS) });
    told.remove();
  } catch {
    setTimeout(lookForConnection, OFTEN_MS);
  }
}

// One more like the last board is not what somebody wants who has typed another one.
function sameAgain(form) {
  const own = (field) => /^(?:length|flaws|flaw\.\d+\.(?:start|end))$/.test(field.name);
  if ([...form.elements].some((field) => own(field) && field.value.trim())) {
    say("You have typed a board that is not added yet: add it first.");
  } else {
    document.getElementById("again").requestSubmit();
  }
}

function say(sentence) {
  document.querySelector(".not-sent")?.remove();
  const box = make("section", "", { className: "not-sent" });
  box.setAttribute("role", "alert");
  box.append(make("p", sentence));
  document.getElementById("main")?.prepend(box);
}

// After a page has come: the guess of the computer knows nothing of what still waits here.
function adjust() {
  const form = document.querySelector(`${FORM}[data-queue-keeps]`);
  const last = form && unsent(form.dataset.queue).at(-1);
  if (last && input(form, "id").value === input(form, "id").defaultValue && !input(form, "length").value) {
    goOnAfter(form.dataset.queue, last);
  }
}

const fieldsOf = (config) => [...config.formData.entries()].filter(([, value]) => typeof value === "string");
const formOf = (event) => event.detail.requestConfig?.elt;

document.addEventListener("htmx:beforeRequest", (event) => {
  const form = formOf(event);
  if (form?.matches?.("a, form")) document.querySelector(".not-sent")?.remove();
  if (event.detail.requestConfig.verb !== "post" || !form?.matches?.(FORM)) return;
  // What was entered before goes first.
  if (unsent(form.dataset.queue).length) {
    event.preventDefault();
    keep(form, fieldsOf(event.detail.requestConfig));
    flush();
  }
});
for (const name of ["htmx:sendError", "htmx:timeout"]) {
  document.addEventListener(name, (event) => {
    const from = formOf(event);
    if (from?.matches?.(FORM)) keep(from, fieldsOf(event.detail.requestConfig));
    else if (from?.matches?.("form[method=post]")) say("There is no connection, so this was not sent. What you filled in still stands here: send it again.");
    else if (from?.matches?.("a, form")) {
      say("There is no connection, so the page could not be fetched.");
      document.querySelector(".not-sent").dataset.untilConnected = "";
      setTimeout(lookForConnection, OFTEN_MS);
    }
  });
}
document.addEventListener("htmx:afterRequest", (event) => {
  const form = formOf(event);
  const mended = event.detail.xhr.status < 400 && event.detail.successful && form?.matches?.(FORM) && event.detail.requestConfig.formData.get("mends");
  if (mended) remove(form.dataset.queue, mended);
});
document.addEventListener("click", (event) => {
  const button = event.target.closest?.("[data-waiting]");
  if (!button) return;
  const job = button.closest("[data-job]")?.dataset.job;
  if (button.dataset.waiting === "send") flush();
  if (button.dataset.waiting === "mend") mend(job, button.dataset.key);
  if (button.dataset.waiting === "drop") { remove(job, button.dataset.key); show(); }
});
document.addEventListener("htmx:load", (event) => { if (event.target === document.body || event.target.parentElement === document.body) { show(); adjust(); } });
document.addEventListener("click", (event) => {
  const button = event.target.closest?.("#same-again");
  if (!button?.form) return;
  event.preventDefault();
  sameAgain(button.form);
});
window.addEventListener("online", () => {
  flush();
  lookForConnection();
});
window.addEventListener("storage", show);
document.addEventListener("visibilitychange", () => { if (!document.hidden) flush(); });
show();
adjust();
flush();
