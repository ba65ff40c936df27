// Package frame is what every page stands in: the layout and the templates, the
// static files, the methods and the time that a page may take, who asks, and the
// page that tells what went wrong. It knows nothing of drinks.
//
// A page is an [Action], which answers or returns an error. [Frame.Route] turns
// the error into an answer: the kinds of errors that are told apart stand in one
// table (see [TroubleOf]); any other is logged and told in general words. Whoever
// asks with the header HX-Request gets the part of the page that changed.
//
// Templates keep to three rules, which tests hold: no style attribute, no
// handler attribute or script within a page, nothing from another host. Static
// files are named through the function static, which adds a hash of the content.
package frame
