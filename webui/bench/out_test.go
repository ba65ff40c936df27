package bench_test

import (
	"testing"

	"counterpour/webui/webuitest"
)

// The bench says what ran out, and covers all of it at once, as Tonight does.
func TestWhatRanOutOnTheBench(t *testing.T) {
	h := webuitest.NewHouse()
	h.Dry = []string{"lemon-juice"}
	p := webuitest.PagesOf(t, h)
	draft := webuitest.Fields("text", webuitest.GoodDraft)
	webuitest.Tells(t, webuitest.Post(p, "/bench", draft, false), 200, "<strong>Out now: lemon juice.</strong>", "Balanced. Out now: lemon juice.", "Cover it: pour something instead of lemon juice")
	draft.Set("missing", "London dry gin")
	webuitest.Tells(t, webuitest.Post(p, "/bench", draft, false), 200, "Instead of London dry gin and lemon juice")
	draft.Set("from", "all") // what is not in the house is not out of it
	webuitest.Tells(t, webuitest.Post(p, "/bench", draft, false), 200, `tabindex="-1">Instead of London dry gin</h2>`)
	h.Dry = nil
	draft.Del("missing")
	webuitest.Lacks(t, webuitest.Post(p, "/bench", draft, false), "Out now")
}
