package access

import (
	"net/http"
	"net/netip"
	"strings"
)

// addressOf is where a request came from, as far as it is counted by: an IPv4
// address, or the network of 64 bits that one customer has in IPv6.
func (g *Guard) addressOf(r *http.Request) string {
	from, err := netip.ParseAddrPort(r.RemoteAddr)
	if err != nil {
		return "unknown" // such as a socket file: all share it
	}
	at := from.Addr().Unmap().WithZone("")
	hops := strings.Split(strings.Join(r.Header.Values("X-Forwarded-For"), ","), ",")
	for i := len(hops) - 1; i >= 0 && g.isProxy(at); i-- {
		hop, err := netip.ParseAddr(strings.TrimSpace(hops[i]))
		if err != nil {
			break
		}
		at = hop.Unmap().WithZone("")
	}
	if at.Is6() {
		return netip.PrefixFrom(at, 64).Masked().String()
	}
	return at.String()
}

func (g *Guard) isProxy(at netip.Addr) bool {
	for _, p := range g.opts.Proxies {
		if p.Contains(at) {
			return true
		}
	}
	return false
}
