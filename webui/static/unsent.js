// What is tapped as out or back is kept on this device, with its time, until the bar has
// answered for it, and sent in the order of the taps, one after another. While the bar does not
// answer, a second tap takes it back.
"use strict";
window.unsent = (() => {
  const KEPT = "counterpour-unsent", longest = 10000; // ms that a mark may take before it counts as not sent
  const outs = {
    out: (of) => say("is-out", of), back: (of) => say("is-back", of), "out-one": (of) => say("bottle-is-out", of), "back-one": (of) => say("bottle-is-back", of),
  };
  const taps = () => { try { return JSON.parse(localStorage.getItem(KEPT)) ?? []; } catch (error) { return []; } };
  const keep = (all) => { try { localStorage.setItem(KEPT, JSON.stringify(all)); return true; } catch (error) { return false; } };
  const tapOf = (tap) => outs[tap.field]({ What: tap.what, At: new Date(tap.at).toLocaleTimeString([], { hour: "2-digit", minute: "2-digit" }) });
  let refused = [];
  let silent = taps().length > 0; // the bar did not answer for what is kept
  let now = ""; // the tap that is being sent
  const underWay = (tap) => !silent || tap.id === now;

  // later keeps a tap; a slip of the finger on what is being marked changes nothing.
  const later = (button, what) => {
    const all = taps(), same = all.findIndex((tap) => tap.field === button.name && tap.value === button.value);
    if (same >= 0 && underWay(all[same])) return true;
    if (same >= 0) all.splice(same, 1);
    else all.push({ id: `${Date.now()}-${Math.random()}`, field: button.name, value: button.value, what, at: Date.now() });
    return keep(all);
  };

  const bodyOf = (tap) => new URLSearchParams({ [tap.field]: tap.value, ago: Math.max(0, Math.floor((Date.now() - tap.at) / 1000)) });
  const toBoard = (tap) => {
    const body = bodyOf(tap);
    body.append("more", "1"); // no board is looked at
    return fetch("/board", { method: "POST", body, headers: { "HX-Request": "true" }, redirect: "error", signal: AbortSignal.timeout(longest) });
  };

  // Only one page of this device sends at a time. What the bar is too busy for goes later;
  // what it refuses is told, and is not sent again.
  const sendOne = async (tap, post) => {
    now = tap.id;
    const answer = await post(tap);
    if ([401, 429, 502, 503, 504].includes(answer.status)) return false;
    refused = refused.filter((other) => other.field !== tap.field || other.value !== tap.value);
    if (!answer.ok) refused.push({ ...tap, why: new DOMParser().parseFromString(await answer.text(), "text/html").querySelector(".problem p, .trouble p, p")?.textContent ?? "" });
    keep(taps().filter((other) => other.id !== tap.id));
    silent = false;
    return true;
  };
  const sendAll = async (post) => {
    let answers = true;
    const all = async () => { while (answers && taps().length) answers = await sendOne(taps()[0], post); };
    try { // what is tapped while the lock is given back is sent as well
      while (answers && taps().length) await (navigator.locks ? navigator.locks.request(KEPT, all) : all());
    } catch (error) { answers = false; } // it is sent when the bar answers again
    now = "";
    silent = !answers;
  };
  let sending = null;
  // send tells whether there was something to send. A page that wants the answers posts itself.
  const send = async (post = toBoard) => {
    if (sending || !taps().length) return false;
    sending = sendAll(post).finally(() => { sending = null; });
    await sending;
    return true;
  };

  // What waits and what was refused, in a line; what is being marked; and which buttons wait.
  const told = () => {
    const waiting = taps().filter((tap) => !underWay(tap));
    return [...refused.map((tap) => say("refused", { Tap: tapOf(tap), Why: tap.why })), ...(waiting.length ? [say("not-sent-yet", { Taps: waiting.map(tapOf).join(", ") })] : [])];
  };
  const going = () => {
    const all = taps().filter(underWay);
    return all.length ? say("being-marked", { Taps: all.map(tapOf).join(", ") }) : "";
  };
  const mark = (buttons) => {
    const waiting = taps();
    for (const button of buttons) {
      const tap = waiting.find((tap) => tap.field === button.name && tap.value === button.value);
      delete button.dataset.unsent;
      delete button.dataset.marking;
      if (tap && underWay(tap)) button.dataset.marking = say("marking");
      else if (tap) button.dataset.unsent = say("not-sent");
    }
  };
  return { longest, taps, later, send, bodyOf, told, going, mark, knows: (button) => button.name in outs, unheard: () => { silent = true; }, silent: () => silent };
})();
