// What is half typed outlives that the page is loaded anew or left: it is kept in this tab until it is sent and accepted.
//
// On a form:
//   data-draft="tally.7"   it is kept, under this name, which no other form has
//   data-draft-typed       the page shows what was typed and not accepted, or not sent to be kept yet: nothing is put back
// Kept is what differs from what the page came with, and with it which state of things it was typed for: who changed
// something meanwhile is not written over without a word.
const PREFIX = "plankwright.draft.";
const FORM = "form[data-draft]";
const STATE = new Set(["seen", "mends"]);
const ready = new WeakSet();
const cameWith = new WeakMap();

function read(form) {
  try { return JSON.parse(sessionStorage.getItem(PREFIX + form.dataset.draft)); } catch { return null; }
}

function write(form, draft) {
  try {
    if (draft) sessionStorage.setItem(PREFIX + form.dataset.draft, JSON.stringify(draft));
    else sessionStorage.removeItem(PREFIX + form.dataset.draft);
  } catch { /* The tab keeps nothing: it is as if it had not been asked to. */ }
}

// Fields by name; those that share one are told apart by their number.
function fieldsOf(form) {
  const counts = new Map();
  const fields = new Map();
  for (const one of form.elements) {
    if (!one.name || one.name === "key" || !one.matches("input:not([type=file], [type=submit]), select, textarea")) continue;
    const number = counts.get(one.name) ?? 0;
    counts.set(one.name, number + 1);
    fields.set(`${one.name} ${number}`, one);
  }
  return fields;
}

const unseen = (one) => one.type === "hidden";
const ticked = (one) => ["checkbox", "radio"].includes(one.type);
const said = (one) => (ticked(one) ? one.checked : one.value);

function before(one) {
  if (ticked(one)) return one.defaultChecked;
  if (one.tagName !== "SELECT") return one.defaultValue;
  return ([...one.options].find((option) => option.defaultSelected) ?? one.options[0])?.value ?? "";
}

const isTyped = (form) => "draftTyped" in form.dataset || Boolean(form.querySelector(".problems"));

function save(form) {
  const kept = isTyped(form) ? (read(form)?.fields ?? {}) : {};
  const fields = {};
  const carried = {};
  for (const [name, one] of fieldsOf(form)) {
    if (STATE.has(one.name)) carried[name] = one.value;
    else if (unseen(one)) continue;
    else if (name in kept || said(one) !== before(one)) fields[name] = said(one);
  }
  write(form, Object.keys(fields).length ? { fields, carried } : null);
}

function restore(form) {
  ready.add(form);
  const draft = read(form);
  if (!draft) return;
  if (isTyped(form)) {
    save(form);
    return;
  }
  const there = fieldsOf(form);
  const lost = Object.keys(draft.fields).filter((name) => !there.has(name));
  const found = Object.entries(draft.fields).filter(([name, value]) => there.has(name) && said(there.get(name)) !== value);
  if (!found.length && !lost.length) {
    write(form, null);
    return;
  }
  const unseenBefore = [];
  for (const [name, value] of Object.entries(draft.carried)) {
    const one = there.get(name);
    if (!one) continue;
    unseenBefore.push([one, one.value]);
    one.value = value;
  }
  cameWith.set(form, unseenBefore);
  for (const [name, value] of found) putBack(there.get(name), value);
  tell(form, lost.filter((name) => draft.fields[name]).length);
  form.dispatchEvent(new Event("input", { bubbles: true }));
}

function putBack(one, value) {
  if (ticked(one)) one.checked = value;
  else one.value = value;
  if (one.tagName === "SELECT" && one.selectedIndex < 0) one.selectedIndex = 0;
  for (let at = one.closest("details"); at; at = at.parentElement.closest("details")) at.open = true;
}

function tell(form, lost) {
  const line = document.createElement("p");
  line.className = "draft-told row";
  line.setAttribute("role", "status");
  const words = document.createElement("span");
  words.className = "grow";
  words.textContent = "What you had typed is still here.";
  if (lost) words.textContent += ` ${lost === 1 ? "One field has" : `${lost} fields have`} no place here any more and could not be put back.`;
  const drop = Object.assign(document.createElement("button"), { type: "button", className: "quiet", textContent: "Throw away" });
  drop.dataset.draftDrop = "";
  line.append(words, drop);
  form.prepend(line);
}

function throwAway(form) {
  write(form, null);
  form.querySelector(".draft-told")?.remove();
  form.reset();
  for (const [one, value] of cameWith.get(form) ?? []) one.value = value;
  form.dispatchEvent(new Event("input", { bubbles: true }));
  document.getElementById("main")?.focus({ preventScroll: true });
}

function restoreAll() {
  for (const form of document.querySelectorAll(FORM)) if (!ready.has(form)) restore(form);
}

for (const name of ["input", "change"]) {
  document.addEventListener(name, (event) => {
    const form = event.target.form ?? event.target;
    if (form.matches?.(FORM) && ready.has(form)) save(form);
  });
}
document.addEventListener("click", (event) => {
  if (event.target.closest?.("[data-draft-drop]")) throwAway(event.target.closest(FORM));
});
// Accepted is what leads on to another page; what is shown again was refused, or is not finished.
document.addEventListener("htmx:beforeSwap", (event) => {
  const { requestConfig, xhr, pathInfo } = event.detail;
  const form = requestConfig.elt;
  if (requestConfig.verb !== "post" || !form.matches?.(FORM) || xhr.status >= 400) return;
  if (pathInfo.responsePath && pathInfo.responsePath !== pathInfo.requestPath) write(form, null);
});
document.addEventListener("htmx:afterSettle", restoreAll);
if (document.readyState === "complete") restoreAll();
else document.addEventListener("DOMContentLoaded", restoreAll);
