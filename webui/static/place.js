// Lets this device keep a copy of what it saw; see offline.js. Without it all
// works as long as the bar answers.
"use strict";
navigator.serviceWorker?.register("/offline.js").catch(() => {});
