package bench_test

import (
	"testing"

	"counterpour/webui/webuitest"
)

// Each refused line has its remedies as buttons, and each of them writes the draft that
// it says.
func TestRefusedLinesAreMendedAtATap(t *testing.T) {
	pages := webuitest.PagesOf(t, webuitest.NewHouse())
	for _, c := range []struct {
		name, text string
		more       []string // of the form
		want, not  []string
	}{
		{name: "an unknown name", text: "2 oz gin\n3/4 oz glimmer\nshake",
			want: []string{"Drinks like this one also pour", "\"2 oz gin\n3/4 oz simple syrup\nshake\"",
				"\"2 oz gin\nshake\" form=\"draft\">Leave it out"}},
		{name: "a slip of the pen", text: "2 oz gin\n3/4 oz lemmon jooce\nshake", want: []string{"Write <button", "\"2 oz gin\n3/4 oz lemon juice\nshake\""}},
		{name: "what drinks like it pour stands in the draft already", text: "2 oz gin\n1/2 oz simple syrup\n3/4 oz glimmer\nshake",
			not: []string{"Drinks like this one"}},
		{name: "a number without a unit", text: "2 oz gin\n20 lemon juice\nshake",
			want: []string{"Pour <button", "\"2 oz gin\n20 ml lemon juice\nshake\" form=\"draft\">20 ml"}, not: []string{">20 oz<", ">20 cl<"}},
		{name: "a shot beside millilitres", text: "a shot of gin\n20 ml lemon juice\n10 ml simple syrup\nshake",
			want: []string{"\"25 ml gin\n20 ml lemon juice\n10 ml simple syrup\nshake\"", "\"45 ml gin\n20 ml lemon juice\n10 ml simple syrup\nshake\""}, not: []string{"67.5 ml"}},
		{name: "a name without an amount", text: "1 oz lemon juice\n1/2 oz simple syrup\ngin\nshake",
			want: []string{"\"1 oz lemon juice\n1/2 oz simple syrup\n2 oz gin\nshake\" form=\"draft\">2 oz gin<", "Leave it out"}},
		{name: "nothing that a guest must not have", text: "2 oz gin\n3/4 oz glimmer\nshake", more: []string{"cost", "", "diet", "alcohol-free"},
			want: []string{"lemon juice"}, not: []string{"2 oz gin\n3/4 oz London dry gin"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			w := webuitest.Post(pages, "/bench", webuitest.Fields(append([]string{"text", c.text}, c.more...)...), false)
			webuitest.Says(t, w, c.want, c.not)
		})
	}
}

// A rest that is hardly a sip is not scored, and what a rest lacks is not held against it.
func TestTheRestOfADraft(t *testing.T) {
	pages := webuitest.PagesOf(t, webuitest.NewHouse())
	w := webuitest.Post(pages, "/bench", webuitest.Fields("text", "2 oz glimmer\n1/4 oz lemon juice\nshake"), true)
	webuitest.Says(t, w, []string{"Nothing scored yet", `class="strip"`, "Line 1"}, []string{"of 100"})
	w = webuitest.Post(pages, "/bench", webuitest.Fields("text", "2 oz gin\n1/4 oz lemon juice\n1/2 oz glimmer\nshake"), true)
	webuitest.Says(t, w, []string{"Incomplete: this leaves out line 3.", "Not scored yet", "What could be read would score 26 alone."}, []string{"too little lemon juice"})
}
