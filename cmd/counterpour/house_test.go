package main

import (
	"context"
	"io"
	"net/http"
	neturl "net/url"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/cmd/counterpour/terminal"
	"counterpour/data/house/pgtest"
)

const (
	houseStock = "id,name,ingredient,well,abv_pct,brix,sugar_g_per_l,acid_g_per_l,price,currency,size_ml,size_g,stock,note\n" +
		",Dock gin,London dry gin,,43,,,,22,EUR,700,,2,\n" +
		",Dock falernum,falernum,,,,,,18,EUR,700,,1,\n" +
		",Honey syrup,honey syrup,,,,,,4,EUR,500,,1,\n" +
		",Ginger syrup,ginger syrup,,,,,,4,EUR,500,,1,\n" +
		",Lemon juice,lemon juice,,,,,,6,EUR,1000,,1,\n"
	houseSpecs = "Quay Test\n1 1/2 oz London dry gin\n3/4 oz lemon juice\n3/4 oz falernum\nshake, up\n"
)

// A house is imported, covered, exported, backed up, restored and checked.
func TestHouseFromImportToRestore(t *testing.T) {
	dir := t.TempDir()
	path := func(name string) string { return filepath.Join(dir, name) }
	require.NoError(t, os.WriteFile(path("stock.csv"), []byte(houseStock), 0o644))
	require.NoError(t, os.WriteFile(path("specs.txt"), []byte(houseSpecs), 0o644))
	// A count of the shelves knows no prices and no strengths.
	require.NoError(t, os.WriteFile(path("count.csv"), []byte("name,ingredient,stock\nDock gin,London dry gin,2\nDock falernum,falernum,1\nHoney syrup,honey syrup,1\nGinger syrup,ginger syrup,1\nLemon juice,lemon juice,1\n"), 0o644))
	served := strings.Replace(houseSpecs, "3/4 oz falernum", "1/2 oz ginger syrup", 1)
	require.NoError(t, os.WriteFile(path("served.txt"), []byte(served), 0o644))
	require.NoError(t, os.WriteFile(path("bad.csv"), []byte(houseStock+",Moon dust,moon dust,,,,,,4,EUR,500,,1,\n"), 0o644))
	for _, c := range []struct {
		name string
		args []string
		code int
		out  []string
		err  []string
	}{
		{name: "import stock", args: []string{"house", "import", "--house", path("bar.house"), "--as", "stock", path("stock.csv")}, out: []string{"5 added"}},
		{name: "import it again", args: []string{"house", "import", "--house", path("bar.house"), "--as", "stock", path("stock.csv")}, out: []string{"5 the same"}},
		{name: "import a count", args: []string{"house", "import", "--house", path("bar.house"), "--as", "stock", path("count.csv")}, out: []string{"5 the same"}},
		{name: "a bad row stops all", args: []string{"house", "import", "--house", path("bar.house"), "--as", "stock", path("bad.csv")}, code: terminal.ExitInput, err: []string{"7"}},
		{name: "or only itself", args: []string{"house", "import", "--keep-good", "--house", path("bar.house"), "--as", "stock", path("bad.csv")}, out: []string{"1 bad", "moon dust"}},
		{name: "import specs", args: []string{"house", "import", "--house", path("bar.house"), "--as", "text", path("specs.txt")}, out: []string{"1 added"}},
		{name: "outs", args: []string{"outs", "--out", "falernum", "--house", path("bar.house")}, out: []string{"Quay Test, without falernum", "ginger syrup"}},
		{name: "outs within a cost", args: []string{"outs", "--out", "falernum", "--max-cost", "0.2", "--house", path("bar.house")}, out: []string{"ginger syrup"}},
		{name: "outs within next to nothing", args: []string{"outs", "--out", "falernum", "--max-cost", "0.001", "--house", path("bar.house")}, out: []string{"no cover in stock"}},
		{name: "before it was tasted", args: []string{"outs", "--out", "falernum", "--house", path("bar.house"), "--max-parts", "1"}, out: []string{"ginger syrup  instead"}},
		{name: "a cover is sent back", args: []string{"house", "tasted", path("served.txt"), "--house", path("bar.house"), "--missing", "falernum", "--sent-back"}, out: []string{"noted"}},
		{name: "again", args: []string{"house", "tasted", path("served.txt"), "--house", path("bar.house"), "--missing", "falernum", "--sent-back"}, out: []string{"noted"}},
		{name: "and again", args: []string{"house", "tasted", path("served.txt"), "--house", path("bar.house"), "--missing", "falernum", "--score", "0", "--json"}, out: []string{`{"tastings":[{"missing":{"id":"falernum"`}},
		{name: "so another comes first", args: []string{"outs", "--out", "falernum", "--house", path("bar.house"), "--max-parts", "1"}, out: []string{"honey syrup  instead"}},
		{name: "a score beyond", args: []string{"house", "tasted", path("served.txt"), "--house", path("bar.house"), "--missing", "falernum", "--score", "11"}, code: terminal.ExitInput, err: []string{"out of range"}},
		{name: "it ran out", args: []string{"house", "mark", "--house", path("bar.house"), "--out", "falernum"}, out: []string{"Out\n", "falernum"}},
		{name: "what ran out", args: []string{"house", "mark", "--house", path("bar.house"), "--json"}, out: []string{`"out":[{"id":"falernum"`}},
		{name: "it is back", args: []string{"house", "mark", "--house", path("bar.house"), "--back", "falernum"}, out: []string{"nothing has run out"}},
		{name: "what nobody keeps ran out", args: []string{"house", "mark", "--house", path("bar.house"), "--out", "moon dust"}, code: terminal.ExitInput, err: []string{"moon dust"}},
		{name: "marks of the demo house", args: []string{"house", "mark", "--out", "falernum"}, code: terminal.ExitInput, err: []string{"--house"}},
		{name: "tasted, but not how", args: []string{"house", "tasted", path("served.txt"), "--house", path("bar.house"), "--missing", "falernum"}, code: terminal.ExitInput, err: []string{"--kept"}},
		{name: "cost", args: []string{"house", "cost", "quay test", "--house", path("bar.house")}, out: []string{"Quay Test: 2.10 EUR", "London dry gin", "66 %"}},
		{name: "cost of a stranger", args: []string{"house", "cost", "Negative", "--house", path("bar.house")}, code: terminal.ExitInput, err: []string{"no drink"}},
		{name: "batch", args: []string{"house", "batch", "Quay Test", "--serves", "20", "--house", path("bar.house")}, out: []string{"20.0 servings", "890 mL by volume", "water", "Keeps 1 day at most", "Costs 41"}},
		{name: "batch of a draft", args: []string{"house", "batch", path("specs.txt"), "--bottle", "700", "--juice-apart", "--house", path("bar.house")}, out: []string{"Quay Test", "700 mL in all", "To each drink, as it is made", "lemon juice"}},
		{name: "batch of what is no draft", args: []string{"house", "batch", path("bad.csv"), "--serves", "20", "--house", path("bar.house")}, code: terminal.ExitInput, err: []string{"bad.csv, line"}},
		{name: "batch where it is not", args: []string{"batch", "Quay Test", "--house", path("bar.house")}, code: terminal.ExitInput, err: []string{"no command", "house batch"}},
		{name: "batch of nothing", args: []string{"house", "batch", "Quay Test", "--house", path("bar.house")}, code: terminal.ExitInput, err: []string{"--serves"}},
		{name: "batch in a drawer", args: []string{"house", "batch", "Quay Test", "--keg", "19", "--from", "drawer", "--house", path("bar.house")}, code: terminal.ExitInput, err: []string{"drawer"}},
		{name: "nothing is right yet", args: []string{"house", "right", "--house", path("bar.house")}, out: []string{"no drink is marked"}},
		{name: "right", args: []string{"house", "right", "Quay Test", "--house", path("bar.house")}, out: []string{"Quay Test", "version 1", "by 1 drink"}},
		{name: "not right after all", args: []string{"house", "right", "Quay Test", "--undo", "--house", path("bar.house")}, out: []string{"no drink is marked"}},
		{name: "not marked", args: []string{"house", "right", "Quay Test", "--undo", "--house", path("bar.house")}, code: terminal.ExitInput, err: []string{"no mark"}},
		{name: "backup", args: []string{"house", "backup", "--house", path("bar.house"), path("monday.backup")}, out: []string{"verified", "9 records"}},
		{name: "restore over it", args: []string{"house", "restore", "--house", path("bar.house"), path("monday.backup")}, code: terminal.ExitFailed},
		{name: "restore beside it", args: []string{"house", "restore", "--house", path("other.house"), path("monday.backup")}, out: []string{"restored"}},
		{name: "check", args: []string{"house", "check", "--house", path("other.house")}, out: []string{"is sound", "9 records"}},
		{name: "export text", args: []string{"house", "export", "--house", path("other.house"), "--as", "text"}, out: []string{"Quay Test", "London dry gin"}},
		{name: "export JSON", args: []string{"house", "export", "--house", path("other.house")}, out: []string{"counterpour-house"}},
		{name: "no house", args: []string{"house", "check"}, code: terminal.ExitInput, err: []string{"--house"}},
		{name: "no such form", args: []string{"house", "export", "--house", path("other.house"), "--as", "stone"}, code: terminal.ExitInput, err: []string{"stone", "json"}},
		{name: "a backup that is none", args: []string{"house", "restore", "--house", path("third.house"), path("stock.csv")}, code: terminal.ExitFailed},
	} {
		t.Run(c.name, func(t *testing.T) {
			code, out, errOut := try(t, "", c.args...)
			assert.Equal(t, c.code, code, errOut)
			for _, want := range c.out {
				assert.Contains(t, out, want)
			}
			for _, want := range c.err {
				assert.Contains(t, errOut, want)
			}
		})
	}
}

// The same on a database, where a venue is named in the address.
func TestHouseInADatabase(t *testing.T) {
	dir := t.TempDir()
	stock, backup := filepath.Join(dir, "stock.csv"), filepath.Join(dir, "monday.backup")
	require.NoError(t, os.WriteFile(stock, []byte(houseStock), 0o644))
	address := func() string { return pgtest.DSN(t) + "&venue=" + pgtest.Venue() }
	bar, other := address(), address()
	for _, c := range []struct {
		args []string
		code int
		want string
	}{
		{[]string{"import", "--as", "stock", stock, "--house", bar}, terminal.ExitDone, "5 added"},
		{[]string{"check", "--house", bar}, terminal.ExitDone, "the house is sound"},
		{[]string{"export", "--as", "stock", "--house", bar}, terminal.ExitDone, "Dock falernum"},
		{[]string{"export", "--as", "stock", "--house", other}, terminal.ExitFailed, "no house in this venue"},
		{[]string{"backup", backup + ".no", "--house", other}, terminal.ExitFailed, "no house in this venue"},
		{[]string{"check", "--house", other}, terminal.ExitFailed, "no house in this venue"},
		{[]string{"backup", backup, "--house", bar}, terminal.ExitDone, "5 records"},
		{[]string{"restore", backup, "--house", bar}, terminal.ExitFailed, "restore into a new one"},
		{[]string{"restore", backup, "--house", other}, terminal.ExitDone, "restored the house, in a venue made for it"},
		{[]string{"export", "--as", "stock", "--house", other}, terminal.ExitDone, "Dock falernum"},
		{[]string{"check", "--house", "postgres://a:secret@[::1"}, terminal.ExitInput, "cannot be read"},
	} {
		code, out, message := try(t, "", append([]string{"house"}, c.args...)...)
		assert.Equal(t, c.code, code, "%v: %s", c.args, message)
		assert.Contains(t, out+message, c.want, c.args)
		assert.NotContains(t, out+message, "secret")
	}
}

// A house that was filled is served: its menu is on the pages and in the
// answers, and only on this machine.
func TestServeHouse(t *testing.T) {
	dir := t.TempDir()
	stock, specs, bar := filepath.Join(dir, "stock.csv"), filepath.Join(dir, "specs.txt"), filepath.Join(dir, "bar.house")
	require.NoError(t, os.WriteFile(stock, []byte(houseStock), 0o644))
	require.NoError(t, os.WriteFile(specs, []byte(houseSpecs), 0o644))
	for _, args := range [][]string{{"--as", "stock", stock}, {"--as", "text", specs}} {
		code, _, message := try(t, "", append([]string{"house", "import", "--house", bar}, args...)...)
		require.Equal(t, terminal.ExitDone, code, message)
	}
	code, _, message := try(t, "", "serve", "--house", bar, "--listen", "0.0.0.0:0")
	assert.Equal(t, terminal.ExitInput, code)
	assert.Contains(t, message, "--passcodes")

	url, line, stop := serveHouse(t, bar)
	assert.Contains(t, line, "the house is kept in "+bar)
	assert.Contains(t, fetch(t, url+"/specs", ""), "Quay Test")
	r, err := http.Post(url+"/v1/outs", "application/json", strings.NewReader(`{"out":["falernum"]}`))
	require.NoError(t, err)
	answer, err := io.ReadAll(r.Body)
	require.NoError(t, err)
	require.NoError(t, r.Body.Close())
	assert.Contains(t, string(answer), `"name":"Quay Test"`)
	assert.Contains(t, string(answer), `"invented":false`)

	// What is marked on a page outlives the program.
	assert.NotContains(t, fetch(t, url+"/board", ""), "back-falernum")
	r, err = http.PostForm(url+"/board", neturl.Values{"out": {"falernum"}})
	require.NoError(t, err)
	require.NoError(t, r.Body.Close())
	stop()
	url, _, stop = serveHouse(t, bar)
	assert.Contains(t, fetch(t, url+"/board", ""), "back-falernum")
	stop()
}

// serveHouse serves a house until stop, which waits for the end.
func serveHouse(t *testing.T, bar string, more ...string) (url, line string, stop func()) {
	t.Helper()
	return serveLogged(t, io.Discard, bar, more...)
}

// serveLogged is serveHouse with a log.
func serveLogged(t *testing.T, log io.Writer, bar string, more ...string) (url, line string, stop func()) {
	t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	out := &firstLine{got: make(chan string, 1)}
	ended := make(chan int, 1)
	var said logged
	go func() {
		args := append([]string{"serve", "--house", bar, "--listen", "127.0.0.1:0"}, more...)
		ended <- runWith(ctx, embedded, args, strings.NewReader(""), out, io.MultiWriter(&said, log))
	}()
	select {
	case line = <-out.got:
	case code := <-ended:
		t.Fatalf("serve ended with %d: %s", code, &said.text)
	}
	return regexp.MustCompile(`https?://\S+`).FindString(line), line, func() {
		cancel()
		assert.Equal(t, terminal.ExitDone, <-ended)
	}
}

// firstLine hands on the first thing that is written.
type firstLine struct{ got chan string }

func (f *firstLine) Write(p []byte) (int, error) {
	select {
	case f.got <- string(p):
	default:
	}
	return len(p), nil
}
