// On a narrow screen the map is wider than its box: what is chosen stands in the middle
// of it, or else the middle of the map does. Without scripts it begins at its corner.
"use strict";
{
  const pan = document.querySelector(".pan.drawn");
  const to = (pan?.querySelector("svg .on") || pan?.querySelector("svg"))?.getBoundingClientRect();
  if (to) {
    const box = pan.getBoundingClientRect();
    pan.scrollBy(to.left + to.width / 2 - box.left - box.width / 2, to.top + to.height / 2 - box.top - box.height / 2);
  }
}
