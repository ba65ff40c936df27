package access

import (
	"net/http/httptest"
	"net/netip"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestAddresses(t *testing.T) {
	proxies := []netip.Prefix{netip.MustParsePrefix("10.0.0.0/8"), netip.MustParsePrefix("fd00::/8")}
	for _, c := range []struct {
		name, remote string
		forwarded    []string
		proxies      []netip.Prefix
		want         string
	}{
		{"direct", "192.0.2.7:4711", nil, nil, "192.0.2.7"},
		{"direct, IPv6", "[2001:db8:1:2:3:4:5:6]:4711", nil, nil, "2001:db8:1:2::/64"},
		{"IPv4 as IPv6", "[::ffff:192.0.2.7]:4711", nil, nil, "192.0.2.7"},
		{"with a zone", "[fe80::1%eth0]:4711", nil, nil, "fe80::/64"},
		{"a header that nobody vouches for", "192.0.2.7:4711", []string{"198.51.100.1"}, nil, "192.0.2.7"},
		{"a header from a stranger", "192.0.2.7:4711", []string{"198.51.100.1"}, proxies, "192.0.2.7"},
		{"through a proxy", "10.0.0.1:4711", []string{"198.51.100.1"}, proxies, "198.51.100.1"},
		{"through a proxy, with a hop made up", "10.0.0.1:4711", []string{"203.0.113.9, 198.51.100.1"}, proxies, "198.51.100.1"},
		{"through two proxies", "10.0.0.1:4711", []string{"203.0.113.9", "198.51.100.1, 10.0.0.2"}, proxies, "198.51.100.1"},
		{"through a proxy that says nothing", "10.0.0.1:4711", nil, proxies, "10.0.0.1"},
		{"through a proxy, not an address", "10.0.0.1:4711", []string{"198.51.100.1, unknown"}, proxies, "10.0.0.1"},
		{"from a proxy itself", "10.0.0.1:4711", []string{"10.0.0.2"}, proxies, "10.0.0.2"},
		{"through an IPv6 proxy", "[fd00::1]:4711", []string{"2001:db8::9"}, proxies, "2001:db8::/64"},
		{"a socket file", "@", []string{"198.51.100.1"}, proxies, "unknown"},
	} {
		t.Run(c.name, func(t *testing.T) {
			g, _ := testGuard(t, Options{Proxies: c.proxies})
			r := httptest.NewRequest("GET", "/", nil)
			r.RemoteAddr = c.remote
			for _, f := range c.forwarded {
				r.Header.Add("X-Forwarded-For", f)
			}
			assert.Equal(t, c.want, g.addressOf(r))
		})
	}
}
