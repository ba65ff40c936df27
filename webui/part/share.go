package part

import (
	htmltemplate "html/template"
	"net"
	"net/url"
	"strings"

	"counterpour/webui/draw"
	"counterpour/webui/say"
)

// Share is the address of a page, as text and for the camera of a phone.
type Share struct {
	Name    string // of what the page shows
	Address string
	Code    htmltemplate.HTML // empty if no phone can open the address, or no code holds it
	Here    bool              // the address names this machine to itself, and to no other
}

// mostCoded is how many bytes of an address go into a code that a phone still reads from
// a screen: above them its squares are finer than a camera parts. Common practice, no source.
const mostCoded = 600

// ShareOf says how a page is reached from another phone, by its whole address.
func ShareOf(at url.URL, name string) (*Share, error) {
	v := &Share{Name: name, Address: at.String(), Here: isLoopback(at.Hostname())}
	if v.Here || len(v.Address) > mostCoded {
		return v, nil
	}
	var err error
	v.Code, err = draw.CodeSVG("share", say.It("part.code-that-opens", "Name", name), v.Address)
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
