// The bench with scripts: undo for whatever rewrites the draft, names as a line
// is typed, and a draft that outlives the page. htmx posts the form; without
// either, the form posts itself and the page comes back whole.
"use strict";
(() => {
  const form = document.getElementById("draft");
  if (!form) return;
  const byId = (id) => document.getElementById(id);
  const box = byId("text"), names = byId("names"), undo = byId("undo"), redo = byId("redo"), before = byId("before");

  // A draft is kept in the browser, so that a page closed by mistake costs nothing.
  const drawer = "counterpour draft";
  const keep = () => { try { localStorage.setItem(drawer, box.value); } catch { /* storage is off */ } };
  const kept = (of = drawer) => { try { return localStorage.getItem(of) || ""; } catch { return ""; } };

  // What works the rows is loaded once they are shown, or a key asks for a step of the jigger.
  let rowsReady = document.querySelector("script[data-rows]") && Promise.resolve();
  const loadRows = () => rowsReady ||= new Promise((ready) => {
    const script = document.createElement("script");
    script.src = form.dataset.rows;
    script.onload = script.onerror = ready; // the rows are a form without it too
    document.head.append(script);
  });
  box.addEventListener("keydown", (event) => {
    const { key, altKey } = event;
    if (rowsReady || !altKey || !["ArrowUp", "ArrowDown"].includes(key)) return;
    event.preventDefault();
    loadRows().then(() => box.dispatchEvent(new KeyboardEvent("keydown", { key, altKey, bubbles: true, cancelable: true })));
  });

  // Text or rows, as they were last looked at.
  const seen = "counterpour view";
  const view = (as) => {
    form.dataset.view = byId("view").value = as;
    for (const b of form.querySelectorAll("button[name=view]")) b.setAttribute("aria-pressed", String(b.value === as));
    try { localStorage.setItem(seen, as); } catch { /* storage is off */ }
    if (as === "rows") loadRows();
    // Rows that nobody saw come with no more units than they need.
    if (as === "rows" && document.querySelector("#rows select.pour-unit")?.options.length === 1) rest();
  };
  // What is typed is sent once the hand rests. A button that is pressed goes
  // first, and nothing overtakes the saving of a draft.
  let resting = 0, saving = false;
  const rest = () => {
    clearTimeout(resting);
    resting = setTimeout(() => { if (saving) rest(); else if (window.htmx) form.requestSubmit(); }, 250);
  };
  form.addEventListener("input", rest);
  if (kept(seen)) view(kept(seen));
  form.addEventListener("submit", (event) => {
    if (event.submitter?.id === "riff-on") return event.stopImmediatePropagation(); // the riffs are a page of their own
    // Enter in a field that has a button of its own presses that one.
    const at = document.activeElement;
    if (event.submitter === form.querySelector("button.unseen") && ["called", "volume"].includes(at.id)) {
      event.preventDefault();
      event.stopImmediatePropagation();
      setTimeout(() => at.parentElement.querySelector("button").click()); // a form does not submit itself twice over
      return;
    }
    if (saving && window.htmx) {
      event.preventDefault();
      event.stopImmediatePropagation();
      setTimeout(() => form.requestSubmit(event.submitter?.isConnected ? event.submitter : null), 100);
      return;
    }
    clearTimeout(resting);
    saving = event.submitter?.name === "save";
  }, { capture: true });

  // What to do once the next answer stands on the page.
  let then = null;

  const closeCovers = () => document.querySelector("input[name=covering]")?.remove();

  // What was said of saving was said of another draft.
  const closeSave = () => byId("asked")?.remove();

  // The menu has done its work once there is a draft.
  const closeMenu = () => document.querySelector(".menu")?.removeAttribute("open");

  const write = (text) => {
    box.value = text;
    keep();
    closeCovers();
    closeSave();
    closeMenu();
    names.replaceChildren();
    form.requestSubmit();
  };

  // Undo and redo, as many steps as were made.
  const past = undo.hidden ? [] : [undo.querySelector("button").value], future = [];
  const showSteps = () => {
    undo.hidden = past.length === 0;
    redo.hidden = future.length === 0;
  };
  // Whoever has gone on to something else before the answer comes is not called back.
  const callBack = (to) => {
    const from = document.activeElement, id = from.id;
    then = () => {
      const at = document.activeElement;
      if (at === document.body || at === from || (id && at.id === id)) to().focus();
    };
  };
  const step = (from, to) => {
    if (from.length === 0) return;
    to.push(box.value);
    callBack(() => (undo.hidden ? redo : undo).querySelector("button"));
    write(from.pop());
    showSteps();
  };
  const remember = () => {
    if (box.value.trim()) past.push(box.value);
    future.length = 0;
  };
  // What is rewritten is held as it was, to compare with, unless something is.
  const become = (text, { focus, fresh } = {}) => {
    if (text === box.value) return;
    remember();
    if (fresh) before.value = "";
    else if (!before.value.trim()) before.value = box.value;
    callBack(() => byId(focus) || (undo.hidden ? box : undo.querySelector("button")));
    write(text);
    showSteps();
  };
  form.addEventListener("bench:become", (event) => become(event.detail.text, event.detail));

  // The line that the caret is in.
  const line = () => {
    const start = box.value.lastIndexOf("\n", box.selectionStart - 1) + 1;
    const next = box.value.indexOf("\n", box.selectionStart);
    const end = next < 0 ? box.value.length : next;
    return { start, end, text: box.value.slice(start, end) };
  };
  const finishLine = (text) => {
    const at = line();
    box.setRangeText(text, at.start, at.end, "end");
    names.replaceChildren();
    box.focus();
    box.dispatchEvent(new Event("input", { bubbles: true }));
  };
  const jump = (number) => {
    const lines = box.value.split("\n");
    const start = lines.slice(0, number - 1).reduce((sum, l) => sum + l.length + 1, 0);
    box.focus();
    box.setSelectionRange(start, start + (lines[number - 1] || "").length);
  };

  let waiting = 0;
  const offer = () => {
    clearTimeout(waiting);
    waiting = setTimeout(() => {
      const at = line();
      if (box.selectionStart !== at.end || at.text.trim().length < 3) return names.replaceChildren();
      window.htmx?.ajax("GET", "/names?line=" + encodeURIComponent(at.text),
        { source: names, target: names, swap: "innerHTML" });
    }, 150);
  };

  box.addEventListener("input", (event) => {
    keep();
    closeCovers();
    closeSave();
    document.querySelector(".strip [name=become]")?.remove(); // it writes the draft as it was
    if (event.isTrusted) offer();
  });
  box.addEventListener("input", closeMenu, { once: true });

  document.addEventListener("click", (event) => {
    const hit = event.target.closest("button, [data-jump]");
    if (!hit) return;
    if (hit.dataset.jump) {
      event.preventDefault();
      jump(Number(hit.dataset.jump));
    } else if (hit.dataset.line !== undefined) {
      finishLine(hit.dataset.line);
    } else if (undo.contains(hit) || redo.contains(hit)) {
      event.preventDefault();
      if (undo.contains(hit)) step(past, future); else step(future, past);
    } else if (hit.name === "become") {
      event.preventDefault();
      become(hit.value, { fresh: Boolean(hit.closest(".menu")) });
    } else if (hit.name === "view") {
      event.preventDefault();
      if (hit.value === "rows") loadRows().then(() => view("rows")); // what is typed next is for them
      else view(hit.value);
    } else if (hit.name === "compare") {
      event.preventDefault();
      before.value = hit.value === "hold" ? box.value : "";
      then = () => byId("verdict")?.scrollIntoView({ block: "nearest" });
      form.requestSubmit();
    } else if (hit.name === "save") {
      then = () => (document.querySelector(".unnamed #called") || byId("asked"))?.focus();
    } else if (hit.name === "missing") {
      then = () => { byId("covers")?.scrollIntoView(); byId("covers-title")?.focus({ preventScroll: true }); };
    } else if (hit.name === "close") {
      then = () => byId("pours")?.scrollIntoView();
    }
  });

  // Until the answer stands on the page, what is there is of the draft as it was. A quick
  // answer spares the eye the change.
  const result = byId("result");
  let late = 0;
  const outdate = () => {
    result.setAttribute("aria-busy", "true");
    if (!result.childElementCount || result.querySelector(".blank:only-child")) return;
    result.classList.add("outdated");
    const strip = result.querySelector(".strip");
    if (!strip) return;
    strip.querySelector("button")?.remove();
    strip.querySelector(".points").textContent = "…";
    strip.querySelector("p").textContent = result.dataset.outdated;
  };
  const awaitAnswer = () => { late ||= setTimeout(outdate, 400); };
  const answered = () => {
    clearTimeout(late);
    late = 0;
    result.removeAttribute("aria-busy");
    result.classList.remove("outdated");
  };
  form.addEventListener("input", awaitAnswer);
  form.addEventListener("submit", (event) => { if (event.submitter?.id !== "riff-on") awaitAnswer(); });

  // Copying needs scripts and leave to write the clipboard.
  const offerCopy = () => {
    const button = byId("copy");
    if (!button || !navigator.clipboard) return;
    button.hidden = false;
    button.addEventListener("click", () => {
      navigator.clipboard.writeText(box.value).then(() => { button.textContent = say("copied"); },
        () => { box.focus(); box.select(); });
    });
  };
  offerCopy();

  // Ctrl and Enter score at once, from anywhere in the box.
  box.addEventListener("keydown", (event) => {
    if (event.key === "Enter" && (event.ctrlKey || event.metaKey)) form.requestSubmit();
  });

  // The bench has rewritten the draft itself: to a volume, or under a name.
  const takeOver = () => {
    const text = byId("rewrote").querySelector("input");
    if (!text || text.value === box.value) return;
    remember();
    if (!before.value.trim()) before.value = box.value;
    box.value = text.value;
    text.remove();
    keep();
    showSteps();
  };

  document.addEventListener("htmx:after:swap", (event) => {
    if (event.target !== form) return;
    saving = false;
    answered();
    box.setAttribute("aria-invalid", String(byId("faults").childElementCount > 0));
    offerCopy();
    takeOver();
    then?.();
    then = null;
  });
  document.addEventListener("htmx:error", (event) => {
    if (event.target !== form) return;
    saving = false;
    outdate();
    byId("trouble").textContent = say("bar-did-not-answer");
  });

  // An empty page takes up the draft that was left; a page that the browser
  // filled in again is scored anew.
  form.addEventListener("htmx:after:init", () => {
    if (!box.value.trim() && kept().trim()) box.value = kept();
    if (box.value !== box.defaultValue) form.requestSubmit();
  }, { once: true });
})();
