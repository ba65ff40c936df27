// The button that prints needs scripts, so it shows only with them.
"use strict";
(() => {
  const button = document.getElementById("print");
  if (!button) return;
  button.hidden = false;
  button.addEventListener("click", () => window.print());
})();
