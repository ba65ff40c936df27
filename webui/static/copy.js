// Copying needs scripts and leave to write the clipboard, so its buttons show
// only where there are both.
"use strict";
(() => {
  if (!navigator.clipboard) return;
  for (const button of document.querySelectorAll("[data-copy]")) {
    const from = document.getElementById(button.dataset.copy);
    button.hidden = false;
    button.addEventListener("click", () => {
      navigator.clipboard.writeText(from.textContent).then(() => { button.textContent = say("copied"); },
        () => { getSelection().selectAllChildren(from); });
    });
  }
})();
