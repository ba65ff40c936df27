package access

import (
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestLocal(t *testing.T) {
	for next, want := range map[string]string{
		"/": "/", "/board": "/board", "/board?avoid=tree+nuts#drinks": "/board?avoid=tree+nuts#drinks", "/specs/halyard-sour/card": "/specs/halyard-sour/card",
		"/?text=2+oz+gin%0Ashake%2C+up": "/?text=2+oz+gin%0Ashake%2C+up", "/map?next=https://elsewhere.example/": "/map?next=https://elsewhere.example/",
		"": "/", "board": "/", "https://elsewhere.example/": "/", "//elsewhere.example": "/", "///elsewhere.example": "/", "javascript:alert(1)": "/",
		`/\elsewhere.example`: "/", `\\elsewhere.example`: "/", "/\t/elsewhere.example": "/", "/\n/elsewhere.example": "/", " //elsewhere.example": "/",
		"/\r\nSet-Cookie: a=b": "/", "/%zz": "/", "/login": "/", "/login?next=/login": "/", "/logout": "/", "/" + strings.Repeat("x", mostNext): "/",
	} {
		assert.Equal(t, want, Local(next), "%q", next)
	}
	assert.Equal(t, "/login", loginFor("/"))
	assert.Equal(t, "/login", loginFor("//elsewhere.example"))
	assert.Equal(t, "/login?next=%2Fboard%3Favoid%3Dtree%2Bnuts", loginFor("/board?avoid=tree+nuts"))
}

// Wherever a browser is sent, it stays on this host, and does not come back to
// the login.
func FuzzLocal(f *testing.F) {
	for _, seed := range []string{"/board", "//a", `/\a`, "/\t/a", "/.//a", "/a/..//b", "https:a", "/?//a", "/#//a", "/%2F/a", "/login", "/;//@a"} {
		f.Add(seed)
	}
	base := &url.URL{Scheme: "https", Host: "bar.example", Path: LoginPath}
	f.Fuzz(func(t *testing.T, next string) {
		to := Local(next)
		if to != next && to != "/" {
			t.Errorf("%q became %q", next, to)
		}
		u, err := base.Parse(to)
		if err != nil || u.Host != base.Host || u.Scheme != base.Scheme || u.Path == LoginPath || u.Path == logoutPath {
			t.Errorf("%q leads to %v, %v", next, u, err)
		}
		if to[0] != '/' || len(to) > 1 && strings.ContainsRune(`/\`, rune(to[1])) || strings.ContainsAny(to, "\r\n\t") {
			t.Errorf("%q leads to %q", next, to)
		}
	})
}
