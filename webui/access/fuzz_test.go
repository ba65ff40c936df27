package access

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"

	"counterpour/data/house"
)

// Whatever a browser sends in its cookies and whatever is stored as a session, nothing
// panics, and only sessions that the guard began give access.
func FuzzCookies(f *testing.F) {
	g, clock := testGuard(f, Options{})
	w := httptest.NewRecorder()
	if err := g.SignIn(w, request(f.Context(), "192.0.2.1"), "Bo", boPasscode); err != nil {
		f.Fatal(err)
	}
	good := map[string]string{}
	for _, c := range w.Result().Cookies() {
		good[c.Name] = c.Value
	}
	f.Add(strings.Repeat("A", 43), good[plainDevice], strings.Repeat("0", 64), `{"key":"bo","proof":"AAAA"}`)
	f.Add("", ".", "", "")
	f.Add("\x00", "a.b.c.", "zz", `{"key":"ana","begun":"9999-12-31T23:59:59Z"}`)
	f.Fuzz(func(t *testing.T, session, device, id, body string) {
		r := request(t.Context(), "192.0.2.9")
		r.Header.Set("Cookie", plainCookie+"="+session+"; "+plainDevice+"="+device)
		c, err := g.callerOf(r)
		if err != nil || c.known && g.sessionOf(r) != good[plainCookie] {
			t.Fatalf("let in by %q: %v", session, err)
		}
		b := g.roster.Load()
		bo := b.people[b.byName["bo"]].hash
		if id := g.deviceOf(r, bo, "bo"); id != "" && !strings.Contains(device, deviceMark(bo, "bo", id)) {
			t.Fatalf("known as a device by %q", device)
		}
		if _, o := g.sessions.session(house.Ephemeral{Kind: sessionKind, ID: id, Body: body, Until: clock.now().Add(time.Hour)}); o != nil {
			t.Fatalf("let in by %q: %q", id, body)
		}
		http.SetCookie(httptest.NewRecorder(), g.knowDevice(r, bo, "bo"))
	})
}
