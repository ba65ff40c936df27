// Lets this device keep a copy of what it saw; see offline.js. Without it all
// works as long as the bar answers. On a phone the row of pages is pushed to the one
// that is open.
"use strict";
navigator.serviceWorker?.register("/offline.js").catch(() => {});
{
  const row = document.querySelector(".places"), here = row?.querySelector("[aria-current]");
  if (here) row.scrollLeft = here.offsetLeft - row.offsetLeft - (row.clientWidth - here.offsetWidth) / 2;
}
// A guest is not lost on the way over pages that know of none: the tab remembers for whom
// the last page was that does, says so, and keeps it in the links back to such pages.
{
  const drawer = "counterpour guest", knows = /^\/(|tonight(\/(ahead|wall|flight))?|bench|board|riffs(\/[^/]+)?|specs(\/(?!import$|export$)[^/]+)?)$/;
  const carry = (links, guest) => {
    for (const link of links) {
      const to = new URL(link.href);
      if (link.getAttribute("href").startsWith("#") || to.origin !== location.origin || !knows.test(to.pathname)) continue;
      for (const name of ["avoid", "diet", "strength"]) to.searchParams.delete(name);
      for (const [name, value] of new URLSearchParams(guest)) to.searchParams.append(name, value);
      link.href = to.pathname + to.search + to.hash;
    }
  };
  const keep = (of) => {
    try { sessionStorage.setItem(drawer, JSON.stringify({ query: of.guest, line: of.guestLine })); } catch { /* storage is off */ }
    carry(document.querySelectorAll(".top a, #for-guest ~ * a[href]"), of.guest);
  };
  const kept = () => { try { return JSON.parse(sessionStorage.getItem(drawer)) ?? {}; } catch { return {}; } };
  const main = document.getElementById("main"), guest = () => document.querySelector("#for-guest [data-guest]") ?? main;
  if (main.dataset.guest !== undefined) {
    keep(guest().dataset);
    document.addEventListener("htmx:after:swap", () => keep(guest().dataset));
  } else if (kept().query) {
    const { query, line } = kept(), note = document.createElement("p"), who = document.createElement("strong"), back = document.createElement("a"), end = document.createElement("a");
    keep({ guest: query, guestLine: line });
    carry(main.querySelectorAll("a[href]"), query);
    note.className = "for-guest";
    who.textContent = line;
    back.href = "/tonight" + query;
    back.textContent = say("tonight-for-this-guest");
    end.href = "/tonight";
    end.textContent = say("tonight-for-everyone");
    note.append(say("guest-still-ticked"), " ", who, ". ", back, " · ", end);
    main.prepend(note);
  }
}
