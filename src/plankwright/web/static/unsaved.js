// Whoever leaves a long form without saving it finds again what was typed, for as long as the tab is open.
//
// On a form:
//   data-unsaved="key"        it is kept under that key
//   data-unsaved-again        it was sent and is shown again, so that what it holds is not saved yet
// On an element beside it:
//   data-unsaved-panel="key"  shown when there is something to put back; hidden until then
//   buttons in it with data-unsaved-do="put-back" or "drop"
// Rows are made by the server, so what was typed is sent to where the form goes, with a field "draw" that keeps nothing.
const MARK = "unsaved:";
const NOT_TYPED = new Set(["key", "next", "add", "remove", "draw", "over", "lot_of_tally"]);

const NO_SAVING = new Set(["add", "remove", "draw", "lot_of_tally"]);

const typed = (form) => [...new FormData(form)].filter(([name, value]) => typeof value === "string" && !NOT_TYPED.has(name));
const filled = (fields) => JSON.stringify(fields.filter(([name, value]) => value.trim() && name !== "seen").sort());

function stored(key) {
  try {
    return JSON.parse(sessionStorage.getItem(MARK + key));
  } catch {
    return null;
  }
}

function store(form, sent = false) {
  try {
    sessionStorage.setItem(MARK + form.dataset.unsaved, JSON.stringify({ fields: typed(form), action: form.getAttribute("action"), sent }));
  } catch {
    // Without room, or where keeping is not allowed, the form works as it did.
  }
}

function drop(key) {
  try {
    sessionStorage.removeItem(MARK + key);
  } catch {
    // There is none then either.
  }
}

const formOf = (key) => document.querySelector(`form[data-unsaved="${CSS.escape(key)}"]`);
const panelOf = (key) => document.querySelector(`[data-unsaved-panel="${CSS.escape(key)}"]`);

function arrive() {
  let keys = [];
  try {
    keys = Object.keys(sessionStorage).filter((name) => name.startsWith(MARK)).map((name) => name.slice(MARK.length));
  } catch {
    return;
  }
  for (const key of keys) {
    const form = formOf(key);
    const record = stored(key);
    // What was sent and is not shown again was saved; a page in its place says that something went wrong.
    const saved = form ? !form.hasAttribute("data-unsaved-again") : location.pathname !== record?.action;
    if (record?.sent && saved) drop(key);
  }
  const form = document.querySelector("form[data-unsaved]");
  if (!form) return;
  const key = form.dataset.unsaved;
  if (form.hasAttribute("data-unsaved-again")) return store(form);
  const before = stored(key);
  const panel = panelOf(key);
  if (panel) panel.hidden = !before || filled(before.fields) === filled(typed(form));
}

function putBack(key) {
  const form = formOf(key);
  const before = stored(key);
  if (!form || !before) return;
  const sent = document.createElement("form");
  sent.method = "post";
  sent.action = form.getAttribute("action");
  sent.hidden = true;
  const newKey = form.elements.namedItem("key");
  const fields = [...before.fields, ...(newKey ? [["key", newKey.value]] : []), ["draw", "draw"]];
  for (const [name, value] of fields) {
    const field = document.createElement("textarea");
    field.name = name;
    field.value = value;
    sent.append(field);
  }
  document.body.append(sent);
  window.htmx?.process(sent);
  sent.requestSubmit();
}

function keep(event) {
  const form = event.target.closest?.("form[data-unsaved]");
  if (!form) return;
  store(form);
  const panel = panelOf(form.dataset.unsaved);
  if (panel) panel.hidden = true;
}

document.addEventListener("input", keep);
document.addEventListener("change", keep);
document.addEventListener("submit", (event) => {
  const form = event.target.closest?.("form[data-unsaved]");
  if (form && !NO_SAVING.has(event.submitter?.name)) store(form, true);
});
document.addEventListener("click", (event) => {
  const button = event.target.closest?.("[data-unsaved-do]");
  if (!button) return;
  const panel = button.closest("[data-unsaved-panel]");
  const key = panel.dataset.unsavedPanel;
  if (button.dataset.unsavedDo === "put-back") return putBack(key);
  drop(key);
  panel.hidden = true;
});
document.addEventListener("htmx:sendError", () => {
  const form = document.querySelector("form[data-unsaved]");
  if (form && stored(form.dataset.unsaved)) store(form);
});
document.addEventListener("htmx:afterSettle", (event) => {
  if (event.target === document.body) arrive();
  else if (stored(event.target.closest?.("form[data-unsaved]")?.dataset.unsaved)) keep(event);
});
arrive();
