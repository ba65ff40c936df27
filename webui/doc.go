// Package webui serves the pages: HTML made on the server, drawings made in Go
// as SVG, and the static files, all embedded. It puts the pages on one mux and
// signs people in; each group of pages is a package of its own below it.
//
//	bench board specs stock training riffs   the pages
//	part      what stands on more than one page: allergens, covers, costs, drawings
//	draw      the drawings
//	form      reading what a form sends
//	frame     layout, templates, static files, and the page that tells a fault
//	say       every sentence that they show
//	words     how numbers and lists are written
//	access    who may do what
//	behind    what the pages ask of the house
//
// Pages do not import one another: what two of them need goes to part, or to
// whatever below it fits. A new page is a folder with a function Mount, a file in
// templates, its sentences in say/english and a line in [NewWithLogin].
//
// A page works without scripts: everything on it is a form that posts and a
// full page that comes back. With scripts the same form posts itself as it is
// typed in (htmx) and gets a fragment back, told apart by the HX-Request
// header. Whatever happens, the text that was sent comes back with the answer.
//
// Between requests the pages keep nothing but answers that they would work out
// again.
package webui
