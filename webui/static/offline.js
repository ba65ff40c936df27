// A copy of the last pages that this device saw, for when the bar does
// not answer. A copy always says that it is one, and of when.
"use strict";
const SEEN = "counterpour-seen-1", FILES = "counterpour-files-1";
const MOST = 80; // pages and files that are kept of each, the oldest go first

// Every page that was opened is kept, but for those that only take something in.
const taking = ["/login", "/start", "/stock/import", "/specs/import"];
const kept = (path, response) => !taking.includes(path) && (response.headers.get("Content-Type") || "").startsWith("text/html");

self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));

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
  const response = await fetch(request);
  if (response.ok) await keep(FILES, request, response.clone());
  return response;
};

const page = async (request, url) => {
  try {
    const response = await fetch(request);
    if (response.ok && !response.redirected && kept(url.pathname, response)) await keep(SEEN, request, response.clone());
    return response;
  } catch (error) {
    const copy = await caches.match(request, { cacheName: SEEN });
    return copy ? marked(copy) : others();
  }
};

const escape = (text) => text.replace(/[&<>"]/g, (c) => ({ "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" })[c]);

// The time is the server's, as it stood on the answer.
const when = (response) => {
  const at = new Date(response.headers.get("Date"));
  const hours = Math.round((Date.now() - at) / 360000) / 10;
  return `<time datetime="${at.toISOString()}">${escape(at.toLocaleString())}</time> (${hours} hours ago)`;
};

const html = (text) => new Response(text, { headers: { "Content-Type": "text/html; charset=utf-8",
  "Content-Security-Policy": "default-src 'self'; img-src 'self' data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'" } });

const marked = async (copy) => {
  const note = `<div class="copy" role="status"><p><strong>This is a copy of ${when(copy)}.</strong> The bar does not answer.
What is out, what is poured and what is in it may have changed since: read the label and ask before you pour for anyone with an allergy.
Nothing can be marked or saved until the bar answers again.</p></div>`;
  return html((await copy.text()).replace(/<main[^>]*>/, (main) => main + note));
};

// What was never seen here has no copy; what was is listed.
const others = async () => {
  const cache = await caches.open(SEEN);
  const rows = [];
  for (const request of (await cache.keys()).reverse()) {
    const url = new URL(request.url), copy = await cache.match(request);
    const title = /<title>([^<]*)/.exec(await copy.text())?.[1] ?? url.pathname;
    rows.push(`<li><a href="${escape(url.pathname + url.search)}">${title}</a> as of ${when(copy)}</li>`);
  }
  const list = rows.length ? `<p>This device has a copy of:</p><ul>${rows.join("")}</ul>`
    : "<p>This device has no copies. Pages are kept whenever they are opened.</p>";
  return html(`<!doctype html><html lang="en-GB"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<title>The bar does not answer</title></head><body><main><h1>The bar does not answer</h1>
<p>Check that this device is on the bar's network and that the program runs, then <a href="">try again</a>.</p>${list}</main></body></html>`);
};
