package access

import (
	"context"
	"net/http"

	"counterpour/api/accesslog"
)

// Role is what a person may do. A higher role includes the lower one. The zero value
// allows nothing.
type Role uint8

// The roles.
const (
	Floor Role = iota + 1 // marks outs, notes tastings and training, reads everything
	Lead                  // everything
)

var roleWords = [...]string{Floor: "floor", Lead: "lead"}

// String returns the word for the role in the roster.
func (r Role) String() string {
	if r < Floor || r > Lead {
		return "no role"
	}
	return roleWords[r]
}

// ParseRole reads the word for a role. ok is false for any other word.
func ParseRole(word string) (Role, bool) {
	for r := Floor; r <= Lead; r++ {
		if roleWords[r] == word {
			return r, true
		}
	}
	return 0, false
}

// May reports whether the role allows what needs another role. An invalid role allows
// nothing, and nothing satisfies one.
func (r Role) May(need Role) bool {
	return need >= Floor && need <= Lead && r >= need && r <= Lead
}

// Person is a person or a script in the roster.
type Person struct {
	Name string // as spelt in the roster
	Role Role
}

// entry is the authentication of a request: a person, nobody, or no guard in use.
type entry struct {
	person    Person
	known     bool
	unguarded bool
}

type entryKey struct{}

// With returns a context that carries a person.
func With(ctx context.Context, p Person) context.Context {
	return context.WithValue(ctx, entryKey{}, entry{person: p, known: true})
}

// withNobody returns a context for a request without authentication.
func withNobody(ctx context.Context) context.Context {
	return context.WithValue(ctx, entryKey{}, entry{})
}

// Unguarded treats every request as a nameless lead's, for a server on a loopback
// address. A request that is already marked keeps its mark.
func Unguarded(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if _, marked := r.Context().Value(entryKey{}).(entry); !marked {
			accesslog.SetRole(r.Context(), "unguarded")
			r = r.WithContext(context.WithValue(r.Context(), entryKey{}, entry{unguarded: true}))
		}
		next.ServeHTTP(w, r)
	})
}

// PersonOf returns the person who makes a request. ok is false if nobody has signed in or
// there is no guard. To check permissions, use [May], which distinguishes the two.
func PersonOf(ctx context.Context) (Person, bool) {
	e, _ := ctx.Value(entryKey{}).(entry)
	return e.person, e.known
}

// May reports whether a request has at least a role. A request without authentication has
// none, and neither has one that passed neither a guard nor [Unguarded].
func May(ctx context.Context, need Role) bool {
	switch e, _ := ctx.Value(entryKey{}).(entry); {
	case e.unguarded:
		return Lead.May(need)
	case e.known:
		return e.person.Role.May(need)
	}
	return false
}
