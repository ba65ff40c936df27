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

  // A board that is drawn while a finger is down would take the button from under it, and the
  // tap with it.
  let finger = Promise.resolve(), lift = () => {};
  const longestPress = 2000, tapAfter = 60; // ms: of a press; between the finger that lifts and its tap
  addEventListener("pointerdown", () => {
    lift();
    finger = new Promise((done) => { lift = done; });
    setTimeout(lift, longestPress);
  }, true);
  for (const up of ["pointerup", "pointercancel"]) addEventListener(up, () => setTimeout(lift, tapAfter), true);

  // Only the answer to the latest question is shown, and none while another tap waits.
  let asked = 0;
  const passed = (mine, alone) => mine !== asked || alone && unsent.taps().length > 1;
  const drawn = async (answer, mine, marks) => {
    const html = await answer.text();
    await finger;
    if (passed(mine, marks)) return false;
    show(html, marks);
    return true;
  };
  const question = async (address, options) => {
    const answer = await fetch(address, { ...options, headers: { "HX-Request": "true" }, redirect: "error" });
    const login = answer.headers.get("HX-Redirect");
    if (answer.status === 401 && login) location.assign(login);
    return answer;
  };
  const ask = async (address, options) => {
    const mine = ++asked, answer = await question(address, options);
    if (!answer.ok) throw Object.assign(new Error("status " + answer.status), { status: answer.status });
    return drawn(answer, mine, options?.method === "POST");
  };
  // What the bar says of itself stands at the lower edge, where the thumb is: that the page
  // may be old, and what was tapped and is not marked, until that is marked.
  let stale = false; // the bar answers, but its store does not
  let slow = false; // what is being marked takes so long that it is told
  const failed = new Set();
  let apart = false; // the bar does not answer
  const old = (is = apart) => {
    apart = is;
    older.hidden = !(is || stale);
    unmarked.textContent = [...unsent.told(), ...(slow ? [unsent.going()] : []), ...(failed.size ? [say("not-marked", { Bottles: [...failed].join(", "), Answers: !is })] : [])].join(" ");
    line.hidden = older.hidden && !unmarked.textContent;
    unsent.mark(board.querySelectorAll("button[name]"));
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

  // Marks are made one after another. What is told of other screens meanwhile waits, since the
  // last mark brings its own board.
  let turn = Promise.resolve(), marking = 0;
  const inTurn = (does) => {
    marking++;
    turn = turn.then(does, does).finally(() => {
      marking--;
      follow();
    });
    return turn;
  };

  // A tap is sent by a page that can mark; the answer to the last one is the new board.
  let shown = false;
  const post = async (tap) => {
    const form = board.querySelector("form.marks"), mine = ++asked, body = new URLSearchParams(new FormData(form));
    for (const [name, value] of unsent.bodyOf(tap)) body.append(name, value);
    if (unsent.taps().length > 1) body.append("more", "1");
    const answer = await question(form.getAttribute("action"), { method: "POST", body, signal: AbortSignal.timeout(unsent.longest) });
    if (!answer.ok) return answer;
    marked = { field: again[tap.field], value: tap.value, until: again[tap.field] ? Date.now() + undoTime : 0 };
    shown = answer.status !== 204 && await drawn(answer, mine, true);
    if (shown) goTo(tap);
    return answer;
  };
  const slowAfter = 1500, retry = 5000; // ms
  let next = 0;
  const sendTaps = async () => {
    shown = false;
    clearTimeout(next);
    const late = setTimeout(() => { slow = true; old(); }, slowAfter);
    const sent = unsent.send(post);
    old();
    const any = await sent;
    clearTimeout(late);
    slow = false;
    if (!any) return;
    if (unsent.silent()) next = setTimeout(send, retry);
    else if (!shown) await ask(from()).catch(() => {});
    old();
  };
  const send = async () => {
    if (board.querySelector("form.marks") && unsent.taps().length) await inTurn(sendTaps);
  };

  // The server tells the version of the outs, at once and after every change.
  let told = "";
  const follow = () => {
    if (marking || !told) return;
    if (told !== state().dataset.version) refresh(); else old(false);
  };

  // Where what was marked is to be seen.
  const goTo = ({ field, value }) => {
    if (document.getElementById("now")) {
      document.getElementById("now").scrollIntoView();
      document.getElementById("back-" + value)?.focus({ preventScroll: true });
    } else if (/^(out|back)/.test(field)) {
      document.getElementById("out-title")?.scrollIntoView();
      document.getElementById(field.startsWith("out") ? "drinks-title" : "out-" + value)?.focus({ preventScroll: true });
    } else document.getElementById("drinks-title")?.scrollIntoView();
  };

  // What cannot be kept on the device is marked in its turn all the same.
  const markOnce = (address, body, { field, value, what }) => async () => {
    try {
      await ask(address, { method: "POST", body, signal: AbortSignal.timeout(unsent.longest) });
      marked = { field: again[field], value, until: again[field] ? Date.now() + undoTime : 0 };
      failed.delete(what);
      old(false);
      goTo({ field, value });
    } catch (error) {
      failed.add(what);
      old(!error.status);
    }
  };
  board.addEventListener("submit", (event) => {
    const form = event.target, button = event.submitter;
    if (!button?.name) return;
    event.preventDefault();
    const what = button.dataset.bottle ?? button.textContent;
    if (unsent.knows(button) && unsent.later(button, what)) {
      said.textContent = unsent.going();
      old();
      return send();
    }
    const body = new URLSearchParams(new FormData(form));
    body.append(button.name, button.value);
    inTurn(markOnce(form.getAttribute("action"), body, { field: button.name, value: button.value, what }));
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
