// What is tapped as out or back while the bar does not answer is kept on this device, with its
// time, and sent in the order of the taps when it answers. A second tap takes it back.
"use strict";
window.unsent = (() => {
  const KEPT = "counterpour-unsent", longest = 10000; // ms that a mark may take before it counts as not sent
  const outs = {
    out: (of) => say("is-out", of), back: (of) => say("is-back", of), "out-one": (of) => say("bottle-is-out", of), "back-one": (of) => say("bottle-is-back", of),
  };
  const taps = () => { try { return JSON.parse(localStorage.getItem(KEPT)) ?? []; } catch (error) { return []; } };
  const keep = (all) => { try { localStorage.setItem(KEPT, JSON.stringify(all)); return true; } catch (error) { return false; } };
  const tapOf = (tap) => outs[tap.field]({ What: tap.what, At: new Date(tap.at).toLocaleTimeString([], { hour: "2-digit", minute: "2-digit" }) });
  const refused = [];

  const later = (button, what) => {
    const all = taps(), same = all.findIndex((tap) => tap.field === button.name && tap.value === button.value);
    if (same >= 0) all.splice(same, 1);
    else all.push({ id: `${Date.now()}-${Math.random()}`, field: button.name, value: button.value, what, at: Date.now() });
    return keep(all);
  };

  // Only one page of this device sends at a time. What the bar is too busy for goes later;
  // what it refuses is told, and is not sent again.
  const sendOne = async (tap) => {
    const body = new URLSearchParams({ [tap.field]: tap.value, ago: Math.max(0, Math.round((Date.now() - tap.at) / 1000)) });
    const answer = await fetch("/board", { method: "POST", body, headers: { "HX-Request": "true" }, redirect: "error", signal: AbortSignal.timeout(longest) });
    if ([401, 429, 502, 503, 504].includes(answer.status)) return false;
    if (!answer.ok) refused.push({ ...tap, why: new DOMParser().parseFromString(await answer.text(), "text/html").querySelector(".problem p, .trouble p, p")?.textContent ?? "" });
    keep(taps().filter((other) => other.id !== tap.id));
    return true;
  };
  let sending = false;
  // send tells whether there was something to send.
  const send = async () => {
    if (sending || !taps().length) return false;
    sending = true;
    const all = async () => { while (taps().length && await sendOne(taps()[0])); };
    try {
      await (navigator.locks ? navigator.locks.request(KEPT, all) : all());
    } catch (error) { /* it is sent when the bar answers again */ }
    sending = false;
    return true;
  };

  // What waits and what was refused, in a line; and which buttons wait.
  const told = () => {
    const waiting = taps();
    return [...refused.map((tap) => say("refused", { Tap: tapOf(tap), Why: tap.why })), ...(waiting.length ? [say("not-sent-yet", { Taps: waiting.map(tapOf).join(", ") })] : [])];
  };
  const mark = (buttons) => {
    const waiting = taps();
    for (const button of buttons) {
      if (waiting.some((tap) => tap.field === button.name && tap.value === button.value)) button.dataset.unsent = say("not-sent");
      else delete button.dataset.unsent;
    }
  };
  return { longest, taps, later, send, told, mark, knows: (button) => button.name in outs };
})();
