// Riffs with scripts: a list of bottles is sifted as one types. Without scripts it is a form.
"use strict";
(() => {
  const box = document.querySelector("[data-sifts]");
  if (!box) return;
  const list = document.getElementById(box.dataset.sifts);
  const plain = (s) => s.normalize("NFD").replace(/[\u0300-\u036f]/g, "").toLowerCase().trim();
  const sift = () => {
    const wanted = plain(box.value);
    for (const shelf of list.querySelectorAll("details")) {
      let shown = 0;
      for (const label of shelf.querySelectorAll("label")) {
        const tick = label.querySelector("input");
        label.hidden = !tick.checked && !plain(label.textContent).includes(wanted);
        if (!label.hidden) shown++;
      }
      shelf.hidden = shown === 0;
      if (wanted) shelf.open = true;
    }
  };
  box.addEventListener("input", sift);
  // The button that sifts, and a return in the box, do not send the form.
  box.form.addEventListener("submit", (event) => {
    if (event.submitter?.name !== "show") return;
    event.preventDefault();
    sift();
  });
})();
