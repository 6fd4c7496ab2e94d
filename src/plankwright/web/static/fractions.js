// No line breaks inside a measure: half of 26-1/4" is another length. What is typed stays as it is.
const FRACTION = /(\d)-(?=\d+\/\d)/g;
const LEFT_ALONE = "textarea, option, script, style, title";

function keepTogether(root) {
  const texts = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
  while (texts.nextNode()) {
    const text = texts.currentNode;
    if (!text.data.includes("/") || text.parentElement.closest(LEFT_ALONE)) continue;
    const kept = text.data.replace(FRACTION, "$1\u2011");
    if (kept !== text.data) text.data = kept;
  }
}

document.addEventListener("htmx:load", (event) => keepTogether(event.detail.elt));
