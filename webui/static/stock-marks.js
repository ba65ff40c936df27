// The buttons of the stock that mark a bottle: without the network a tap is kept on this
// device and sent later, as on tonight. Without scripts the form posts itself.
"use strict";
(() => {
  const form = document.getElementById("mark"), line = document.getElementById("line");
  if (!form || !line) return;
  const buttons = () => document.querySelectorAll("button[form=mark]");
  const tell = () => {
    line.textContent = unsent.told().join(" ");
    line.hidden = !line.textContent;
    unsent.mark(buttons());
  };

  // Where the list says what was marked, as the server would lead there.
  const marked = (button) => {
    const to = new URL(form.elements.list.value, location);
    for (const field of ["marked", "marked-one"]) to.searchParams.delete(field);
    to.searchParams.set(button.name.endsWith("-one") ? "marked-one" : "marked", button.value);
    to.hash = "said";
    return to;
  };

  let marking = null; // the button whose mark is under way, until the next page is there
  form.addEventListener("submit", (event) => {
    const button = event.submitter;
    if (!button || !unsent.knows(button)) return;
    event.preventDefault();
    if (marking === button) return; // a slip of the finger
    const wait = () => {
      if (unsent.later(button, button.dataset.bottle)) tell();
      else line.textContent = say("not-marked", { Bottle: button.dataset.bottle }), line.hidden = false; // the device keeps nothing
    };
    if (marking) return wait(); // the next page sends it
    if (unsent.taps().length) { // so that the order is kept
      wait();
      return send();
    }
    marking = button;
    const body = new URLSearchParams(new FormData(form));
    body.append(button.name, button.value);
    fetch(form.action, { method: "POST", body, redirect: "manual", signal: AbortSignal.timeout(unsent.longest) }).then((answer) => {
      if (answer.type === "opaqueredirect") return location.assign(marked(button));
      const field = Object.assign(document.createElement("input"), { type: "hidden", name: button.name, value: button.value });
      form.append(field); // what is the matter is shown as a page
      form.submit();
    }, () => {
      marking = null;
      unsent.unheard();
      wait();
    });
  });

  addEventListener("pageshow", () => { marking = null; });

  const found = document.querySelector(".sift");
  const send = async () => {
    if (await unsent.send()) {
      if (!unsent.taps().length) window.htmx?.trigger(found, "submit");
      tell();
    }
  };
  const again = 15000; // ms between tries
  setInterval(() => { if (!document.hidden) send(); }, again);
  addEventListener("online", send);
  document.addEventListener("visibilitychange", () => { if (!document.hidden) send(); });
  document.body.addEventListener("htmx:after:swap", () => unsent.mark(buttons()));
  tell();
  send();
})();
