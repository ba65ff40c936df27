package access

import (
	"context"
	"net/http"

	"counterpour/api/journal"
)

// Role is what a person may do. Each role may do what the one before it may; the
// zero value is no role and may do nothing.
type Role uint8

// The roles.
const (
	Floor Role = iota + 1 // marks outs, notes tastings and training, reads everything
	Lead                  // everything
)

var roleWords = [...]string{Floor: "floor", Lead: "lead"}

// String returns the word of the role, as the book has it.
func (r Role) String() string {
	if r < Floor || r > Lead {
		return "no role"
	}
	return roleWords[r]
}

// ParseRole reads the word of a role; it is false for any other word.
func ParseRole(word string) (Role, bool) {
	for r := Floor; r <= Lead; r++ {
		if roleWords[r] == word {
			return r, true
		}
	}
	return 0, false
}

// May reports whether the role may do what needs the other one. What needs no
// known role, nobody may do.
func (r Role) May(need Role) bool {
	return need >= Floor && need <= Lead && r >= need && r <= Lead
}

// Person is somebody in the book, or a script.
type Person struct {
	Name string // as the book writes it
	Role Role
}

// entry is what was noted on a request: who makes it, that nobody has signed in,
// or that there is no guard.
type entry struct {
	person    Person
	known     bool
	unguarded bool
}

type entryKey struct{}

// With returns a context for what a person does.
func With(ctx context.Context, p Person) context.Context {
	return context.WithValue(ctx, entryKey{}, entry{person: p, known: true})
}

// withNobody returns a context for what somebody does who has not signed in.
func withNobody(ctx context.Context) context.Context {
	return context.WithValue(ctx, entryKey{}, entry{})
}

// Unguarded lets everybody in as a lead, nameless, for a server that answers on a
// loopback address only. Requests that carry a mark already keep it.
func Unguarded(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if _, marked := r.Context().Value(entryKey{}).(entry); !marked {
			journal.SetRole(r.Context(), "unguarded")
			r = r.WithContext(context.WithValue(r.Context(), entryKey{}, entry{unguarded: true}))
		}
		next.ServeHTTP(w, r)
	})
}

// PersonOf returns who makes a request; it is false if nobody has signed in or
// no guard is in use. To ask what is allowed, use [May], which knows the two
// apart.
func PersonOf(ctx context.Context) (Person, bool) {
	e, _ := ctx.Value(entryKey{}).(entry)
	return e.person, e.known
}

// May reports whether a request may do what needs a role. Who has not signed in
// may do nothing, and neither may a request that neither a guard nor [Unguarded]
// has marked.
func May(ctx context.Context, need Role) bool {
	switch e, _ := ctx.Value(entryKey{}).(entry); {
	case e.unguarded:
		return Lead.May(need)
	case e.known:
		return e.person.Role.May(need)
	}
	return false
}
