package main

import (
	"context"
	"crypto/tls"
	"log/slog"
	"net"
	"net/http"
	"net/netip"
	"strings"

	"github.com/spf13/cobra"

	"counterpour/cmd/counterpour/terminal"
	"counterpour/data/house"
	"counterpour/webui/access"
)

// door is the configuration of access: the file of passcodes, and TLS.
type door struct {
	passcodes string
	cert, key string
	proxies   []string
}

func (d *door) flags(cmd *cobra.Command) {
	cmd.Flags().StringVar(&d.passcodes, "passcodes", "", "file of who may enter, made of lines of house passcode and house token; needed on any address but a loopback one")
	cmd.Flags().StringVar(&d.cert, "tls-cert", "", "file of the certificate, to serve https")
	cmd.Flags().StringVar(&d.key, "tls-key", "", "file of the certificate's key")
	cmd.Flags().StringArrayVar(&d.proxies, "proxy", nil, "address or network, such as 10.0.0.0/24, of a server in front that speaks https; may be repeated")
}

// roll is the list of who may sign in, and the configuration of the guard.
type roll struct {
	roster *access.Roster
	opts   access.Options
}

// roll reads the file of passcodes. Without a file it returns nil for a loopback address,
// which only this machine reaches, and an error for any other.
func (d *door) roll(listen string, log *slog.Logger) (*roll, error) {
	o := access.Options{Secure: len(d.proxies) > 0, Log: log}
	for _, p := range d.proxies {
		prefix, err := prefixOf(p)
		if err != nil {
			return nil, terminal.Usagef("--proxy %s: write an address or a network, such as 10.0.0.1 or 10.0.0.0/24", p)
		}
		o.Proxies = append(o.Proxies, prefix)
	}
	if d.passcodes == "" {
		if loopback(listen) && len(d.proxies) == 0 {
			return nil, nil
		}
		return nil, terminal.Usagef("--listen %s: others can reach this server, so it needs --passcodes FILE; make its lines with counterpour house passcode --name NAME --role lead", listen)
	}
	roster, err := access.ReadFile(d.passcodes)
	if err != nil {
		return nil, terminal.WrongPath(err)
	}
	if !loopback(listen) && d.cert == "" && !o.Secure {
		log.Warn("passcodes go over the network as plain text; give --tls-cert and --tls-key, or put a server that speaks https in front and name it with --proxy")
	}
	return &roll{roster, o}, nil
}

// guard creates the guard of a house and runs its upkeep until leave is called. A
// read-only house stores no sessions, so they end with the program.
func (d *door) guard(ctx context.Context, a *roll, s house.Store, readOnly bool) (g *access.Guard, leave func()) {
	o := a.opts
	if !readOnly {
		o.Commons = s
	}
	g = access.NewGuard(a.roster, o)
	ctx, stop := context.WithCancel(ctx)
	kept := make(chan struct{})
	go func() {
		defer close(kept)
		g.Keep(ctx, d.passcodes)
	}()
	return g, func() { stop(); <-kept }
}

func prefixOf(text string) (netip.Prefix, error) {
	if a, err := netip.ParseAddr(text); err == nil {
		return a.Prefix(a.BitLen())
	}
	return netip.ParsePrefix(text)
}

func (d *door) scheme() string {
	if d.cert != "" {
		return "https"
	}
	return "http"
}

// encryption reads the TLS certificate; nil means no TLS.
func (d *door) encryption() (*tls.Config, error) {
	switch {
	case (d.cert == "") != (d.key == ""):
		return nil, terminal.Usagef("--tls-cert and --tls-key go together; give both, or neither")
	case d.cert == "":
		return nil, nil
	}
	c, err := tls.LoadX509KeyPair(d.cert, d.key)
	if err != nil {
		return nil, terminal.Usagef("--tls-cert %s and --tls-key %s: %w; both must be PEM, and belong together", d.cert, d.key, err)
	}
	return &tls.Config{Certificates: []tls.Certificate{c}, MinVersion: tls.VersionTLS12}, nil
}

// hstsValue is the value of Strict-Transport-Security: for a year, in seconds, browsers
// use only https (RFC 6797).
const hstsValue = "max-age=31536000"

// withHSTS sends that header if https is spoken, here or by a reverse proxy in front. It is
// not sent for localhost, since the header would apply to all other programs on the
// machine.
func (d *door) withHSTS(next http.Handler) http.Handler {
	if d.cert == "" && len(d.proxies) == 0 {
		return next
	}
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if !loopback(net.JoinHostPort(hostOf(r.Host), "0")) {
			w.Header().Set("Strict-Transport-Security", hstsValue)
		}
		next.ServeHTTP(w, r)
	})
}

// serve serves until the server is closed.
func serve(server *http.Server, l net.Listener) error {
	if server.TLSConfig != nil {
		return server.ServeTLS(l, "", "")
	}
	return server.Serve(l)
}

// onlyLoopbackHosts refuses requests with a Host other than localhost or a loopback address.
// Without a login, a malicious page could otherwise read and write the house by DNS
// rebinding.
func onlyLoopbackHosts(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if !loopback(net.JoinHostPort(hostOf(r.Host), "0")) {
			http.Error(w, "This server answers on this machine only; open it as http://127.0.0.1 or http://localhost.", http.StatusMisdirectedRequest)
			return
		}
		next.ServeHTTP(w, r)
	})
}

// hostOf returns the name in a Host header, without the port.
func hostOf(header string) string {
	if host, _, err := net.SplitHostPort(header); err == nil {
		return host
	}
	return strings.Trim(header, "[]")
}

// loopback reports whether an address is reachable from this machine only.
func loopback(address string) bool {
	host, _, err := net.SplitHostPort(address)
	if err != nil {
		return false
	}
	ip := net.ParseIP(host)
	return strings.EqualFold(host, "localhost") || ip != nil && ip.IsLoopback()
}
