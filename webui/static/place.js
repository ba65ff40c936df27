// Lets this device keep a copy of what it saw; see offline.js. Without it all
// works as long as the bar answers. On a phone the row of pages is pushed to the one
// that is open.
"use strict";
navigator.serviceWorker?.register("/offline.js").catch(() => {});
{
  const row = document.querySelector(".places"), here = row?.querySelector("[aria-current]");
  if (here) row.scrollLeft = here.offsetLeft - row.offsetLeft - (row.clientWidth - here.offsetWidth) / 2;
}
