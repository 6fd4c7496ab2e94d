// Makes drawings larger and smaller without loading the page again, about the middle of what is seen.
const show = (sheet, step) => {
  const box = sheet.parentElement, zooms = sheet.dataset.zooms.split(" ").map(Number);
  const x = (box.scrollLeft + box.clientWidth / 2) / box.scrollWidth;
  const y = (box.scrollTop + box.clientHeight / 2) / box.scrollHeight;
  sheet.dataset.zoom = step;
  sheet.classList.toggle("map-whole", !zooms[step]);
  sheet.classList.toggle("map-large", zooms[step] > 1);
  sheet.style.setProperty("--zoom", zooms[step] || 1);
  box.scrollLeft = x * box.scrollWidth - box.clientWidth / 2;
  box.scrollTop = y * box.scrollHeight - box.clientHeight / 2;
};

document.addEventListener("click", (event) => {
  const link = event.target.closest?.("[data-size]");
  const part = link?.closest("section, main");
  const sheets = part ? [...part.querySelectorAll("[data-zooms]")] : [];
  if (!sheets.length) return;
  event.preventDefault();
  event.stopPropagation();
  const most = sheets[0].dataset.zooms.split(" ").length - 1, now = Number(sheets[0].dataset.zoom);
  const next = { smaller: Math.max(0, now - 1), larger: Math.min(most, now + 1), whole: now ? 0 : 1 }[link.dataset.size];
  for (const sheet of sheets) show(sheet, next);
  for (const [size, off] of [["smaller", !next], ["larger", next === most]]) {
    for (const button of part.querySelectorAll(`[data-size="${size}"]`)) {
      button.classList.toggle("map-off", off);
      button.toggleAttribute("aria-disabled", off) && button.setAttribute("aria-disabled", "true");
    }
  }
  for (const button of part.querySelectorAll('[data-size="whole"]')) button.textContent = next ? "All of it" : "To read";
}, true);

// A board that is wider than the screen begins where the piece lies that one looks at; data-piece names it.
const begin = () => {
  for (const sheet of document.querySelectorAll("[data-piece]")) {
    const drawn = [...sheet.querySelectorAll("g[id]")].find((one) => one.querySelector(":scope > title")?.textContent.startsWith(`${sheet.dataset.piece}:`));
    if (!drawn) continue;
    drawn.classList.add("map-here");
    const box = sheet.parentElement, at = drawn.getBoundingClientRect(), seen = box.getBoundingClientRect();
    box.scrollLeft += (at.left + at.right - seen.left - seen.right) / 2;
  }
};
begin();
document.addEventListener("htmx:afterSettle", begin);
