package bench_test

import (
	"net/url"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/webui/bench"
	"counterpour/webui/webuitest"
)

const rowsDraft = "Halyard Sour\n2 oz gin\n# pressed this morning\n3/4 oz lemon juice\n2 dashes bitters\n1 egg white\ntop soda water\n\nshake, up"

// formOfRows is what a browser sends of rows that nobody touched.
func formOfRows(v *bench.RowsView) url.Values {
	form := url.Values{"drink": {v.Name}, "method": {v.Method}, "service": {v.Service}}
	for _, r := range v.Rows {
		form.Add("row-line", strconv.Itoa(r.Line))
		form.Add("row-amount", r.Amount)
		form.Add("row-unit", r.Unit)
		form.Add("row-name", r.Name)
	}
	return form
}

func TestADraftAsRows(t *testing.T) {
	v := bench.RowsOf(rowsDraft, 5)
	assert.Equal(t, "Halyard Sour", v.Name)
	assert.Equal(t, "shake", v.Method)
	assert.Equal(t, "up", v.Service)
	var got []string
	for _, r := range v.Rows {
		got = append(got, strings.Join([]string{strconv.Itoa(r.Line), r.Amount, r.Unit, r.Name}, "|"))
	}
	assert.Equal(t, []string{"2|2|oz|gin", "4|¾|oz|lemon juice", "5|2|dash|bitters", "6|1||egg white", "7||top|soda water", "0||oz|"}, got)
	assert.Equal(t, 7, v.After())

	gin := v.Rows[0]
	assert.Contains(t, gin.More, "\n2¼ oz gin\n# pressed")
	assert.Contains(t, gin.Less, "\n1¾ oz gin\n")
	assert.NotContains(t, gin.Without, "gin")
	assert.Contains(t, v.Rows[2].Less, "\n1 dash bitters\n", "a unit is written for its amount")
	assert.Empty(t, v.Rows[4].More, "a top is as much as fits")
}

// A slip in one line leaves the others as rows.
func TestRowsOfAHalfTypedDraft(t *testing.T) {
	v := bench.RowsOf("2 oz gin\n3/4 ozz lemon\nlemoncello", -1)
	require.Len(t, v.Rows, 4)
	assert.Equal(t, "gin", v.Rows[0].Name)
	assert.Equal(t, "lemoncello", v.Rows[2].Name, "what cannot be read stands whole")
	assert.Equal(t, "2 oz gin\n3/4 ozz lemon\nlemoncello", bench.ApplyRows("2 oz gin\n3/4 ozz lemon\nlemoncello", formOfRows(v)))

	hoots := bench.RowsOf("Two Hoots\n2 oz gin\nstir", 1)
	assert.Equal(t, "Two Hoots", hoots.Name)
	assert.Len(t, hoots.Rows, 2)
}

func TestRowsThatAreFilledIn(t *testing.T) {
	for _, c := range []struct {
		name, text string
		fill       func(url.Values)
		want       string
	}{
		{"nothing", rowsDraft, func(url.Values) {}, rowsDraft},
		{"an amount", "2 oz gin\nstir", func(f url.Values) { f["row-amount"][0] = "1½" }, "1½ oz gin\nstir"},
		{"a unit", "2 oz gin\nstir", func(f url.Values) { f["row-unit"][0] = "dash" }, "2 dashes gin\nstir"},
		{"one of it", "2 dashes gin\nstir", func(f url.Values) { f["row-amount"][0] = "1" }, "1 dash gin\nstir"},
		{"a name", "2 oz gin\nstir", func(f url.Values) { f["row-name"][0] = " old  tom gin " }, "2 oz old tom gin\nstir"},
		{"an amount that is missing", "2 oz gin\nstir", func(f url.Values) { f["row-amount"][0] = "" }, "gin\nstir"},
		{"a row emptied", "X\n2 oz gin\n1 oz y\nstir", func(f url.Values) { f["row-amount"][0], f["row-name"][0] = "", "" }, "X\n1 oz y\nstir"},
		{"a row more", "X\n2 oz gin\n\nstir", func(f url.Values) { f["row-amount"][1], f["row-name"][1] = "1", "y" }, "X\n2 oz gin\n1 oz y\n\nstir"},
		{"the first row", "", func(f url.Values) { f["row-amount"][0], f["row-name"][0] = "1", "y" }, "1 oz y"},
		{"the drink's name", "X\n2 oz gin", func(f url.Values) { f["drink"][0] = "Y" }, "Y\n2 oz gin"},
		{"a name at last", "2 oz gin", func(f url.Values) { f["drink"][0] = "12 Bells" }, "name: 12 Bells\n2 oz gin"},
		{"a name that would be a pour", "2 oz gin", func(f url.Values) { f["drink"][0] = "2 oz" }, "name: 2 oz\n2 oz gin"},
		{"no name", "X\n2 oz gin", func(f url.Values) { f["drink"][0] = "" }, "2 oz gin"},
		{"the method", "2 oz gin\nstir, up", func(f url.Values) { f["method"][0] = "shake" }, "2 oz gin\nshake, up"},
		{"a method on two lines", "2 oz gin\nstir\nup", func(f url.Values) { f["service"][0] = "rocks" }, "2 oz gin\nstir, rocks"},
		{"a method at last", "2 oz gin\n", func(f url.Values) { f["method"][0], f["service"][0] = "stir", "" }, "2 oz gin\nstir"},
		{"no method", "2 oz gin\nstir", func(f url.Values) { f["method"][0] = "" }, "2 oz gin"},
		{"a row of another draft", "2 oz gin", func(f url.Values) { f["row-line"][0] = "9" }, "2 oz gin"},
		{"fields that are missing", "2 oz gin", func(f url.Values) { f.Del("row-amount"); f.Del("row-unit"); f.Del("row-name") }, "2 oz gin"},
	} {
		form := formOfRows(bench.RowsOf(c.text, -1))
		c.fill(form)
		assert.Equal(t, c.want, bench.ApplyRows(c.text, form), c.name)
	}
	assert.Equal(t, "2 oz gin", bench.ApplyRows("2 oz gin", url.Values{"drink": {"X"}}), "a form without rows changes nothing")
}

// Whatever a draft holds, rows that nobody touched leave it as it was written.
func FuzzRowsLeaveADraftAlone(f *testing.F) {
	for _, text := range []string{"", rowsDraft, webuitest.GoodDraft, "2 oz gin\n3/4 ozz lemon\nshken", "1\n\n\n2-3 dashes x\nup\nshake\nup", "name: 2 oz\n- 1 oz x", "½½\n¼ x\n#\n\t"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 4000 {
			return
		}
		v := bench.RowsOf(text, -1)
		for _, r := range v.Rows {
			if strings.Join(strings.Fields(r.Name), " ") != r.Name {
				return // a browser would tidy it
			}
		}
		if strings.Join(strings.Fields(v.Name), " ") != v.Name || strings.TrimSpace(text) == "" {
			return
		}
		assert.Equal(t, text, bench.ApplyRows(text, formOfRows(v)))
	})
}
