package specs

import (
	htmltemplate "html/template"
	"net/http"
	"net/url"

	"counterpour/webui/access"
	"counterpour/webui/draw"
)

// shareView is the address of a spec, as text and for the camera of a phone.
type shareView struct {
	Address string
	Code    htmltemplate.HTML
}

// shareOf says how a spec is reached from another phone: at the name by which this
// browser reached the server.
func shareOf(r *http.Request, slug, name string) (*shareView, error) {
	at := url.URL{Scheme: "http", Host: r.Host, Path: "/specs/" + slug}
	if access.Secure(r) {
		at.Scheme = "https"
	}
	v := &shareView{Address: at.String()}
	var err error
	v.Code, err = draw.CodeSVG("share", "A code that opens "+name, v.Address)
	return v, err
}
