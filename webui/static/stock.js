// The stock with scripts: names of ingredients are offered as they are typed,
// as on the bench, and a file is read once it is chosen, or says that it is too long.
"use strict";
(() => {
  const least = 2; // letters before anything is offered

  // The line that the caret is in; a field of one line is one.
  const line = (box) => {
    const start = box.value.lastIndexOf("\n", box.selectionStart - 1) + 1;
    const next = box.value.indexOf("\n", box.selectionStart);
    const end = next < 0 ? box.value.length : next;
    return { start, end, text: box.value.slice(start, end) };
  };

  for (const box of document.querySelectorAll("[data-names]")) {
    const names = document.getElementById(box.dataset.names);
    const before = box.dataset.before;
    let waiting = 0;
    const offer = () => {
      const at = line(box);
      if (box.selectionStart !== at.end || at.text.trim().length < least) return names.replaceChildren();
      window.htmx?.ajax("GET", "/names?line=" + encodeURIComponent(before + at.text),
        { source: names, target: names, swap: "innerHTML" });
    };
    box.addEventListener("input", (event) => {
      clearTimeout(waiting);
      if (event.isTrusted) waiting = setTimeout(offer, 150);
    });
    names.addEventListener("click", (event) => {
      const hit = event.target.closest("[data-line]");
      if (!hit) return;
      const at = line(box);
      box.setRangeText(hit.dataset.line.slice(before.length), at.start, at.end, "end");
      names.replaceChildren();
      box.focus();
      box.dispatchEvent(new Event("input", { bubbles: true }));
    });
  }

  const file = document.querySelector("input[data-most]");
  const tooLong = () => (file.files[0]?.size || 0) > Number(file.dataset.most);
  const tell = () => { document.getElementById("too-long").hidden = !tooLong(); };
  // A file that was chosen is read at once; nothing is written before it is looked at.
  file?.addEventListener("change", () => {
    tell();
    if (file.files.length && !tooLong()) file.form.requestSubmit();
  });
  file?.form.addEventListener("submit", (event) => {
    tell();
    if (!tooLong()) return;
    event.preventDefault();
    file.focus();
  });

  document.getElementById("said")?.focus();
})();
