// Package frame is the framework of the pages: layout and templates, static files,
// methods and deadlines, the user of a request, and the error page. It knows nothing
// about drinks.
//
// A page is an [Action], which answers or returns an error. [Frame.Route] turns the error
// into an answer. One table lists the kinds of errors with an answer of their own (see
// [TroubleOf]); any other is logged and answered as an internal error. A request with the
// header HX-Request gets only the part of the page that changed.
//
// The words of a template are put in their places before it is parsed, see the package say.
//
// Templates follow three rules, which tests check: no style attributes, no event handler
// attributes or inline scripts, nothing from another host. Static files are linked with
// the function static, which adds a hash of the content to the name.
package frame
