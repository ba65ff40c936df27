package main

import (
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/tls"
	"crypto/x509"
	"encoding/pem"
	"io"
	"math/big"
	"net"
	"net/http"
	"net/http/cookiejar"
	neturl "net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/cmd/counterpour/terminal"
	"counterpour/data/house"
	"counterpour/data/house/store"
)

// lines makes the file of passcodes of a lead and a person of the floor, and
// returns the token of a script as well.
func lines(t *testing.T) (path, token string) {
	t.Helper()
	var roster string
	for _, p := range [][2]string{{"Ana", "lead"}, {"Wren", "floor"}} {
		code, line, message := try(t, p[0]+" pours well\n", "house", "passcode", "--name", p[0], "--role", p[1])
		require.Equal(t, terminal.ExitDone, code, message)
		roster += line
	}
	code, line, message := try(t, "", "house", "token", "--name", "till", "--role", "floor")
	require.Equal(t, terminal.ExitDone, code, message)
	path = filepath.Join(t.TempDir(), "passcodes")
	require.NoError(t, os.WriteFile(path, []byte(roster+line), 0o600))
	return path, strings.TrimSpace(strings.Split(message, "\n")[2])
}

// certificate makes a certificate for this machine and returns who trusts it.
func certificate(t *testing.T) (cert, key string, trusted *x509.CertPool) {
	t.Helper()
	private, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	require.NoError(t, err)
	plate := &x509.Certificate{SerialNumber: big.NewInt(1), NotBefore: time.Now().Add(-time.Hour), NotAfter: time.Now().Add(time.Hour),
		IPAddresses: []net.IP{net.IPv4(127, 0, 0, 1)}, IsCA: true, BasicConstraintsValid: true}
	der, err := x509.CreateCertificate(rand.Reader, plate, plate, &private.PublicKey, private)
	require.NoError(t, err)
	secret, err := x509.MarshalPKCS8PrivateKey(private)
	require.NoError(t, err)
	write := func(name, kind string, body []byte) string {
		path := filepath.Join(t.TempDir(), name)
		require.NoError(t, os.WriteFile(path, pem.EncodeToMemory(&pem.Block{Type: kind, Bytes: body}), 0o600))
		return path
	}
	parsed, err := x509.ParseCertificate(der)
	require.NoError(t, err)
	trusted = x509.NewCertPool()
	trusted.AddCert(parsed)
	return write("cert.pem", "CERTIFICATE", der), write("key.pem", "PRIVATE KEY", secret), trusted
}

// Over TLS: access needs a passcode or a token; the floor marks what ran out under its
// own name, and the log of the house names the person.
func TestServeWithPasscodes(t *testing.T) {
	passcodes, token := lines(t)
	cert, key, trusted := certificate(t)
	bar := filepath.Join(t.TempDir(), "bar.house")
	stock := filepath.Join(t.TempDir(), "stock.csv")
	require.NoError(t, os.WriteFile(stock, []byte(houseStock), 0o644))
	code, _, message := try(t, "", "house", "import", "--house", bar, "--as", "stock", stock)
	require.Equal(t, terminal.ExitDone, code, message)
	url, line, stop := serveHouse(t, bar, "--passcodes", passcodes, "--tls-cert", cert, "--tls-key", key)
	assert.Contains(t, line, "https://")

	jar, err := cookiejar.New(nil)
	require.NoError(t, err)
	client := &http.Client{Jar: jar, Transport: &http.Transport{TLSClientConfig: &tls.Config{RootCAs: trusted}}}
	defer client.CloseIdleConnections()
	answer := func(r *http.Request) (int, string) {
		t.Helper()
		got, err := client.Do(r)
		require.NoError(t, err)
		defer got.Body.Close()
		body, err := io.ReadAll(got.Body)
		require.NoError(t, err)
		return got.StatusCode, string(body)
	}
	ask := func(method, path string, form neturl.Values, header ...string) (int, string) {
		t.Helper()
		r, err := http.NewRequest(method, url+path, strings.NewReader(form.Encode()))
		require.NoError(t, err)
		r.Header.Set("Accept", "text/html")
		if form != nil {
			r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		}
		for i := 0; i < len(header); i += 2 {
			r.Header.Set(header[i], header[i+1])
		}
		return answer(r)
	}

	status, body := ask(http.MethodGet, "/board", nil)
	assert.Equal(t, http.StatusOK, status)
	assert.Contains(t, body, "Who are you?", "led to the login")
	status, _ = ask(http.MethodGet, "/v1/templates", nil)
	assert.Equal(t, http.StatusUnauthorized, status)
	status, _ = ask(http.MethodGet, "/v1/templates", nil, "Authorization", "Bearer "+token)
	assert.Equal(t, http.StatusOK, status)
	status, _ = ask(http.MethodPost, "/board", neturl.Values{"out": {"falernum"}})
	assert.Equal(t, http.StatusUnauthorized, status)

	status, body = ask(http.MethodPost, "/login", neturl.Values{"name": {"Wren"}, "passcode": {"not the one"}})
	assert.Equal(t, http.StatusUnprocessableEntity, status)
	assert.Contains(t, body, "not right")
	status, body = ask(http.MethodPost, "/login", neturl.Values{"name": {"Wren"}, "passcode": {"Wren pours well"}, "next": {"/board"}})
	assert.Equal(t, http.StatusOK, status)
	assert.Contains(t, body, "What ran out?")
	status, body = ask(http.MethodPost, "/board", neturl.Values{"out": {"falernum"}})
	assert.Equal(t, http.StatusOK, status)
	assert.Contains(t, body, "back-falernum")
	status, _ = ask(http.MethodPost, "/board", neturl.Values{"back": {"falernum"}}, "Origin", "https://elsewhere.example", "Sec-Fetch-Site", "cross-site")
	assert.Equal(t, http.StatusForbidden, status)
	stop()

	kept, err := store.Open(t.Context(), bar, store.Options{})
	require.NoError(t, err)
	defer kept.Close()
	history, err := kept.History(t.Context(), house.Ref{Kind: house.KindOut, ID: "falernum"})
	require.NoError(t, err)
	assert.Equal(t, "Wren", history[0].Actor)
}

// DNS rebinding: a page whose host name points to this machine gets nothing from a server
// without a login.
func TestServeRefusesForeignHosts(t *testing.T) {
	url, _, stop := serveHouse(t, filepath.Join(t.TempDir(), "bar.house"))
	defer stop()
	for host, want := range map[string]int{"": 200, "localhost": 200, "[::1]:8086": 200, "rebound.example": 421, "10.0.0.7:8086": 421} {
		r, err := http.NewRequest(http.MethodGet, url+"/board", nil)
		require.NoError(t, err)
		r.Host = host
		got, err := http.DefaultClient.Do(r)
		require.NoError(t, err)
		require.NoError(t, got.Body.Close())
		assert.Equal(t, want, got.StatusCode, host)
	}
}

func TestAccessConfigurationFaults(t *testing.T) {
	passcodes, _ := lines(t)
	cert, _, _ := certificate(t)
	open := filepath.Join(t.TempDir(), "open")
	require.NoError(t, os.WriteFile(open, []byte("lead Ana x\n"), 0o644))
	for _, c := range []struct {
		args []string
		want string
	}{
		{[]string{"--listen", "0.0.0.0:0"}, "--passcodes"},
		{[]string{"--proxy", "10.0.0.1"}, "--passcodes"},
		{[]string{"--passcodes", filepath.Join(t.TempDir(), "none")}, "check the path"},
		{[]string{"--passcodes", open}, "chmod 600"},
		{[]string{"--passcodes", passcodes, "--proxy", "the-proxy"}, "10.0.0.0/24"},
		{[]string{"--passcodes", passcodes, "--tls-cert", cert}, "--tls-key"},
		{[]string{"--passcodes", passcodes, "--tls-cert", cert, "--tls-key", passcodes}, "PEM"},
	} {
		code, _, message := try(t, "", append([]string{"serve", "--listen", "127.0.0.1:0"}, c.args...)...)
		assert.Equal(t, terminal.ExitInput, code, c.args)
		assert.Contains(t, message, c.want, c.args)
	}
}
