package access

import "context"

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

// entry is what the guard noted on a request: who makes it, or that nobody has
// signed in.
type entry struct {
	person Person
	known  bool
}

type entryKey struct{}

// With returns a context for what a person does.
func With(ctx context.Context, p Person) context.Context {
	return context.WithValue(ctx, entryKey{}, entry{p, true})
}

// withNobody returns a context for what somebody does who has not signed in.
func withNobody(ctx context.Context) context.Context {
	return context.WithValue(ctx, entryKey{}, entry{})
}

// PersonOf returns who makes a request; it is false if nobody has signed in or
// no guard is in use. To ask what is allowed, use [May], which knows the two
// apart.
func PersonOf(ctx context.Context) (Person, bool) {
	e, _ := ctx.Value(entryKey{}).(entry)
	return e.person, e.known
}

// May reports whether a request may do what needs a role. Where no guard is in
// use everybody is a lead: the server must then answer on a loopback address
// only. Behind a guard a request that nobody has signed in for may do nothing.
// The context is that of the request: one that does not come from it carries no
// mark of the guard and is a lead's.
func May(ctx context.Context, need Role) bool {
	e, guarded := ctx.Value(entryKey{}).(entry)
	if !guarded {
		return Lead.May(need)
	}
	return e.known && e.person.Role.May(need)
}
