// The drinks of tonight are sifted as one types, by name and by what is poured, also after
// the board was drawn anew; Find asks the house. Without scripts the form does all of it.
"use strict";
(() => {
  const box = document.getElementById("q"), board = document.getElementById("board"), sifted = document.getElementById("sifted");
  if (!box || !board) return;
  const plain = (s) => s.normalize("NFD").replace(/[\u0300-\u036f]/g, "").toLowerCase();
  const asked = box.value; // what the house found for it stays as it is
  const sift = () => {
    const wanted = plain(box.value).split(/\s+/).filter(Boolean), all = box.value === asked || !wanted.length;
    const found = (list) => {
      let n = 0;
      for (const li of list) {
        const text = plain(li.querySelector("h2, strong").textContent) + " " + li.dataset.words;
        li.hidden = !all && !wanted.every((w) => text.includes(w));
        if (!li.hidden) n++;
      }
      return n;
    };
    const drinks = board.querySelectorAll(".evening > li"), barred = board.querySelectorAll(".not-for li");
    const shown = found(drinks), kept = found(barred), counted = document.getElementById("counted");
    if (!all && kept && !shown) document.getElementById("not-for").open = true;
    if (counted) counted.hidden = !all;
    sifted.hidden = all;
    sifted.textContent = all ? "" : say("sifted", { Shown: shown, Listed: drinks.length, Barred: kept, More: drinks.length + barred.length < board.firstElementChild.dataset.menu });
  };
  box.addEventListener("input", sift);
  new MutationObserver(sift).observe(board, { childList: true });
})();
