package bench_test

import (
	"testing"

	"counterpour/webui/webuitest"
)

// What no glass holds is asked about, with the draft that was likely meant, and nothing is poured on top of it.
func TestADraftThatNoGlassHolds(t *testing.T) {
	pages := webuitest.PagesOf(t, webuitest.NewHouse())
	for _, c := range []struct {
		name, text string
		want, not  []string
	}{
		{"a batch", "2000 ml gin\n1000 ml lemon juice\n1000 ml simple syrup\nshake, up",
			[]string{"4000 mL is more than one glass holds", "One drink of it", "\"50 ml gin\n25 ml lemon juice\n25 ml simple syrup\nshake, up\""}, []string{"How to fix it"}},
		{"beside what cannot be read", "2000 ml gin\n1000 ml glimmer\nshake, up", []string{"Nothing scored yet"}, []string{"would score"}},
		{"one drink", "60 ml gin\n30 ml lemon juice\n20 ml simple syrup\nshake, up", nil, []string{"more than one glass holds"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			webuitest.Says(t, webuitest.Post(pages, "/bench", webuitest.Fields("text", c.text), true), c.want, c.not)
		})
	}
}
