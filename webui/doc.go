// Package webui serves the pages: HTML made on the server, drawings made in Go
// as SVG, and the static files, all embedded.
//
// A page works without scripts: everything on it is a form that posts and a
// full page that comes back. With scripts the same form posts itself as it is
// typed in (htmx) and gets a fragment back, told apart by the HX-Request
// header. Whatever happens, the text that was sent comes back with the answer.
//
// What the pages know of drinks comes through [Bar], and what they know of the
// house through [House], whose store they write to: the package imports the
// flavor folders and data/house, and package access, which says who may write.
// Between requests it keeps no state but answers that it would work out again
// (see memo).
//
// Rounds of training come through [Trainer]. A round travels in its form as the
// request that it is made from again, sealed, since the request gives the answer
// away. Who gave a name has their results in the house, of which their state is
// made again; a learner without one is a cookie that holds a random word, goes
// with the browser, and is remembered until the program stops.
//
// Several screens may show the cover board at once. Each is told by server-sent
// events which state of the outs is current, and fetches the board when it
// shows another. The guest's allergens are not the house's state: they stand in
// the address of the screen.
//
// Words used here: a draft is the text in the box; an answer is everything the
// server says about it; to become is to have the whole draft replaced by
// another text, which every button that rewrites the draft asks for.
//
// Rules for templates, held by tests: no style attribute, no handler
// attribute, no script within the page, nothing from another host. Static files
// are named through the function static, which adds a hash of the content.
package webui
