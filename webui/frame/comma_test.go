package frame

import (
	"net/url"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

func TestCommas(t *testing.T) {
	for page, want := range map[string]string{
		`<p>7.9 ± 1.5&nbsp;mL</p>`:                                    `<p>7,9 ± 1,5&nbsp;mL</p>`,
		`<p>No. 5. About 3.</p>`:                                      `<p>No. 5. About 3.</p>`,
		`<text x="1.5" y="2.5">12.50</text>`:                          `<text x="1.5" y="2.5">12,50</text>`,
		`<textarea name="text">0.75 oz</textarea><b>0.75 oz</b>`:      `<textarea name="text">0.75 oz</textarea><b>0,75 oz</b>`,
		`<q>0.75 oz</q> 0.75 oz`:                                      `<q>0.75 oz</q> 0,75 oz`,
		`<p>&#34;1.234,56&#34; for 1.5; &#34;2.5&#34;, 3.5 &#34; 4.5`: `<p>&#34;1.234,56&#34; for 1,5; &#34;2.5&#34;, 3,5 &#34; 4,5`,
		`<section>1.5</section>`:                                      `<section>1,5</section>`,
		`127.0.0.1, 192.168.1.20:8086, 1.24.3`:                        `127.0.0.1, 192.168.1.20:8086, 1.24.3`,
		`<svg aria-label="7.9 mL > 2.5" data-at="1.5"><a>1.5</a>`:     `<svg aria-label="7,9 mL > 2,5" data-at="1.5"><a>1,5</a>`,
		`<button value="2 oz a > 1.5">2.5</button><script>1.5`:        `<button value="2 oz a > 1.5">2,5</button><script>1.5`,
		`<p title="1.5"`:                                              `<p title="1.5"`,
		``:                                                            ``,
		`.5 1. 1.`:                                                    `.5 1. 1.`,
	} {
		assert.Equal(t, want, string(commas{}.write([]byte(page))), page)
	}
}

// Whatever a page is, nothing but points is changed, each to a comma.
func TestCommasChangeNothingElse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		page := rapid.StringOfN(rapid.SampledFrom([]rune(`<>"' .,15ab/q=`)), 0, 60, -1).Draw(t, "page")
		got := commas{}.write([]byte(page))
		if len(got) != len(page) {
			t.Fatalf("%q became %q", page, got)
		}
		for i := range got {
			if got[i] != page[i] && !(page[i] == '.' && got[i] == ',') {
				t.Fatalf("%q became %q", page, got)
			}
		}
	})
}

// What the house named keeps its points, also where a sentence begins with it, and so does a name
// in a form; an amount beside it does not.
func TestCommasLeaveNames(t *testing.T) {
	c := newCommas([]string{"Navy 2.0", "rye & 3.5", "4.5 of the Clock", "plain"}, url.Values{"text": {"Draft 1.1\r\n22.5 ml gin"}, "title": {"Sour 7.1: 2 oz gin"}})
	for page, want := range map[string]string{
		`<h1>Navy 2.0</h1> 22.5 mL`:            `<h1>Navy 2.0</h1> 22,5 mL`,
		`<p>navy 2.0, 2.0</p>`:                 `<p>navy 2.0, 2,0</p>`,
		`<p>Rye &amp; 3.5 at 3.5</p>`:          `<p>Rye &amp; 3.5 at 3,5</p>`,
		`<p>4.5 of the Clock, 4.5 of</p>`:      `<p>4.5 of the Clock, 4,5 of</p>`,
		`<p>Draft 1.1 holds 22.5 ml gin</p>`:   `<p>Draft 1.1 holds 22,5 ml gin</p>`,
		`<svg aria-label="Sour 7.1, 7.1"></p>`: `<svg aria-label="Sour 7.1, 7,1"></p>`,
	} {
		assert.Equal(t, want, string(c.write([]byte(page))), page)
	}
}
