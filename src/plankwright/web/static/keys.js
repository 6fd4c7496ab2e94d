// Keys for measuring with a thumb: they open for fields of the class "tape", in place of the phone's own.
// What they offer follows from the tape of the job, which the nearest element with data-tape-system tells.
const KEPT = "plankwright.keys";
const ROOM_GOES_MS = 400;
let pad = null;
let field = null;

function stored() {
  try { return localStorage.getItem(KEPT); } catch { return null; }
}

function store(value) {
  try { localStorage.setItem(KEPT, value); } catch { /* It is asked again next time. */ }
}

// A thumb wants them, a mouse does not, and whoever says otherwise is heard.
function wanted() {
  const said = stored();
  return said ? said === "ours" : matchMedia("(pointer: coarse)").matches;
}

function prepare() {
  const ours = wanted();
  for (const input of document.querySelectorAll("input.tape")) input.inputMode = ours ? "none" : "text";
  for (const button of document.querySelectorAll("[data-keys-on]")) button.hidden = ours;
}

function tapeOf(input) {
  const told = (input.closest("[data-tape-system]") ?? document.querySelector("[data-tape-system]"))?.dataset ?? {};
  return {
    metric: told.tapeSystem === "metric",
    fraction: Number(told.tapeFraction ?? 16),
    decimal: told.tapeDecimal ?? ".",
  };
}

// Keys: what stands on each, what it is called aloud, and what it does.
function key(face, said, press, look = "") {
  const button = document.createElement("button");
  Object.assign(button, { type: "button", tabIndex: -1, textContent: face, className: look });
  button.setAttribute("aria-label", said);
  button.addEventListener("click", press);
  return button;
}

const digit = (face) => key(face, face, () => type(face));
const unit = (face, said) => key(face, said, () => typeUnit(face), "small");
const back = () => key("⌫", "take back", takeBack);

function row(...keys) {
  const one = document.createElement("div");
  one.append(...keys);
  return one;
}

function fractions(finest) {
  const coarse = Math.min(finest, 8);
  const keys = [];
  for (let top = 1; top < coarse; top += 1) {
    const [n, d] = reduced(top, coarse);
    keys.push(key(`${n}/${d}`, `${n}/${d} inch`, () => setFraction(n, d), "small"));
  }
  for (let d = 16; d <= finest; d *= 2) {
    keys.push(key(`+1/${d}`, `1/${d} inch more`, () => addFraction(d), "small"));
  }
  return keys;
}

function imperialRows(tape) {
  const parts = fractions(tape.fraction);
  const beside = (from) => [0, 1, 2].map((at) => parts[from + at] ?? document.createElement("span"));
  const further = parts.slice(8);
  return [
    row(digit("7"), digit("8"), digit("9"), ...beside(0)),
    row(digit("4"), digit("5"), digit("6"), ...beside(3)),
    row(digit("1"), digit("2"), digit("3"), ...beside(6).slice(0, 2), back()),
    row(key("'", "feet", typeFeet), digit("0"), key('"', "inches", () => typeUnit('"')), key(tape.decimal, "decimal mark", () => type(tape.decimal)), ...further, next()),
  ];
}

function metricRows(tape) {
  return [
    row(digit("7"), digit("8"), digit("9"), unit("mm", "millimetres")),
    row(digit("4"), digit("5"), digit("6"), unit("cm", "centimetres")),
    row(digit("1"), digit("2"), digit("3"), unit("m", "metres")),
    row(key(tape.decimal, "decimal mark", () => type(tape.decimal)), digit("0"), back(), next()),
  ];
}

function next() {
  const button = key("Next", "next field", goOn, "small");
  button.classList.add("two");
  return button;
}

function lastRow() {
  const send = field.form?.dataset.keysSend;
  const keys = [
    key("Abc", "use the phone's own keys", () => choose("phone"), "small"),
    key("Hide", "hide these keys", () => field?.blur(), "small"),
  ];
  if (send) {
    const button = key(send, send, () => field?.form.requestSubmit(), "small primary");
    button.classList.add("four");
    keys.push(button);
  }
  return row(...keys);
}

// What is behind the keys and wanted beside them: how much there is already, and one more like the last.
function headRow() {
  const { keysTold, keysBeside } = field.form?.dataset ?? {};
  const told = keysTold && document.querySelector(keysTold)?.textContent.trim();
  const button = keysBeside && document.querySelector(keysBeside);
  if (!told && !button) return [];
  const head = row();
  head.className = "keys-head";
  head.append(Object.assign(document.createElement("span"), { textContent: told ?? "" }));
  if (button) {
    const text = button.textContent.replace(/\s+/g, " ").trim();
    head.append(key(text, text, () => document.querySelector(keysBeside)?.click(), "small"));
  }
  return [head];
}

function open(input) {
  field = input;
  const tape = tapeOf(input);
  pad ??= document.createElement("div");
  pad.className = "keys";
  pad.setAttribute("role", "group");
  pad.setAttribute("aria-label", "Keys for measuring");
  pad.replaceChildren(...headRow(), ...(tape.metric ? metricRows(tape) : imperialRows(tape)), lastRow());
  if (!pad.isConnected) (document.getElementById("main") ?? document.body).append(pad);
  document.documentElement.classList.add("keys-open");
  document.documentElement.style.setProperty("--keys", `${pad.offsetHeight}px`);
  // Whatever is typed first stands in place of what was kept from the board before.
  setTimeout(() => { if (document.activeElement === input) input.select(); }, 0);
  input.scrollIntoView({ block: "nearest" });
}

function close() {
  field = null;
  pad?.remove();
  // The room below goes later: a page that moves under the thumb that pressed a button makes it miss.
  setTimeout(() => { if (!field) document.documentElement.classList.remove("keys-open"); }, ROOM_GOES_MS);
}

function choose(which) {
  const input = field ?? document.querySelector("input.tape");
  store(which);
  prepare();
  close();
  input?.blur();
  input?.focus();
}

// Text before the caret, and what is done to it.
function replaceBefore(edit) {
  if (!field) return;
  const from = field.selectionStart ?? field.value.length;
  const to = field.selectionEnd ?? from;
  const before = edit(field.value.slice(0, from), from !== to);
  if (before === null) return;
  const text = before + field.value.slice(to);
  field.value = text;
  field.setSelectionRange(before.length, before.length);
  field.dispatchEvent(new Event("input", { bubbles: true }));
}

const COMPLETE = /("|mm|cm|m)\s*$/;
const FRACTION = /(?:^|[-\s])(\d+)\/(\d+)"?\s*$/;

function type(mark) {
  // A measurement that has its unit is done: what comes now is another one.
  replaceBefore((before) => (COMPLETE.test(before) ? mark : before + mark));
}

function typeUnit(mark) {
  replaceBefore((before) => {
    const plain = before.replace(COMPLETE, "").trimEnd();
    if (!/\d$/.test(plain)) return null;
    return mark === '"' ? `${plain}"` : `${plain} ${mark}`;
  });
}

function typeFeet() {
  replaceBefore((before) => (/^\s*\d+\s*$/.test(before) ? `${before.trim()}' ` : null));
}

function setFraction(top, bottom) {
  replaceBefore((before) => withFraction(before, top, bottom));
}

function addFraction(bottom) {
  replaceBefore((before) => {
    const there = before.match(FRACTION);
    const [top, under] = there ? [Number(there[1]), Number(there[2])] : [0, 1];
    const [n, d] = reduced(top * bottom + under, under * bottom);
    return n < d ? withFraction(before, n, d) : null;
  });
}

function withFraction(before, top, bottom) {
  const whole = before.replace(FRACTION, "").replace(/"\s*$/, "").trimEnd();
  if (/[.,]\d*$/.test(whole) || /m$/.test(whole)) return null;
  if (!whole) return `${top}/${bottom}"`;
  if (whole.endsWith("'")) return `${whole} 0-${top}/${bottom}"`;
  return `${whole.replace(/-$/, "")}-${top}/${bottom}"`;
}

function takeBack() {
  replaceBefore((before, selected) => {
    if (selected) return before;
    if (FRACTION.test(before)) return before.replace(FRACTION, "");
    return before.replace(/(?:\s*(?:mm|cm|m)|'\s*|.)$/, "");
  });
}

function reduced(top, bottom) {
  let [a, b] = [top, bottom];
  while (b) [a, b] = [b, a % b];
  return [top / a, bottom / a];
}

function goOn() {
  const inputs = [...(field?.form?.querySelectorAll("input.tape") ?? [])].filter((one) => one.offsetParent && !one.closest("details:not([open])"));
  const after = inputs[inputs.indexOf(field) + 1];
  if (after) after.focus();
  else field?.blur();
}

// The field keeps the keyboard while its keys are pressed.
document.addEventListener("mousedown", (event) => { if (event.target.closest?.(".keys")) event.preventDefault(); });
document.addEventListener("focusin", (event) => {
  if (event.target.matches?.("input.tape") && wanted()) open(event.target);
  else if (!event.target.closest?.(".keys")) close();
});
document.addEventListener("focusout", () => setTimeout(() => {
  if (field && document.activeElement !== field) close();
}, 0));
document.addEventListener("click", (event) => { if (event.target.closest?.("[data-keys-on]")) choose("ours"); });
document.addEventListener("htmx:load", () => {
  prepare();
  if (field && !field.isConnected) close();
  const active = document.activeElement;
  if (active?.matches?.("input.tape") && active !== field && wanted()) open(active);
});
prepare();
