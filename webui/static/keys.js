// Keys: / goes to where one finds things, ? shows the list of keys.
"use strict";
(() => {
  const list = document.getElementById("keys");
  const show = () => list?.showModal();
  document.querySelector("[data-keys]")?.addEventListener("click", show);
  document.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.defaultPrevented) return;
    if (event.target.closest?.("input, textarea, select, [contenteditable]") || list?.open) return;
    if (event.key === "?") show();
    if (event.key !== "/") return;
    const box = document.querySelector("main input[type=search], main textarea");
    event.preventDefault();
    if (!box) return void location.assign("/specs#q");
    box.focus();
    box.scrollIntoView({ block: "center" });
  });
  const keys = document.querySelector("[data-keys]");
  if (keys) keys.hidden = false;
  if (location.hash === "#q") document.getElementById("q")?.focus();
})();
