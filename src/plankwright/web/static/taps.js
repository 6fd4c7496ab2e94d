// A tap on a drawing fills in where it was.
//
// On an element around the drawing:
//   data-tap              it takes taps
//   data-tap-area         which shape of the drawing stands for what is measured; ".tap-area" without it
//   data-tap-x="a b"      names of the fields that a tap fills along, the first empty one of them; also data-tap-y, upwards
//   data-tap-x-length     how long the shape is in life; also data-tap-y-length
//   data-tap-unit         "in" or "mm", written behind the number
//   data-tap-round        to how much of a unit it is rounded
//   data-tap-snap         within how much of an end of the shape the end itself is meant; never without it
//   data-tap-form         which form the fields are in; the nearest without it
// An element with data-tap-told in that form says what was filled in.
document.addEventListener("click", (event) => {
  const drawing = event.target.closest?.("[data-tap]");
  if (!drawing || event.target.closest("a[href], button")) return;
  const shape = drawing.querySelector(drawing.dataset.tapArea ?? ".tap-area");
  const form = drawing.dataset.tapForm ? document.querySelector(drawing.dataset.tapForm) : drawing.closest("form");
  const matrix = shape?.getScreenCTM();
  if (!form || !matrix) return;
  const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
  const box = shape.getBBox();
  const told = [
    fill(form, drawing, drawing.dataset.tapX, drawing.dataset.tapXLength, (at.x - box.x) / box.width),
    fill(form, drawing, drawing.dataset.tapY, drawing.dataset.tapYLength, 1 - (at.y - box.y) / box.height),
  ].filter(Boolean);
  const aloud = form.querySelector("[data-tap-told]");
  if (aloud && told.length) aloud.textContent = `${told.join(", ")}.`;
});

function fill(form, drawing, names, length, share) {
  if (!names || !length) return "";
  const field = names.trim().split(/\s+/).map((name) => form.elements.namedItem(name)).find((one) => one && !one.value);
  if (!field) return "";
  const step = Number(drawing.dataset.tapRound ?? 1);
  const whole = Number(length);
  // A thumb beside the shape means its edge; what is rounded must not reach beyond it.
  const inside = Math.min(Math.max(share, 0), 1) * whole;
  const near = Number(drawing.dataset.tapSnap ?? 0);
  const rounded = Math.min(Math.round(inside / step) * step, whole);
  const place = inside <= near ? 0 : whole - inside <= near ? whole : rounded;
  field.value = written(place, drawing.dataset.tapUnit ?? "mm");
  field.classList.add("just-filled");
  setTimeout(() => field.classList.remove("just-filled"), 1500);
  field.dispatchEvent(new Event("input", { bubbles: true }));
  const label = field.labels?.[0]?.textContent.trim() ?? field.name;
  return `${label} ${field.value}`;
}

// As it is written elsewhere: inches with a fraction, such as 2-1/2", the rest with a decimal mark.
const FINEST = 64;

function written(place, unit) {
  if (unit !== "in") {
    const decimal = document.querySelector("[data-tape-decimal]")?.dataset.tapeDecimal ?? ".";
    return `${Number(place.toFixed(4)).toString().replace(".", decimal)} ${unit}`;
  }
  // Rounded down: what is rounded up may reach beyond the shape.
  const parts = Math.floor(place * FINEST + 1e-3);
  let [top, bottom] = [parts % FINEST, FINEST];
  while (top && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  const whole = Math.floor(parts / FINEST);
  if (!top) return `${whole}"`;
  return whole ? `${whole}-${top}/${bottom}"` : `${top}/${bottom}"`;
}
