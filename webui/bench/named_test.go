package bench_test

import (
	"net/http"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/webui/webuitest"
)

// A name that nobody knows is asked for once, with what it may be; the answer is kept
// and can be taken back.
func TestAnUnknownNameIsAskedOnce(t *testing.T) {
	house := webuitest.NewHouse()
	pages := webuitest.PagesOf(t, house)
	const text = "2 oz gin\n3/4 oz lemmon jooce\nshake"
	w := webuitest.Post(pages, "/bench", webuitest.Fields("text", text), false)
	webuitest.Says(t, w, []string{"“lemmon jooce” is a word of this house", "From now on it means", `name="means" value="lemon-juice lemmon jooce"`, `href="/stock?words=lemmon%20jooce#own-words"`}, nil)

	w = webuitest.Post(pages, "/bench", webuitest.Fields("text", text, "means", "lemon-juice lemmon jooce"), false)
	webuitest.Says(t, w, []string{"“lemmon jooce” means lemon juice in this house from now on.", `name="forget" value="lemmon jooce"`}, nil)
	if names := house.Names(); assert.Len(t, names, 1) {
		assert.Equal(t, "lemmon jooce", names[0].Words)
		assert.Equal(t, "lemon-juice", names[0].Profile.ID)
	}

	w = webuitest.Post(pages, "/bench", webuitest.Fields("text", text, "forget", "lemmon jooce"), false)
	webuitest.Says(t, w, []string{"“lemmon jooce” is forgotten."}, nil)
	assert.Empty(t, house.Names())

	w = webuitest.Post(pages, "/bench", webuitest.Fields("text", text, "means", "moon-dust lemmon jooce"), false)
	webuitest.Says(t, w, []string{"No ingredient is called that."}, nil)
	assert.Equal(t, http.StatusUnprocessableEntity, w.Code, "the draft is as it was")
	webuitest.Get(pages, "/bench?means=lemon-juice+lemmon+jooce", "")
	assert.Empty(t, house.Names(), "an address keeps nothing")
}

// What is no slip, and what is asked for a guest with something to avoid, is not kept at one tap.
func TestOneTapKeepsOnlyASlip(t *testing.T) {
	house := webuitest.NewHouse()
	pages := webuitest.PagesOf(t, house)
	for _, fields := range [][]string{
		{"text", "2 oz gin\n3/4 oz corkle stout\nshake", "means", "lemon-juice corkle stout"},
		{"text", "2 oz gin\n3/4 oz lemmon jooce\nshake", "means", "lemon-juice lemmon jooce", "avoid", "tree nuts"},
	} {
		w := webuitest.Post(pages, "/bench", webuitest.Fields(fields...), false)
		webuitest.Says(t, w, []string{"is not kept: only a slip"}, nil)
		assert.Empty(t, house.Names(), fields[1])
	}
	w := webuitest.Post(pages, "/bench", webuitest.Fields("text", "2 oz gin\n3/4 oz lemmon jooce\nshake", "avoid", "tree nuts"), false)
	webuitest.Says(t, w, []string{`href="/stock?words=lemmon%20jooce#own-words"`}, []string{`name="means"`, "From now on it means"})
}
