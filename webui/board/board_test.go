package board_test

import (
	"bufio"
	"context"
	"html"
	"net/http"
	"net/http/httptest"
	"net/url"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/service/marking"
	"counterpour/data/house"
	"counterpour/webui/webuitest"
)

func TestBoardScenarios(t *testing.T) {
	for _, c := range []struct {
		name   string
		out    []string
		path   string
		status int
		want   []string
		not    []string
	}{
		{name: "nothing is out", path: "/board", status: 200,
			want: []string{"Nothing is out", "What ran out?", `name="out" value="falernum"`, "Ran out: falernum, in 2 drinks", "Spirits", webuitest.FootLine, `class="on-board"`, `content="dark"`},
			not:  []string{"Pour this instead", "is in stock", "spare bitters"}},
		{name: "falernum is out", out: []string{"falernum"}, path: "/board", status: 200,
			want: []string{"Pour this instead", "<h3>Mainbrace</h3>", "<h3>Spindrift</h3>", "½ oz almond syrup", "and lemon juice to ¾\u00a0oz", "New allergen: tree nuts",
				"<details id=\"full-mainbrace\"", "½\u00a0oz clove syrup, lemon juice to ¾\u00a0oz (A guest may notice)", "falernum</strong> makes 2 drinks complete again",
				"clove syrup</strong> for 2 drinks", `name="back" value="falernum"`, "tree nuts (almond syrup)</span>", "2 drinks are touched; 0 have no cover."},
			not: []string{"<h3>Halyard Sour</h3>", `name="out" value="falernum"`, "No cover"}},
		{name: "what is poured instead can run out too", out: []string{"falernum"}, path: "/board?avoid=tree+nuts", status: 200,
			want: []string{`<li><a href="#shelf-instead">Instead</a></li>`, "Poured instead tonight", `aria-label="Ran out: clove syrup, poured instead in 2 drinks"`}, not: []string{"Ran out: spare bitters"}},
		{name: "a guest who must not have nuts", out: []string{"falernum"}, path: "/board?avoid=tree+nuts", status: 200,
			want: []string{"For a guest: <strong>without tree nuts", "½ oz clove syrup", "Not shown: 1 of the menu", `value="tree nuts" checked`,
				`type="hidden" name="avoid" value="tree nuts"`, `href="/specs?avoid=tree&#43;nuts"`},
			not: []string{"almond", "orgeat", "New allergen"}},
		{name: "nothing covers gin", out: []string{"london-dry-gin"}, path: "/board", status: 200,
			want: []string{"No cover. Offer another drink.", `class="lost"`, "4 drinks are touched; 4 have no cover."}, not: []string{"<details id=\"full-"}},
		{name: "a drink can do without what is out", out: []string{"falernum"}, path: "/board", status: 200,
			want: []string{"Or pour it without falernum. A guest may notice; it scores 71."}, not: []string{"Nothing here keeps this drink"}},
		{name: "nothing keeps a drink, and another is near", out: []string{"orgeat"}, path: "/board", status: 200,
			want: []string{`Nearest on the menu: <a href="/specs/halyard-sour">Halyard Sour</a>.`}, not: []string{"Offer another drink"}},
		{name: "drinks without a cover come first", out: []string{"falernum", "orgeat"}, path: "/board", status: 200, want: []string{"out of orgeat"}},
		{name: "a guest's way leads on for that guest", path: "/board?avoid=tree+nuts", status: 200,
			want: []string{`<li><a href="/tonight?avoid=tree&#43;nuts">Tonight</a>`, `<li><a href="/specs?avoid=tree&#43;nuts">Specs</a>`, `<li><a href="/map">Map</a>`, "Show for everyone"}},
		{name: "something that no drink needs", out: []string{"spare-bitters"}, path: "/board", status: 200,
			want: []string{"No drink needs it", "None of the 4 drinks", "in no drink of the menu"}, not: []string{"Which bottle to fetch"}},
		{name: "an allergen that is not known", path: "/board?avoid=nutz", status: 400, want: []string{"could not be read"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			h := webuitest.NewHouse()
			h.Dry = c.out
			w := webuitest.Get(webuitest.PagesOf(t, h), c.path, "")
			assert.Equal(t, c.status, w.Code)
			for _, s := range c.want {
				assert.True(t, strings.Contains(w.Body.String(), s), "should hold %q", s)
			}
			for _, s := range c.not {
				assert.False(t, strings.Contains(w.Body.String(), s), "should not hold %q", s)
			}
		})
	}
}

func TestBoardOrder(t *testing.T) {
	h := webuitest.NewHouse()
	h.Dry = []string{"falernum", "orgeat"}
	body := webuitest.Get(webuitest.PagesOf(t, h), "/board", "").Body.String()
	assert.Less(t, strings.Index(body, "<h3>Nutcracker"), strings.Index(body, "<h3>Mainbrace"), "without a cover first")
	full := body[strings.Index(body, `id="full-mainbrace"`):]
	assert.Less(t, strings.Index(full, "Contains</strong>"), strings.Index(full, `class="build"`), "allergens before pours")
}

func TestAnEmptyHouse(t *testing.T) {
	pages := webuitest.PagesOf(t, &webuitest.House{})
	for path, want := range map[string]string{"/board": "There is no menu yet", "/specs": "No specs yet", "/specs/print": "nothing to print", "/map": "Too little stock for a map"} {
		w := webuitest.Get(pages, path, "")
		assert.Equal(t, http.StatusOK, w.Code, path)
		assert.Contains(t, w.Body.String(), want, path)
	}
}

func TestMarking(t *testing.T) {
	h := webuitest.NewHouse()
	pages := webuitest.PagesOf(t, h)

	w := webuitest.Post(pages, "/board", url.Values{"out": {"falernum"}, "avoid": {"tree nuts", "milk"}}, false)
	assert.Equal(t, http.StatusSeeOther, w.Code)
	assert.Equal(t, "/board?avoid=tree+nuts&avoid=milk#drinks", w.Header().Get("Location"))
	assert.Equal(t, []string{"falernum"}, h.Dry)

	w = webuitest.Post(pages, "/board", url.Values{"out": {"orgeat"}}, true)
	assert.Equal(t, http.StatusOK, w.Code)
	assert.Contains(t, w.Body.String(), "out of orgeat")
	assert.NotContains(t, w.Body.String(), "<!doctype")

	w = webuitest.Post(pages, "/board", url.Values{"back": {"orgeat"}}, false)
	assert.Equal(t, "/board?again=orgeat#out-now", w.Header().Get("Location"))
	assert.Equal(t, []string{"falernum"}, h.Dry)

	w = webuitest.Post(pages, "/board", url.Values{"avoid": {"milk"}}, false)
	assert.Equal(t, "/board?avoid=milk#drinks", w.Header().Get("Location"), "a form that marks nothing changes nothing")
	assert.Equal(t, []string{"falernum"}, h.Dry)

	w = webuitest.Post(pages, "/board", url.Values{"out": {"moonshine"}}, false)
	assert.Equal(t, http.StatusConflict, w.Code)
	assert.Contains(t, w.Body.String(), "The house does not have that")
}

// How a cover was received is kept, as it was served, and shifts the lists.
func TestTellingHowACoverWasReceived(t *testing.T) {
	h := webuitest.NewHouse()
	h.Dry = []string{"falernum"}
	pages := webuitest.PagesOf(t, h)

	body := webuitest.Get(pages, "/board", "").Body.String()
	button := regexp.MustCompile(`name="returned" value="([^"]+)"`).FindStringSubmatch(body)
	require.NotNil(t, button)
	version := regexp.MustCompile(`data-version="([^"]+)"`)
	before := version.FindString(body)

	w := webuitest.Post(pages, "/board", url.Values{"returned": {html.UnescapeString(button[1])}}, true)
	assert.Equal(t, http.StatusOK, w.Code)
	assert.Contains(t, w.Body.String(), "Noted: it was sent back.")
	assert.NotEqual(t, before, version.FindString(w.Body.String()), "other screens look again")
	covers, err := house.All[house.ServedCover](t.Context(), h.Store())
	require.NoError(t, err)
	require.Len(t, covers, 1)
	got := covers[0].Item
	assert.Equal(t, house.ReceptionSentBack, got.Reception)
	assert.Equal(t, "falernum", got.Missing)
	assert.Equal(t, int64(1), got.SpecVersion)
	assert.Equal(t, "almond-syrup", got.Served[2].Ingredient)

	undo := regexp.MustCompile(`name="forget" value="([^"]+)"`).FindStringSubmatch(w.Body.String())
	require.NotNil(t, undo, "what was noted can be taken back")
	mark := html.UnescapeString(undo[1])
	w = webuitest.Post(pages, "/board", url.Values{"forget": {mark}}, true)
	assert.Equal(t, http.StatusOK, w.Code)
	assert.Contains(t, w.Body.String(), "Undone: the note is deleted.")
	covers, err = house.All[house.ServedCover](t.Context(), h.Store())
	require.NoError(t, err)
	assert.Empty(t, covers)
	assert.Equal(t, http.StatusConflict, webuitest.Post(pages, "/board", url.Values{"forget": {mark}}, true).Code, "once")
	assert.Equal(t, http.StatusBadRequest, webuitest.Post(pages, "/board", url.Values{"forget": {"spec 1 mainbrace"}}, true).Code, "nothing else")

	for _, bad := range []string{"", "spec=mainbrace", "spec=nothing&missing=falernum&served=2+oz+gin%0Abuild", "%zz"} {
		w := webuitest.Post(pages, "/board", url.Values{"kept": {bad}}, false)
		assert.GreaterOrEqual(t, w.Code, 400, bad)
		assert.Less(t, w.Code, 500, bad)
	}
}

// readEvent reads the data of the next event of a stream.
func readEvent(t *testing.T, lines *bufio.Scanner) string {
	t.Helper()
	for lines.Scan() {
		if data, ok := strings.CutPrefix(lines.Text(), "data: "); ok {
			return data
		}
	}
	require.Fail(t, "the stream ended")
	return ""
}

// The stream outlives the time that a server gives an answer, tells every
// change, and lets go when the reader leaves.
func TestBoardEvents(t *testing.T) {
	h := webuitest.NewHouse()
	server := httptest.NewUnstartedServer(webuitest.PagesOf(t, h))
	const limit = time.Second // of an answer; long enough for a busy machine to begin one
	server.Config.WriteTimeout, server.Config.ReadTimeout = limit, limit
	server.Start()
	defer server.Close()
	ctx, leave := context.WithCancel(t.Context())
	defer leave()
	r, err := http.NewRequestWithContext(ctx, http.MethodGet, server.URL+"/board/events", nil)
	require.NoError(t, err)
	answer, err := http.DefaultClient.Do(r)
	require.NoError(t, err)
	defer answer.Body.Close()
	assert.Equal(t, "text/event-stream", answer.Header.Get("Content-Type"))

	lines := bufio.NewScanner(answer.Body)
	first := readEvent(t, lines)
	time.Sleep(limit + limit/4)
	require.NoError(t, h.Mark(ctx, house.By{}, marking.Request{Out: []string{"falernum"}}))
	second := readEvent(t, lines)
	assert.NotEqual(t, first, second)
	require.NoError(t, h.Mark(ctx, house.By{}, marking.Request{Back: []string{"falernum"}}))
	assert.Equal(t, first, readEvent(t, lines), "the same state has the same version")

	leave()
	assert.Eventually(t, func() bool { return h.Listeners() == 0 }, webuitest.Patience, 20*time.Millisecond, "no listener stays behind")
}

// Who opens the line of a house whose store does not answer is told so.
func TestBoardEventsOfAnOldHouse(t *testing.T) {
	h := webuitest.NewHouse()
	h.Old = true
	ctx, leave := context.WithCancel(t.Context())
	defer leave()
	server := httptest.NewServer(webuitest.PagesOf(t, h))
	defer server.Close()
	r, err := http.NewRequestWithContext(ctx, http.MethodGet, server.URL+"/board/events", nil)
	require.NoError(t, err)
	answer, err := http.DefaultClient.Do(r)
	require.NoError(t, err)
	defer answer.Body.Close()
	var events []string
	for lines := bufio.NewScanner(answer.Body); len(events) < 2 && lines.Scan(); {
		if event, ok := strings.CutPrefix(lines.Text(), "event: "); ok {
			events = append(events, event)
		}
	}
	assert.Equal(t, []string{"board", "stale"}, events)
}

// One form makes so many marks and no more, and none of them then.
func TestAFormOfTooManyMarks(t *testing.T) {
	h := webuitest.NewHouse()
	w := webuitest.Post(webuitest.PagesOf(t, h), "/board", url.Values{"out": strings.Split(strings.Repeat("falernum ", 201), " ")}, false)
	assert.Equal(t, http.StatusRequestEntityTooLarge, w.Code)
	assert.Contains(t, w.Body.String(), "too much at once")
	assert.Empty(t, h.Dry)
}
