package access

import (
	"net/http"
	"net/netip"
	"strings"
)

// addressOf returns the address by which a client's sign-ins are counted: the IPv4
// address, or the /64 network of an IPv6 address, which is what one customer usually has.
func (g *Guard) addressOf(r *http.Request) string {
	from, err := netip.ParseAddrPort(r.RemoteAddr)
	if err != nil {
		return "unknown" // such as a Unix socket; all of them share one count
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
