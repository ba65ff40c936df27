// The cover board with scripts: marks without a new page, and the marks of other
// screens as they are made. Without scripts the forms post themselves.
"use strict";
(() => {
  const board = document.getElementById("board");
  if (!board) return;
  const line = document.getElementById("line"), said = document.getElementById("said");
  const older = document.getElementById("old"), unmarked = document.getElementById("unmarked");
  const state = () => board.querySelector(".state");

  // What has the focus, said so that it is found on a new board: by its own id, or as
  // what opens a thing that has one.
  const focus = () => {
    const at = document.activeElement;
    if (!board.contains(at)) return "";
    if (at.id) return "#" + CSS.escape(at.id);
    return at.matches("details[id] > summary") ? "#" + CSS.escape(at.parentElement.id) + " > summary" : "";
  };

  // What is open and where the reader stands outlive a new board, but for drinks of
  // tonight after a mark of this screen: all that it touched is to be seen at once.
  const show = (html, afresh) => {
    const open = [...board.querySelectorAll("details[open][id]")].map((d) => d.id).filter((id) => !afresh || !id.startsWith("drink-"));
    const focused = focus();
    board.innerHTML = html;
    for (const id of open) document.getElementById(id)?.setAttribute("open", "");
    if (focused) board.querySelector(focused)?.focus({ preventScroll: true });
    said.textContent = state().dataset.said;
  };

  // Only the answer to the latest question is shown.
  let asked = 0;
  const ask = async (address, options) => {
    const mine = ++asked;
    const answer = await fetch(address, { ...options, headers: { "HX-Request": "true" }, redirect: "error" });
    const login = answer.headers.get("HX-Redirect");
    if (answer.status === 401 && login) location.assign(login);
    if (!answer.ok) throw Object.assign(new Error("status " + answer.status), { status: answer.status });
    const html = await answer.text();
    if (mine !== asked) return false;
    show(html, options?.method === "POST");
    return true;
  };
  // What the bar says of itself stands at the lower edge, where the thumb is: that the page
  // may be old, and what was tapped and is not marked, until that is marked.
  let stale = false; // the bar answers, but its store does not
  const failed = new Set();
  const old = (is) => {
    older.hidden = !(is || stale);
    unmarked.textContent = [...unsent.told(), ...(failed.size ? [say("not-marked", { Bottles: [...failed].join(", "), Answers: !is })] : [])].join(" ");
    line.hidden = older.hidden && !unmarked.textContent;
    unsent.mark(board.querySelectorAll("button[name]"));
  };

  // What waits is sent by a page that can mark, and the board is drawn anew.
  const send = async () => {
    if (!board.querySelector("form.marks") || !await unsent.send()) return;
    await ask(from()).catch(() => {});
    old(false);
  };
  // What this screen has just marked as back can be taken back for a while, also after what
  // another screen marked has drawn the board anew.
  const again = { back: "again", "back-one": "again-one" }, undoTime = 60000; // ms
  let marked = { until: 0 };
  const from = () => {
    const address = new URL(board.dataset.from, location);
    if (Date.now() < marked.until) address.searchParams.set(marked.field, marked.value);
    return address;
  };
  const refresh = () => ask(from()).then(() => {
    document.querySelector(".copy")?.remove(); // what it says is old is new now
    old(false);
    return send();
  }).catch(() => old(true));

  // The server tells the version of the outs, at once and after every change. A
  // mark of this screen brings its own board, so what is told meanwhile waits.
  let told = "", marking = false;
  const follow = () => {
    if (marking || !told) return;
    if (told !== state().dataset.version) refresh(); else old(false);
  };

  const standAt = (button) => {
    document.getElementById("out-title")?.scrollIntoView();
    document.getElementById(button.name.startsWith("out") ? "drinks-title" : "out-" + button.value)?.focus({ preventScroll: true });
  };
  board.addEventListener("submit", (event) => {
    const form = event.target, button = event.submitter;
    if (!button?.name) return;
    event.preventDefault();
    if (marking) return;
    const waits = unsent.knows(button) && unsent.taps().length > 0; // so that the order is kept
    if (waits && unsent.later(button, button.dataset.bottle ?? button.textContent)) {
      old(!older.hidden);
      return send();
    }
    marking = true;
    form.setAttribute("aria-busy", "true");
    const body = new URLSearchParams(new FormData(form)), what = button.dataset.bottle ?? button.textContent;
    body.append(button.name, button.value);
    const slow = setTimeout(() => { failed.add(what); old(true); }, 3000);
    ask(form.getAttribute("action"), { method: "POST", body, signal: AbortSignal.timeout(unsent.longest) }).then(() => {
      marked = { field: again[button.name], value: button.value, until: again[button.name] ? Date.now() + undoTime : 0 };
      failed.delete(what);
      old(false);
      if (document.getElementById("now")) {
        document.getElementById("now").scrollIntoView();
        document.getElementById("back-" + button.value)?.focus({ preventScroll: true });
      }
      else if (/^(out|back)/.test(button.name)) standAt(button);
      else document.getElementById("drinks-title")?.scrollIntoView();
    }).catch((error) => {
      form.removeAttribute("aria-busy");
      const kept = !error.status && unsent.knows(button) && unsent.later(button, what);
      if (kept) failed.delete(what); else failed.add(what);
      old(true);
    }).finally(() => {
      clearTimeout(slow);
      marking = false;
      follow();
    });
  });

  // The line to the server is open while the page is looked at: a browser opens only six
  // to one server, so that pages behind others would keep the next one waiting. One that
  // stays down for a while is told of. It is opened anew after a wait that doubles, and
  // differs from screen to screen, so that a bar that comes back is not run over.
  const soonest = 250, latest = 15000; // ms
  let events = null, down = 0, anew = 0, wait = soonest;
  const hangUp = () => {
    clearTimeout(down);
    clearTimeout(anew);
    down = anew = 0;
    events?.close();
    events = null;
  };
  const listen = () => {
    if (events || document.hidden) return;
    const wire = events = new EventSource(board.dataset.events);
    wire.addEventListener("stale", () => { stale = true; old(true); });
    wire.addEventListener("board", (event) => {
      stale = false;
      document.getElementById("stale")?.remove();
      told = event.data;
      follow();
    });
    wire.addEventListener("open", () => {
      clearTimeout(down);
      down = 0;
      wait = soonest;
      send();
    });
    wire.addEventListener("error", () => {
      if (wire !== events) return;
      wire.close();
      events = null;
      down ||= setTimeout(() => old(true), 2500);
      anew = setTimeout(listen, wait * (0.75 + Math.random() / 2));
      wait = Math.min(2 * wait, latest);
    });
  };
  listen();
  addEventListener("online", send);
  if (unsent.taps().length) old(false);

  // On paper nothing can be opened.
  addEventListener("beforeprint", () => board.querySelectorAll(".drinks details").forEach((d) => { d.open = true; }));

  // A page that comes to the front again, or a telephone that slept, looks again.
  const look = () => {
    if (document.hidden) return hangUp();
    listen();
    if (!marking) refresh();
  };
  document.addEventListener("visibilitychange", look);
  addEventListener("pagehide", hangUp);
  addEventListener("pageshow", (event) => { if (event.persisted) look(); });
})();
