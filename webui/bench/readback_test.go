package bench_test

import (
	"testing"

	"counterpour/webui/webuitest"
)

// What was read otherwise than it is written is shown, with what else it may mean.
func TestWhatWasReadAsWhat(t *testing.T) {
	pages := webuitest.PagesOf(t, webuitest.NewHouse())
	for _, c := range []struct {
		name, text string
		more       []string // of the form
		want, not  []string
	}{
		{name: "as written", text: "2 oz London dry gin\n3/4 oz lemon juice\n1/2 oz simple syrup\nshake, up", not: []string{"Read as"}},
		{name: "another name", text: webuitest.GoodDraft, want: []string{"Read as", "<q>2 oz gin</q>", "<strong>London dry gin</strong>"}, not: []string{"Not said how", "Bare numbers"}},
		{name: "another of its class", text: "2 oz London dry gin\n3/4 oz lemon juice\n1/2 oz nut syrup\nshake, up",
			want: []string{"<q>1/2 oz nut syrup</q>", "Change", "1/2 oz sesame orgeat\nshake, up\""}},
		{name: "for a guest", text: "2 oz London dry gin\n3/4 oz lemon juice\n1/2 oz nut syrup\nshake, up", more: []string{"avoid", "sesame"},
			want: []string{"<q>1/2 oz nut syrup</q>"}, not: []string{"1/2 oz sesame orgeat"}},
		{name: "no method", text: "2 oz London dry gin\n3/4 oz lemon juice\n1/2 oz simple syrup",
			want: []string{"Not said how", "<strong>shake, up</strong>", "simple syrup\nstir\"", "simple syrup\nrocks\""}},
		{name: "bare numbers", text: "6 London dry gin\n3 lemon juice\n2 simple syrup\nshake, up",
			want: []string{"Bare numbers"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			webuitest.Says(t, webuitest.Post(pages, "/bench", webuitest.Fields(append([]string{"text", c.text}, c.more...)...), false), c.want, c.not)
		})
	}
}
