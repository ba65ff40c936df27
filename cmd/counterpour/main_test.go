package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/service/kitchen"
	"counterpour/cmd/counterpour/premises"
	"counterpour/cmd/counterpour/terminal"
	"counterpour/data"
	"counterpour/data/house/pgtest"
)

const draft = "Halyard Sour\n2 oz gin\n3/4 oz lemon juice\n1/2 oz orgeat\nshake, up\n"

// sharedKitchen is built once for all tests.
var sharedKitchen = sync.OnceValues(func() (*kitchen.Kitchen, error) {
	k, _, err := embedded(context.Background())
	return k, err
})

// shared hands out the one kitchen, and does not close it.
func shared(context.Context) (*kitchen.Kitchen, func(), error) {
	k, err := sharedKitchen()
	return k, func() {}, err
}

// file writes a file for a test and returns its path.
func file(t *testing.T, name, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
	return path
}

func try(t *testing.T, input string, args ...string) (code int, out, errOut string) {
	t.Helper()
	var o, e bytes.Buffer
	code = runWith(context.Background(), shared, args, strings.NewReader(input), &o, &e)
	return code, o.String(), e.String()
}

func TestCommands(t *testing.T) {
	path := file(t, "draft.txt", draft)
	shelf := file(t, "shelf.txt", "# the back bar\nSimple syrup\n\nhoney syrup # runny\ngin\n")
	badShelf := file(t, "bad.txt", "moon dust\n# nothing else\n\nsun dust\n")
	huge := file(t, "huge.txt", strings.Repeat("2 oz gin\n", 8000))
	folder := t.TempDir()
	for _, c := range []struct {
		name    string
		input   string
		args    []string
		code    int
		out     []string // in the output
		outNot  []string
		message []string // in the message
	}{
		{name: "help", args: nil, out: []string{"score", "cover", "find", "check", "serve", "Exit codes"}},
		{name: "score a file", args: []string{"score", path}, out: []string{"Halyard Sour (shake, up)", "2 oz", "59.15 mL", "± ", "% vol", "Score ",
			"Family", "% likely", "contains     tree nuts (orgeat)", "Cautions"}},
		{name: "score the input", input: draft, args: []string{"score", "-"}, out: []string{"Halyard Sour"}},
		{name: "score what is piped in", input: draft, args: []string{"score"}, out: []string{"Halyard Sour"}},
		{name: "faults and fixes", input: "2 oz gin\n1 1/2 oz honey syrup\n1 oz lemon juice\nshake, up", args: []string{"score"},
			out: []string{"too sweet", "noticeable steps", "To fix it", "1.  ", "score "}},
		{name: "a slip of the pen", input: "2 oz Lodnon dry gin\n3/4 oz lemon juice", args: []string{"score"}, out: []string{`read from "Lodnon dry gin"`, "note: no method"}},
		{name: "cover", args: []string{"cover", path, "--missing", "orgeat", "--limit", "2", "--max-parts", "1"},
			out: []string{"Without orgeat", "\n1. ", "\n2. ", "instead", "noticeable steps", "London dry gin"}, outNot: []string{"\n3. "}},
		{name: "two missing", args: []string{"cover", path, "--missing", "orgeat", "--missing", "lemon juice", "--limit", "1"},
			out: []string{"Without orgeat and lemon juice", "instead"}, outNot: []string{"  orgeat", "  lemon juice"}},
		{name: "two missing, as JSON", args: []string{"cover", path, "--missing", "orgeat", "--missing", "lemon juice", "--limit", "1", "--json"},
			out: []string{`"missing":[{"id":"orgeat","name":"orgeat"},{"id":"lemon-juice","name":"lemon juice"}]`}},
		{name: "an unknown one of two", args: []string{"cover", path, "--missing", "orgeat", "--missing", "moon dust"}, code: 2, message: []string{"--missing", "moon dust"}},
		{name: "cover for a guest", args: []string{"cover", path, "--missing", "orgeat", "--avoid", "tree nuts", "--avoid", "sesame", "--max-parts", "1"},
			out: []string{"Not considered: "}, outNot: []string{"allergens: tree nuts", "contains tree nuts", "almond drink", "hazelnut"}},
		{name: "cover from the shelf", args: []string{"cover", path, "--missing", "orgeat", "--stock", shelf, "--max-parts", "1"},
			out: []string{"simple syrup", "not in stock"}},
		{name: "find", args: []string{"find", "lemon", "juice"}, out: []string{"lemon-juice", "sour juice"}},
		{name: "find by number", args: []string{"find", "--class", "gin", "--abv-max", "45", "--limit", "2"}, out: []string{"gin", "--limit lists more"}},
		{name: "find nothing", args: []string{"find", "zzzzzzzz"}, out: []string{"nothing found"}},
		{name: "check", args: []string{"check"}, out: []string{"embedded catalogue is sound", "amaro", "from memory", " %"}},
		{name: "calibrate", args: []string{"calibrate"}, out: []string{"[[fitted]]"}},

		{name: "no such command", args: []string{"scor"}, code: 2, message: []string{"scor", "did you mean score"}},
		{name: "no such command at all", args: []string{"xyzzy"}, code: 2, message: []string{"xyzzy", "--help"}},
		{name: "no such flag", args: []string{"score", "--loud"}, code: 2, message: []string{"--loud", "--help lists"}},
		{name: "too many files", args: []string{"score", "a", "b"}, code: 2, message: []string{"FILE"}},
		{name: "no such file", args: []string{"score", "nowhere.txt"}, code: 2, message: []string{"nowhere.txt", "check the path"}},
		{name: "a folder", args: []string{"score", folder}, code: 2, message: []string{"is a folder"}},
		{name: "a huge file", args: []string{"score", huge}, code: 2, message: []string{"64 KiB"}},
		{name: "a huge input", input: strings.Repeat("x", terminal.MaxFile+1), args: []string{"score"}, code: 2, message: []string{"64 KiB"}},
		{name: "nothing in it", input: "", args: []string{"score", "-"}, code: 2, message: []string{"no pour"}},
		{name: "a bad line", args: []string{"score", file(t, "bad.txt", "2 oz gin\n1 oz moon dust\n")}, code: 2, message: []string{"bad.txt, line 2", "moon dust", "write its category"}},
		{name: "a bad unit", input: "2 tsbp gin\n", args: []string{"score"}, code: 2, message: []string{"line 1", "tsbp"}},
		{name: "a negative amount", input: "-2 oz gin\n", args: []string{"score"}, code: 2, message: []string{"line 1", "-2", "above zero"}},
		{name: "not UTF-8", input: "2 oz gin \xff\n", args: []string{"score"}, code: 2, message: []string{"line 1", "UTF-8"}},
		{name: "nothing missing", args: []string{"cover", path}, code: 2, message: []string{"--missing"}},
		{name: "unknown missing", args: []string{"cover", path, "--missing", "moon dust"}, code: 2, message: []string{"--missing", "moon dust"}},
		{name: "not missing from it", args: []string{"cover", path, "--missing", "vodka"}, code: 2, message: []string{"--missing", "not a pour"}},
		{name: "unknown allergen", args: []string{"cover", path, "--missing", "orgeat", "--avoid", "gravity"}, code: 2, message: []string{"--avoid", "gravity", "tree nuts"}},
		{name: "a bad shelf", args: []string{"cover", path, "--missing", "orgeat", "--stock", badShelf}, code: 2, message: []string{"bad.txt, line 1", "moon dust", "line 4", "sun dust"}},
		{name: "no shelf", args: []string{"cover", path, "--missing", "orgeat", "--stock", "nowhere.txt"}, code: 2, message: []string{"nowhere.txt"}},
		{name: "a cost without prices", args: []string{"cover", path, "--missing", "orgeat", "--max-cost", "1"}, code: 2, message: []string{"--max-cost", "prices"}},
		{name: "no covers", args: []string{"cover", path, "--missing", "orgeat", "--limit", "0"}, code: 2, message: []string{"--limit", "1 to 100"}},
		{name: "too many parts", args: []string{"cover", path, "--missing", "orgeat", "--max-parts", "4"}, code: 2, message: []string{"--max-parts", "1 to 3"}},
		{name: "a limit in words", args: []string{"cover", path, "--limit", "ten"}, code: 2, message: []string{"ten"}},
		{name: "nothing to find", args: []string{"find"}, code: 2, message: []string{"write a word"}},
		{name: "unknown class", args: []string{"find", "x", "--class", "potion"}, code: 2, message: []string{"--class", "potion", "amaro"}},
		{name: "unknown family", args: []string{"find", "x", "--family", "potion"}, code: 2, message: []string{"--family", "citrus"}},
		{name: "bitter NaN", args: []string{"find", "x", "--bitter-min", "NaN"}, code: 2, message: []string{"--bitter-min"}},
		{name: "no catalogue", args: []string{"check", "nowhere"}, code: 2, message: []string{"nowhere"}},
		{name: "a file for a catalogue", args: []string{"check", path}, code: 2, message: []string{"is a file"}},
		{name: "an empty catalogue", args: []string{"check", folder}, code: 2, message: []string{"no .toml file", "faults: 1"}},
		{name: "a bad address", args: []string{"serve", "--listen", "nowhere"}, code: 2, message: []string{"--listen", "127.0.0.1:8086"}},
		{name: "no such port", args: []string{"serve", "--listen", "127.0.0.1:99999"}, code: 1, message: []string{"--listen"}},
	} {
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
			for line := range strings.Lines(out) {
				assert.Equal(t, strings.TrimRight(line, " \n"), strings.TrimRight(line, "\n"), "no blanks at the end of a line")
			}
		})
	}
}

// TestJSONEqualsTheEndpoint: --json prints what the endpoint answers, byte by byte.
func TestJSONEqualsTheEndpoint(t *testing.T) {
	url := startService(t)
	path := file(t, "draft.txt", draft)
	shelf := file(t, "shelf.txt", "honey syrup\nvanilla syrup\ncola\n")
	text, err := json.Marshal(draft)
	require.NoError(t, err)
	for _, c := range []struct {
		args      []string
		url, body string
	}{
		{[]string{"score", path, "--json"}, "/v1/score", `{"text":` + string(text) + `}`},
		{[]string{"cover", path, "--missing", "orgeat", "--avoid", "tree nuts", "--max-parts", "1", "--stock", shelf, "--json"}, "/v1/cover",
			`{"text":` + string(text) + `,"missing":"orgeat","avoid":["tree nuts"],"max_parts":1,"stock":["honey-syrup","vanilla-syrup","cola"]}`},
		{[]string{"cover", path, "--missing", "orgeat", "--everywhere", "--max-parts", "1", "--json"}, "/v1/cover",
			`{"text":` + string(text) + `,"missing":"orgeat","everywhere":true,"max_parts":1}`},
		{[]string{"find", "bitter", "orange", "--class", "amaro", "--json"}, "/v1/ingredients?q=bitter+orange&class=amaro", ""},
	} {
		code, out, message := try(t, "", c.args...)
		require.Equal(t, terminal.ExitDone, code, message)
		assert.Equal(t, fetch(t, url+c.url, c.body), out)
	}
}

func TestCheckAsJSON(t *testing.T) {
	code, out, _ := try(t, "", "check", "--json")
	require.Equal(t, terminal.ExitDone, code)
	var r report
	require.NoError(t, json.Unmarshal([]byte(out), &r))
	c, err := data.Embedded()
	require.NoError(t, err)
	assert.Equal(t, len(c.Profiles()), r.Ingredients)
	figures, classes := 0, 0
	for _, o := range r.Origins {
		figures += o.Figures
	}
	for _, c := range r.Classes {
		classes += c.Count
	}
	assert.Equal(t, r.Figures, figures)
	assert.Equal(t, r.Ingredients, classes)
	assert.Empty(t, r.Faults)

	code, out, message := try(t, "", "check", t.TempDir(), "--json")
	assert.Equal(t, terminal.ExitInput, code)
	assert.Contains(t, out, "no .toml file")
	assert.Contains(t, message, "faults: 1")
}

// TestCheckFindsFaults copies the catalogue's source, spoils it, and checks it.
func TestCheckFindsFaults(t *testing.T) {
	folder := t.TempDir()
	require.NoError(t, os.CopyFS(folder, os.DirFS("../../data/catalogue")))
	code, out, message := try(t, "", "check", folder)
	require.Equal(t, terminal.ExitDone, code, message)
	assert.Contains(t, out, "is sound")
	gin := filepath.Join(folder, "gin.toml")
	text, err := os.ReadFile(gin)
	require.NoError(t, err)
	spoilt := strings.Replace(string(text), `abv = "`, `abv = "much `, 1)
	require.NoError(t, os.WriteFile(gin, []byte(spoilt), 0o600))
	code, _, message = try(t, "", "check", folder)
	assert.Equal(t, terminal.ExitInput, code)
	assert.Contains(t, message, "gin.toml")
	assert.Contains(t, message, "field abv")
}

// startService starts the program on a free port and returns its address. It is
// stopped at the end of the test, and must stop cleanly.
func startService(t testing.TB) string {
	t.Helper()
	ctx, stop := context.WithCancel(context.Background())
	url, ended := start(ctx, t, shared)
	t.Cleanup(func() {
		stop()
		assert.Equal(t, terminal.ExitDone, <-ended)
	})
	return url
}

// start runs the serve command until ctx ends; its exit code comes over ended.
func start(ctx context.Context, t testing.TB, open premises.Kitchens) (url string, ended chan int) {
	t.Helper()
	lines, w := io.Pipe()
	ended = make(chan int, 1)
	go func() {
		code := runWith(ctx, open, []string{"serve", "--listen", "127.0.0.1:0"}, strings.NewReader(""), w, io.Discard)
		w.Close()
		ended <- code
	}()
	b := make([]byte, 512)
	n, err := lines.Read(b)
	require.NoError(t, err)
	line := string(b[:n])
	_, rest, ok := strings.Cut(line, "counterpour is serving on ")
	require.True(t, ok, line)
	assert.Contains(t, line, "nothing is saved")
	url, _, _ = strings.Cut(rest, " ")
	return url, ended
}

func fetch(t testing.TB, url, body string) string {
	t.Helper()
	var r *http.Response
	var err error
	if body == "" {
		r, err = http.Get(url)
	} else {
		r, err = http.Post(url, "application/json", strings.NewReader(body))
	}
	require.NoError(t, err)
	defer r.Body.Close()
	text, err := io.ReadAll(r.Body)
	require.NoError(t, err)
	require.Equal(t, http.StatusOK, r.StatusCode, string(text))
	return string(text)
}

// TestServeFinishesRequests stops the program while a request is under way:
// the request is answered, and the program ends well.
func TestServeFinishesRequests(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	defer stop()
	url, ended := start(ctx, t, shared)
	assert.Contains(t, fetch(t, url+"/readyz", ""), "ready")
	body, w := io.Pipe()
	// The body is not sent before the server has begun to read it and says so.
	client := http.Client{Transport: &http.Transport{ExpectContinueTimeout: patience}}
	defer client.CloseIdleConnections()
	request, err := http.NewRequest(http.MethodPost, url+"/v1/score", body)
	require.NoError(t, err)
	request.Header.Set("Content-Type", "application/json")
	request.Header.Set("Expect", "100-continue")
	answered := make(chan string, 1)
	go func() {
		r, err := client.Do(request)
		if err != nil {
			answered <- err.Error()
			return
		}
		defer r.Body.Close()
		text, _ := io.ReadAll(r.Body)
		answered <- string(text)
	}()
	_, err = io.WriteString(w, `{"text":"2 oz gin\n`)
	require.NoError(t, err)
	stop()
	require.Eventually(t, func() bool {
		r, err := http.Get(url + "/healthz")
		if err == nil {
			r.Body.Close()
		}
		return err != nil
	}, patience, 10*time.Millisecond, "it listens no more")
	_, err = io.WriteString(w, `3/4 oz lemon juice"}`)
	require.NoError(t, err)
	w.Close()
	assert.Contains(t, <-answered, `"verdict":`)
	assert.Equal(t, terminal.ExitDone, <-ended)
}

func TestServeStopsWhileStarting(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	var out bytes.Buffer
	code := runWith(ctx, embedded, []string{"serve", "--listen", "127.0.0.1:0"}, strings.NewReader(""), &out, io.Discard)
	assert.Equal(t, terminal.ExitDone, code)
	assert.Empty(t, out.String(), "it never answered")
}

func TestServeOnAnOccupiedPort(t *testing.T) {
	url := startService(t)
	code, _, message := try(t, "", "serve", "--listen", strings.TrimPrefix(url, "http://"))
	assert.Equal(t, terminal.ExitFailed, code)
	assert.Contains(t, message, "address already in use")
	assert.Contains(t, message, "--listen")
}

// TestRun runs the program as main does, with a kitchen of its own.
func TestRun(t *testing.T) {
	var out, errOut bytes.Buffer
	code := run([]string{"score"}, strings.NewReader(draft), &out, &errOut)
	assert.Equal(t, terminal.ExitDone, code, errOut.String())
	assert.Contains(t, out.String(), "Halyard Sour")
}

// TestServeBeforeItIsReady asks the program while its kitchen is being built.
func TestServeBeforeItIsReady(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	var out bytes.Buffer
	port, err := pgtest.FreePort()
	require.NoError(t, err)
	listen := fmt.Sprintf("127.0.0.1:%d", port)
	asked := make(chan struct{})
	slow := func(context.Context) (*kitchen.Kitchen, func(), error) {
		assert.Equal(t, http.StatusOK, statusOf(t, "http://"+listen+"/healthz"))
		assert.Equal(t, http.StatusServiceUnavailable, statusOf(t, "http://"+listen+"/readyz"))
		assert.Equal(t, http.StatusServiceUnavailable, statusOf(t, "http://"+listen+"/v1/templates"))
		close(asked)
		stop()
		return nil, nil, ctx.Err()
	}
	assert.Equal(t, terminal.ExitDone, runWith(ctx, slow, []string{"serve", "--listen", listen}, strings.NewReader(""), &out, io.Discard))
	<-asked
	assert.Empty(t, out.String())
}

func statusOf(t *testing.T, url string) int {
	r, err := http.Get(url)
	if !assert.NoError(t, err) {
		return 0
	}
	defer r.Body.Close()
	return r.StatusCode
}

// BenchmarkStart is the time from the command to /readyz.
func BenchmarkStart(b *testing.B) {
	for b.Loop() {
		ctx, stop := context.WithCancel(context.Background())
		url, ended := start(ctx, b, embedded)
		fetch(b, url+"/readyz", "")
		b.StopTimer()
		stop()
		<-ended
		b.StartTimer()
	}
}
