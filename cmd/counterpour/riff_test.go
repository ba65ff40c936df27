package main

import (
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/cmd/counterpour/terminal"
)

// command is one run of the program and what must come of it.
type command struct {
	name    string
	input   string
	args    []string
	code    int
	out     []string // in the output
	outNot  []string
	message []string // in the message
}

func (c *command) run(t *testing.T) {
	t.Run(c.name, func(t *testing.T) {
		code, out, message := try(t, c.input, c.args...)
		assert.Equal(t, c.code, code, message)
		for _, want := range c.out {
			assert.Contains(t, out, want)
		}
		for _, not := range c.outNot {
			assert.NotContains(t, out, not)
		}
		for _, want := range c.message {
			assert.Contains(t, message, want)
		}
		assert.Equal(t, c.code != 0, message != "", "a message if and only if it failed: %s", message)
		assert.NotContains(t, message, "goroutine")
	})
}

const plainSour = "2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up\n"

func TestRiffCommand(t *testing.T) {
	path := file(t, "draft.txt", plainSour)
	shelf := file(t, "shelf.txt", "gin # the house pour\nlemon juice\nbourbon\nhoney syrup\nsimple syrup\n")
	badShelf := file(t, "bad.txt", "\nmoon dust\n")
	for _, c := range []command{
		{name: "a file", args: []string{"riff", path, "--limit", "3"}, out: []string{"\n1. ", "\n3. ", "noticeable steps away", "Proven relatives", "0.", "Left out: ", "Seed 0"}, outNot: []string{"\n4. "}},
		{name: "what is piped in", input: plainSour, args: []string{"riff", "--limit", "1", "--seed", "7"}, out: []string{"\n1. ", "Seed 7"}},
		{name: "for a guest", args: []string{"riff", path, "--avoid", "tree nuts", "--diet", "vegan", "--toward", "nuttier", "--limit", "40"},
			out: []string{"\n1. "}, outNot: []string{"almond", "orgeat", "amaretto", "walnut", "hazelnut", "tree nuts:", "allergens: tree nuts", "egg white", "heavy cream"}},
		{name: "weak", args: []string{"riff", path, "--max-abv", "9", "--limit", "2"}, out: []string{"\n1. "}},
		{name: "from the shelf", args: []string{"riff", path, "--stock", shelf, "--limit", "4"}, out: []string{"bourbon"}, outNot: []string{"crémant", "lime juice", "; costs "}},
		{name: "the shelf lacks a pour", input: "1 1/2 oz mezcal\n" + plainSour, args: []string{"riff", "-", "--stock", shelf, "--limit", "1"}, out: []string{"Without mezcal, which is not among what may be poured"}},
		{name: "a cost, of a shelf without prices", args: []string{"riff", path, "--stock", shelf, "--max-cost", "2"}, code: 2, message: []string{"--max-cost", "needs prices"}},
		{name: "nothing to list", args: []string{"riff", path, "--toward", "above 90 %"}, out: []string{"No riff from the allowed ingredients"}},
		{name: "a wish nobody knows", args: []string{"riff", path, "--toward", "crunchy"}, code: 2, message: []string{"--toward", "crunchy"}},
		{name: "wishes at odds", args: []string{"riff", path, "--toward", "sweeter", "--toward", "drier"}, code: 2, message: []string{"--toward", "cannot both be met"}},
		{name: "a diet nobody knows", args: []string{"riff", path, "--diet", "moonlight"}, code: 2, message: []string{"--diet", "vegan"}},
		{name: "an allergen nobody knows", args: []string{"riff", path, "--avoid", "gravity"}, code: 2, message: []string{"--avoid"}},
		{name: "a cost", args: []string{"riff", path, "--max-cost", "2"}, out: []string{"costs 1."}, outNot: []string{"costs 2."}},
		{name: "a cost that buys nothing", args: []string{"riff", path, "--max-cost", "0.01"}, out: []string{"No riff from the allowed ingredients"}},
		{name: "too strong a limit", args: []string{"riff", path, "--max-abv", "101"}, code: 2, message: []string{"--max-abv"}},
		{name: "too many", args: []string{"riff", path, "--limit", "101"}, code: 2, message: []string{"--limit"}},
		{name: "a bad shelf", args: []string{"riff", path, "--stock", badShelf}, code: 2, message: []string{"bad.txt, line 2", "moon dust"}},
		{name: "no shelf", args: []string{"riff", path, "--stock", "nowhere.txt"}, code: 2, message: []string{"nowhere.txt"}},
		{name: "a bad line", input: "2 oz moon dust\n", args: []string{"riff", "-"}, code: 2, message: []string{"line 1", "moon dust"}},
	} {
		c.run(t)
	}
}

// A bottle that nobody knows is told and not poured; the rest of its list is.
func TestALineOfAStockFileThatMeansNothing(t *testing.T) {
	path := file(t, "draft.txt", plainSour)
	shelf := file(t, "shelf.txt", "gin\nmoon dust\nlemon juice\nsimple syrup\nhoney syrup\nvodka\n")
	for _, args := range [][]string{
		{"cover", path, "--missing", "gin", "--stock", shelf}, {"riff", path, "--stock", shelf, "--limit", "1"},
		{"use-up", "--bottle", "vodka", "--stock", shelf},
	} {
		code, out, message := try(t, "", args...)
		assert.Equal(t, terminal.ExitDone, code, args)
		assert.Contains(t, message, "shelf.txt, line 2: unknown ingredient \"moon dust\"", args)
		assert.Contains(t, message, "the rest of the list is", args)
		assert.Equal(t, 1, strings.Count(message, "\n"), "one line of one fault: %s", message)
		assert.Contains(t, out, "vodka", args)
		assert.NotContains(t, out, "moon dust", args)
	}
}

// A house with prices sets what a riff may cost.
func TestRiffInAHouse(t *testing.T) {
	dir := t.TempDir()
	bar, stock, draft := filepath.Join(dir, "bar.house"), filepath.Join(dir, "stock.csv"), filepath.Join(dir, "draft.txt")
	rows := houseStock + ",Dock bourbon,bourbon,,,,,,24,EUR,700,,1,\n,Gold rum,aged rum,,,,,,700,EUR,700,,1,\n,Simple,simple syrup,,,,,,2,EUR,1000,,1,\n"
	require.NoError(t, os.WriteFile(stock, []byte(rows), 0o600))
	require.NoError(t, os.WriteFile(draft, []byte(plainSour), 0o600))
	code, _, message := try(t, "", "house", "import", "--house", bar, "--as", "stock", stock)
	require.Equal(t, terminal.ExitDone, code, message)
	code, out, message := try(t, "", "riff", draft, "--house", bar)
	require.Equal(t, terminal.ExitDone, code, message)
	assert.Contains(t, out, "aged rum")
	assert.Contains(t, out, "; costs ")
	code, out, message = try(t, "", "riff", draft, "--house", bar, "--max-cost", "3")
	require.Equal(t, terminal.ExitDone, code, message)
	assert.Contains(t, out, "bourbon")
	assert.NotContains(t, out, "aged rum", "a millilitre of it costs 1")
	code, out, message = try(t, "", "use-up", "--bottle", "bourbon", "--bottle", "aged rum", "--house", bar, "--max-cost", "3")
	require.Equal(t, terminal.ExitDone, code, message)
	assert.Contains(t, out, "bourbon")
	assert.Contains(t, out, "No use found for")
}

// TestRiffJSONEqualsTheEndpoint: --json prints what the endpoint answers, byte by
// byte.
func TestRiffJSONEqualsTheEndpoint(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	url, ended := start(ctx, t, shared)
	t.Cleanup(func() {
		stop()
		assert.Equal(t, terminal.ExitDone, <-ended)
	})
	path := file(t, "draft.txt", plainSour)
	text, err := json.Marshal(plainSour)
	require.NoError(t, err)
	for _, c := range []struct {
		args      []string
		url, body string
	}{
		{[]string{"riff", path, "--toward", "more bitter", "--avoid", "eggs", "--diet", "no honey", "--max-abv", "20", "--seed", "3", "--limit", "4", "--json"}, "/v1/riff",
			`{"text":` + string(text) + `,"toward":["more bitter"],"avoid":["eggs"],"diet":["no honey"],"max_abv_pct":20,"seed":3,"limit":4}`},
		{[]string{"use-up", "--bottle", "mezcal", "--bottle", "fino sherry", "--avoid", "eggs", "--seed", "2", "--limit", "3", "--unit", "ml", "--json"}, "/v1/use-up",
			`{"bottles":["mezcal","fino sherry"],"avoid":["eggs"],"seed":2,"limit":3,"unit":"ml"}`},
		{[]string{"walk", path, "Tide Table", "--steps", "2", "--avoid", "eggs", "--json"}, "/v1/walk",
			`{"from":{"text":` + string(text) + `},"to":{"drink":"Tide Table"},"steps":2,"avoid":["eggs"]}`},
	} {
		code, out, message := try(t, "", c.args...)
		require.Equal(t, terminal.ExitDone, code, message)
		assert.Equal(t, fetch(t, url+c.url, c.body), out)
	}
}
