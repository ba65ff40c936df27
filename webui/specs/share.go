package specs

import (
	htmltemplate "html/template"
	"net"
	"net/http"
	"net/url"
	"strings"

	"counterpour/webui/access"
	"counterpour/webui/draw"
)

// shareView is the address of a spec, as text and for the camera of a phone.
type shareView struct {
	Address string
	Code    htmltemplate.HTML // empty if no phone can open the address
	Here    bool              // the address names this machine to itself, and to no other
}

// shareOf says how a spec is reached from another phone: at the name by which this
// browser reached the server.
func shareOf(r *http.Request, slug, name string) (*shareView, error) {
	at := url.URL{Scheme: "http", Host: r.Host, Path: "/specs/" + slug}
	if access.Secure(r) {
		at.Scheme = "https"
	}
	v := &shareView{Address: at.String(), Here: isLoopback(at.Hostname())}
	if v.Here {
		return v, nil
	}
	var err error
	v.Code, err = draw.CodeSVG("share", "A code that opens "+name, v.Address)
	return v, err
}

// isLoopback reports whether a host is the name or the number of a machine for itself.
func isLoopback(host string) bool {
	if host == "localhost" || strings.HasSuffix(host, ".localhost") {
		return true
	}
	ip := net.ParseIP(host)
	return ip != nil && ip.IsLoopback()
}
