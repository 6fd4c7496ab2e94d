// Takes the keyboard along to a page that came without a reload.
// A page that is swapped in keeps the focus where the old one had it; a reader would not hear that it is another.
document.addEventListener("htmx:afterSettle", (event) => {
  if (event.detail.target !== document.body || document.querySelector("[autofocus]")) return;
  document.getElementById("main")?.focus({ preventScroll: true });
});
