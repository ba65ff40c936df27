// A copy of the last pages that this device saw, for when the bar does
// not answer. A copy always says that it is one, and of when.
"use strict";
const SEEN = "counterpour-seen-1", FILES = "counterpour-files-1", OWN = "counterpour-own-1";
const MOST = 80; // pages and files that are kept of each, the oldest go first

// Every page that was opened is kept, but for those that only take something in.
const taking = ["/login", "/start", "/stock/import", "/specs/import"];
const kept = (path, response) => !taking.includes(path) && (response.headers.get("Content-Type") || "").startsWith("text/html");

// How the page below looks is kept from the start. What was opened before this was there
// is kept as well, since it is the page that is asked for next.
const looks = ["/static/bar.css", "/static/board.css"];
self.addEventListener("install", (event) => {
  self.skipWaiting();
  event.waitUntil(caches.open(OWN).then((cache) => cache.addAll(looks)));
});
self.addEventListener("activate", (event) => event.waitUntil((async () => {
  await self.clients.claim();
  for (const open of await self.clients.matchAll({ type: "window" })) await take(open.url);
})()));

const take = async (address) => {
  try {
    const request = new Request(address), response = await fetch(request);
    if (!response.ok || response.redirected || !kept(new URL(address).pathname, response)) return;
    for (const [, sheet] of (await response.clone().text()).matchAll(/<link rel="stylesheet" href="([^"]+)"/g)) await file(new Request(sheet));
    await keep(SEEN, request, response);
  } catch (error) { /* it is kept when it is opened again */ }
};

self.addEventListener("fetch", (event) => {
  const request = event.request, url = new URL(request.url);
  // The copies go with who saw them; a draft in the browser stays.
  if (request.method === "POST" && url.pathname === "/logout") event.waitUntil(caches.delete(SEEN));
  if (request.method !== "GET" || url.origin !== self.location.origin) return;
  if (url.pathname.startsWith("/static/")) event.respondWith(file(request));
  else if (request.mode === "navigate") event.respondWith(page(request, url));
});

const keep = async (name, request, response) => {
  const cache = await caches.open(name);
  await cache.delete(request); // so that it goes to the end
  await cache.put(request, response);
  const all = await cache.keys();
  for (const old of all.slice(0, Math.max(0, all.length - MOST))) await cache.delete(old);
};

// Static files go by the hash in their name, so a kept one is never old.
const file = async (request) => {
  const cached = await caches.match(request, { cacheName: FILES });
  if (cached) return cached;
  try {
    const response = await fetch(request);
    if (response.ok) await keep(FILES, request, response.clone());
    return response;
  } catch (error) {
    return await caches.match(request, { cacheName: OWN }) ?? Response.error();
  }
};

const page = async (request, url) => {
  try {
    const response = await fetch(request);
    if (response.ok && !response.redirected && kept(url.pathname, response)) await keep(SEEN, request, response.clone());
    return response;
  } catch (error) {
    const copy = await caches.match(request, { cacheName: SEEN }) ?? await alike(url);
    return copy ? marked(copy) : others(url);
  }
};

// What only chooses among what a page lists, so that the copy with another choice will do.
// Who drinks it is no such choice.
const choices = ["show", "page", "said", "again"];
const plainly = (url) => {
  const bare = new URL(url);
  for (const name of choices) bare.searchParams.delete(name);
  bare.searchParams.sort();
  bare.hash = "";
  return bare.href;
};
const alike = async (url) => {
  const cache = await caches.open(SEEN);
  for (const request of (await cache.keys()).reverse()) if (plainly(request.url) === plainly(url)) return cache.match(request);
};

const escape = (text) => text.replace(/[&<>"]/g, (c) => ({ "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" })[c]);

const ago = (minutes) => {
  if (minutes < 1) return say("less-than-a-minute-ago");
  if (minutes < 90) return minutes === 1 ? say("a-minute-ago") : say("minutes-ago", { Minutes: minutes });
  return minutes < 2880 ? say("hours-ago", { Hours: Math.round(minutes / 60) }) : say("days-ago", { Days: Math.round(minutes / 1440) });
};

// The time is the server's, as it stood on the answer.
const when = (response) => {
  const at = new Date(response.headers.get("Date"));
  return say("at-and-ago", { At: `<time datetime="${at.toISOString()}">${escape(at.toLocaleString())}</time>`, Ago: ago(Math.floor((Date.now() - at) / 60000)) });
};

const html = (text) => new Response(text, { headers: { "Content-Type": "text/html; charset=utf-8",
  "Content-Security-Policy": "default-src 'self'; img-src 'self' data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'" } });

const marked = async (copy) => {
  const body = await copy.text();
  const marks = body.includes('id="board"') ? say("taps-are-kept") : say("nothing-can-be-marked");
  const note = `<div class="copy" role="status"><p>${say("a-copy", { When: when(copy), Marks: marks })}</p></div>`;
  return html(body.replace(/<main[^>]*>/, (main) => main + note));
};

// What was never seen here has no copy; what was is listed, with whom it is for. It is dark,
// since a bar is.
const others = async (asked) => {
  const cache = await caches.open(SEEN);
  const rows = [];
  for (const request of (await cache.keys()).reverse()) {
    const url = new URL(request.url), copy = await cache.match(request);
    const title = /<title>([^<]*)/.exec(await copy.text())?.[1] ?? url.pathname;
    const guest = [...url.searchParams.getAll("avoid").map((word) => say("without", { Allergen: word })), ...url.searchParams.getAll("diet")].join(", ");
    const row = `<li>${say("copy-in-a-list", { Address: escape(url.pathname + url.search), Title: title, Guest: escape(guest), When: when(copy) })}</li>`;
    if (url.pathname === asked.pathname) rows.unshift(row); else rows.push(row);
  }
  const list = rows.length ? `<h2>${say("copies-on-this-device")}</h2><ul class="plain copies">${rows.join("")}</ul>`
    : `<p>${say("no-copies-yet")}</p>`;
  return html(`<!doctype html><html lang="en-GB" class="on-board"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="dark"><title>${say("bar-does-not-answer")}</title>${looks.map((sheet) => `<link rel="stylesheet" href="${sheet}">`).join("")}</head>
<body><main class="problem"><h1>${say("bar-does-not-answer")}</h1>
<p>${say("check-the-network")}</p>
<p><a class="again" href="">${say("try-again")}</a></p>
<p>${say("until-then")}</p>${list}</main></body></html>`);
};
