package access

import (
	"context"
	"net/http"
	"net/http/httptest"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestRoles(t *testing.T) {
	for _, c := range []struct {
		role, need Role
		may        bool
	}{
		{Lead, Lead, true}, {Lead, Floor, true}, {Floor, Floor, true}, {Floor, Lead, false},
		{0, Floor, false}, {0, 0, false}, {Lead, 0, false}, {Lead + 1, Floor, false}, {Lead, Lead + 1, false}, {255, 255, false},
	} {
		assert.Equal(t, c.may, c.role.May(c.need), "%v for %v", c.role, c.need)
	}
	for _, r := range []Role{Floor, Lead} {
		read, ok := ParseRole(r.String())
		assert.True(t, ok)
		assert.Equal(t, r, read)
	}
	for _, word := range []string{"", "Lead", "no role", "owner"} {
		_, ok := ParseRole(word)
		assert.False(t, ok, word)
	}
}

// Nobody may do anything until they sign in, or until it is said that there is no
// guard.
func TestWhoMay(t *testing.T) {
	bare := context.Background()
	for _, c := range []struct {
		name        string
		ctx         context.Context
		known       bool
		floor, lead bool
	}{
		{"no mark", bare, false, false, false},
		{"no guard", unguarded(bare), false, true, true},
		{"a guard behind no guard", unguarded(withNobody(bare)), false, false, false},
		{"nobody signed in", withNobody(bare), false, false, false},
		{"floor", With(withNobody(bare), Person{"Bo", Floor}), true, true, false},
		{"lead", With(bare, Person{"Ana", Lead}), true, true, true},
		{"a person without a role", With(bare, Person{Name: "Nil"}), true, false, false},
		{"signed out further in", withNobody(With(bare, Person{"Ana", Lead})), false, false, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, known := PersonOf(c.ctx)
			assert.Equal(t, c.known, known)
			assert.Equal(t, c.floor, May(c.ctx, Floor))
			assert.Equal(t, c.lead, May(c.ctx, Lead))
			assert.False(t, May(withNobody(c.ctx), 0), "no role is not the least role")
		})
	}
}

// unguarded is the context that a handler sees behind [Unguarded].
func unguarded(ctx context.Context) (seen context.Context) {
	h := Unguarded(http.HandlerFunc(func(_ http.ResponseWriter, r *http.Request) { seen = r.Context() }))
	h.ServeHTTP(httptest.NewRecorder(), httptest.NewRequest(http.MethodGet, "/", nil).WithContext(ctx))
	return seen
}
