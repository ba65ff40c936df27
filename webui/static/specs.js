// The specs are sifted as one types, by name and by what is poured; Find asks the
// house. Without scripts the form does all of it.
"use strict";
(() => {
  const box = document.getElementById("q"), list = document.getElementById("specs"), none = document.getElementById("none");
  const counted = document.getElementById("counted"), sifted = document.getElementById("sifted");
  const letters = document.querySelector(".letters");
  if (!box || !list) return;
  const plain = (s) => s.normalize("NFD").replace(/[\u0300-\u036f]/g, "").toLowerCase();
  const drinks = [...list.children].map((li) => ({ li, text: plain(li.querySelector("h2").textContent + " " + li.querySelector(".in-line").textContent) }));
  // What opens comes onto the screen.
  list.addEventListener("toggle", (event) => { if (event.target.open) event.target.scrollIntoView({ block: "nearest" }); }, true);
  const asked = box.value;
  box.addEventListener("input", () => {
    const wanted = plain(box.value).split(/\s+/).filter(Boolean);
    // What the house found for the word in the box stays as it is.
    const all = box.value === asked;
    let shown = 0;
    for (const { li, text } of drinks) {
      li.hidden = !all && !wanted.every((w) => text.includes(w));
      if (!li.hidden) shown++;
    }
    none.hidden = shown > 0;
    // What was counted, and is printed, is what the house found; what is shown now is another list.
    counted.hidden = !all;
    sifted.hidden = all;
    sifted.textContent = all ? "" : say("sifted", { Shown: shown, Listed: drinks.length, One: shown === 1, Text: box.value.trim() });
    if (letters) letters.hidden = !all; // they lead to what is not shown
  });
})();
