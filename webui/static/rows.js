// The draft as rows. The text is what counts: a row that is filled in rewrites
// its line, and the rows are made anew from every answer, though never under the
// hands of whoever is typing in one. The bench loads this when rows are asked for.
"use strict";
(() => {
  const form = document.getElementById("draft"), rows = document.getElementById("rows");
  if (!form || !rows) return;
  const box = document.getElementById("text");
  const list = () => rows.querySelector(".pour-rows");
  const all = () => [...rows.querySelectorAll(".pour-row")];
  const parts = (row) => ({ name: row.querySelector("[id$='-name']"), amount: row.querySelector("[id$='-amount']"), unit: row.querySelector("select") });

  // What a unit is: its plural, whether it stands alone, and its jigger.
  const units = {};
  for (const of of list().dataset.units.split(";")) {
    const [unit, many, alone, steps] = of.split("|");
    units[unit] = { many, alone, jigger: steps.split(" ").map(Number) };
  }

  // Only the text is sent.
  const nameless = () => rows.querySelectorAll("input, select").forEach((e) => e.removeAttribute("name"));

  // Amounts, in the fractions that the trade writes.
  const glyphs = { "⅛": 1 / 8, "¼": 1 / 4, "⅓": 1 / 3, "⅜": 3 / 8, "½": 1 / 2, "⅝": 5 / 8, "⅔": 2 / 3, "¾": 3 / 4, "⅞": 7 / 8 };
  const read = (text) => {
    const m = /^\s*(\d*(?:[.,]\d+)?)\s*(?:([⅛¼⅓⅜½⅝⅔¾⅞])|(\d+)\/(\d+))?\s*$/.exec(text.replace(/^(\s*\d+)\/(\d+)\s*$/, " 0 $1/$2"));
    if (!m || (!m[1] && !m[2])) return NaN;
    return Number((m[1] || "0").replace(",", ".")) + (m[2] ? glyphs[m[2]] : m[3] ? m[3] / m[4] : 0);
  };
  const write = (value, unit) => {
    const whole = Math.floor(value + 1e-9), rest = value - whole;
    if (!["ml", "cl", "g"].includes(unit)) {
      for (const [sign, part] of Object.entries(glyphs)) if (Math.abs(rest - part) < 1e-6) return (whole || "") + sign;
    }
    return String(Math.round(value * 100) / 100);
  };

  // The next amount that the jigger has; 0 if there is none.
  const next = (value, unit, up) => {
    const [every, ...marks] = units[unit].jigger;
    if (!every || !(value > 0)) return 0;
    let at = up ? (Math.floor(value / every + 1e-9) + 1) * every : (Math.ceil(value / every - 1e-9) - 1) * every;
    for (const m of marks) {
      if (up && m > value + 1e-9) at = Math.min(at, m);
      if (!up && m < value - 1e-9) at = Math.max(at, m);
    }
    return Math.max(0, at);
  };

  const compose = (row) => {
    const { name, amount, unit } = parts(row), of = unit.value, written = amount.value.trim();
    let word = units[of].many;
    if (written === "1" || /^[⅛¼⅓⅜½⅝⅔¾⅞]?$/.test(written)) word = of;
    if (!written && !units[of].alone) word = "";
    return [written, word, name.value.trim()].filter(Boolean).join(" ").replace(/\s+/g, " ");
  };

  // Lines move when one is put in or taken out above them.
  const move = (after, by) => {
    for (const holder of [...all(), list()]) {
      for (const key of ["line", "name", "method", "after"]) {
        if (Number(holder.dataset[key]) > after) holder.dataset[key] = Number(holder.dataset[key]) + by;
      }
    }
  };
  const lines = () => box.value.trim() ? box.value.split("\n") : [];
  const put = (text, at, number) => { // over a line, or as a new one after a line
    const now = lines();
    if (number) now[number - 1] = text;
    else { now.splice(at, 0, text); move(at, 1); }
    return now.join("\n");
  };
  const cut = (number) => {
    const now = lines();
    now.splice(number - 1, 1);
    move(number, -1);
    return now.join("\n");
  };

  // The draft as a row has it now.
  const filled = (row) => {
    const number = Number(row.dataset.line), text = compose(row), { name, amount } = parts(row);
    const empty = !name.value.trim() && !amount.value.trim();
    if (number && empty) {
      row.dataset.line = 0;
      return cut(number);
    }
    if (empty) return box.value;
    if (number) return put(text, 0, number);
    const after = Math.min(lines().length, Math.max(Number(list().dataset.after), Number(list().dataset.name), ...all().map((r) => Number(r.dataset.line))));
    const draft = put(text, after, 0);
    row.dataset.line = after + 1;
    return draft;
  };
  const named = (value) => {
    const number = Number(list().dataset.name), text = /^[\d#.¼½¾⅓⅔⅛⅜⅝⅞-]/.test(value) ? "name: " + value : value;
    if (value) {
      const draft = put(text, 0, number);
      if (!number) list().dataset.name = 1;
      return draft;
    }
    if (!number) return box.value;
    list().dataset.name = 0;
    return cut(number);
  };
  const mixed = () => {
    const [method, service] = [...rows.querySelectorAll(".method-row select")].map((s) => s.value), number = Number(list().dataset.method);
    const text = [method, service].filter(Boolean).join(", ");
    if (text) return number ? put(text, 0, number) : box.value.trimEnd() + "\n" + text;
    if (!number) return box.value;
    list().dataset.method = 0;
    return cut(number);
  };

  // Typing changes the text; a button makes a step that can be undone.
  const type = (draft) => {
    if (draft === box.value) return;
    box.value = draft;
    box.dispatchEvent(new Event("input", { bubbles: true }));
  };
  const become = (text, focus) => form.dispatchEvent(new CustomEvent("bench:become", { detail: { text, focus } }));
  const step = (row, up, focus) => {
    const { amount, unit } = parts(row), to = next(read(amount.value || "1"), unit.value, up);
    if (!to || !amount.value.trim()) return;
    amount.value = write(to, unit.value);
    become(filled(row), focus);
  };

  // Names as they are typed in a row.
  let asking = 0, open = null;
  const shut = () => {
    clearTimeout(asking);
    if (!open) return;
    open.list.hidden = true;
    open.list.replaceChildren();
    open.name.setAttribute("aria-expanded", "false");
    open.name.removeAttribute("aria-activedescendant");
    open = null;
    settle();
  };
  const show = (name, html) => {
    shut();
    const options = name.parentElement.querySelector(".options");
    options.innerHTML = html;
    if (!options.childElementCount || document.activeElement !== name) return;
    options.hidden = false;
    options.setAttribute("role", "listbox");
    options.setAttribute("aria-label", say("ingredients-that-start-so"));
    for (const [key, value] of [["role", "combobox"], ["aria-autocomplete", "list"], ["aria-controls", options.id], ["aria-expanded", "true"]]) name.setAttribute(key, value);
    open = { name, list: options, at: -1 };
  };
  const offer = (name) => {
    clearTimeout(asking);
    const typed = name.value.trim();
    if (typed.length < 2) return shut();
    asking = setTimeout(() => {
      fetch("/names?name=" + encodeURIComponent(typed), { headers: { "HX-Request": "true" } })
        .then((r) => r.ok ? r.text() : "").then((html) => { if (name.value.trim() === typed) show(name, html); }, () => {});
    }, 150);
  };
  const point = (by) => {
    const options = [...open.list.children];
    open.at = (open.at + by + options.length + (open.at < 0 && by < 0 ? 1 : 0)) % options.length;
    options.forEach((o, i) => o.setAttribute("aria-selected", String(i === open.at)));
    open.name.setAttribute("aria-activedescendant", options[open.at].id);
    options[open.at].scrollIntoView({ block: "nearest" });
  };
  const pick = (option) => {
    const name = open.name;
    name.value = option.textContent.trim();
    const row = name.closest(".pour-row");
    parts(row).amount.focus(); // before the list shuts: rows that waited keep who has the focus
    shut();
    type(filled(row));
  };

  // The rows of the last answer wait until nobody types in the old ones, and are
  // of no use once the text has gone on.
  let waiting = null, pressing = false;
  const busy = () => {
    const at = document.activeElement;
    if (pressing) return true; // a button that is exchanged under a finger hears no tap
    if (open || waiting.querySelector(".pour-rows")?.dataset.text !== box.value) return true;
    if (!rows.contains(at) || at.matches("button")) return false;
    return at.matches("select") || waiting.querySelector("#" + at.id)?.value !== at.value;
  };
  function settle() {
    if (!waiting || busy()) return;
    const at = document.activeElement, id = rows.contains(at) ? at.id : "";
    const [from, to] = id && at.matches("input") ? [at.selectionStart, at.selectionEnd] : [];
    rows.replaceChildren(...waiting.childNodes);
    waiting = null;
    nameless();
    const again = id && document.getElementById(id);
    if (!again) return;
    again.focus({ preventScroll: true });
    if (from !== undefined) again.setSelectionRange(from, to);
  }
  document.addEventListener("htmx:before:swap", (event) => {
    const tasks = event.detail.tasks || [], at = tasks.findIndex((t) => t.target === rows);
    if (at < 0) return;
    const [task] = tasks.splice(at, 1);
    waiting = task.fragment.querySelector("#rows") || task.fragment;
    settle();
  });
  rows.addEventListener("pointerdown", () => { pressing = true; });
  for (const up of ["pointerup", "pointercancel"]) document.addEventListener(up, () => setTimeout(() => { pressing = false; settle(); }));
  document.addEventListener("htmx:after:swap", () => setTimeout(settle)); // the bench may have taken a text over
  rows.addEventListener("focusout", () => setTimeout(() => {
    if (open && document.activeElement !== open.name) shut();
    settle();
  }));

  rows.addEventListener("input", (event) => {
    event.stopPropagation(); // the text tells the bench of it
    const row = event.target.closest(".pour-row");
    if (event.target.id === "row-drink") return type(named(event.target.value.trim()));
    if (!row) return type(mixed());
    if (event.target === parts(row).name) offer(event.target);
    type(filled(row));
  });
  rows.addEventListener("mousedown", (event) => { if (event.target.closest("[role=option]")) event.preventDefault(); });
  rows.addEventListener("click", (event) => {
    const option = event.target.closest("[role=option]"), button = event.target.closest("[data-do]");
    if (option && open) return pick(option);
    if (!button) return;
    event.preventDefault();
    event.stopPropagation();
    const row = button.closest(".pour-row");
    if (button.dataset.do !== "drop") return step(row, button.dataset.do === "more", button.id);
    const number = Number(row.dataset.line);
    row.remove();
    become(cut(number), button.id);
  });
  rows.addEventListener("keydown", (event) => {
    const row = event.target.closest(".pour-row");
    if (!row || !event.target.matches("input")) {
      if (event.key === "Enter" && event.target.id === "row-drink") { event.preventDefault(); parts(all()[0]).name.focus(); }
      return;
    }
    const { name, amount } = parts(row), way = { ArrowUp: -1, ArrowDown: 1 }[event.key];
    if (way && event.target === amount) {
      event.preventDefault();
      step(row, way < 0, amount.id);
    } else if (way && open) {
      event.preventDefault();
      point(way);
    } else if (event.key === "Escape" && open) {
      event.preventDefault();
      shut();
    } else if (event.key === "Enter" && !event.ctrlKey && !event.metaKey) {
      event.preventDefault();
      if (open && open.at >= 0) pick(open.list.children[open.at]);
      else if (event.target === name) amount.focus();
      else (all()[all().indexOf(row) + 1] ? parts(all()[all().indexOf(row) + 1]).name : amount).focus();
    }
  });

  // In the text, Alt and an arrow step the amount of the line at the caret.
  box.addEventListener("keydown", (event) => {
    if (!event.altKey || !["ArrowUp", "ArrowDown"].includes(event.key)) return;
    const number = box.value.slice(0, box.selectionStart).split("\n").length, row = all().find((r) => Number(r.dataset.line) === number);
    if (!row) return;
    event.preventDefault();
    step(row, event.key === "ArrowUp", "text");
    const end = box.value.split("\n").slice(0, number).join("\n").length;
    box.setSelectionRange(end, end);
  });
  nameless();
})();
