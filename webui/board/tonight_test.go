package board_test

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/flavor/measure"
	"counterpour/webui/webuitest"
)

func TestTonightScenarios(t *testing.T) {
	for _, c := range []struct {
		name   string
		out    []string
		path   string
		status int
		want   []string
		not    []string
	}{
		{name: "the first page of a house", path: "/", status: 200, want: []string{"<title>Tonight", "4 ready, 0 with a cover, 0 missing something.", `<span class="word">Ready</span>`},
			not: []string{"is in stock"}},
		{name: "the first page for a guest", path: "/?avoid=milk&diet=vegan&strength=low", status: 200, want: []string{"<title>Tonight", "For a guest: <strong>vegan, without milk"}},
		{name: "a spec in the old address of the bench", path: "/?spec=mainbrace&avoid=milk", status: 200, want: []string{"<title>The bench"}},
		{name: "a draft in the old address of the bench", path: "/?text=2+oz+gin", status: 200, want: []string{"<title>The bench"}, not: []string{"<title>Tonight"}},
		{name: "a bottle is out", out: []string{"falernum"}, path: "/tonight", status: 200,
			want: []string{"2 ready, 2 with a cover", "falernum is out", `<span class="word">With a cover</span>`, "½ oz almond syrup", "New allergen: tree nuts", `<span class="for">For falernum.</span> A guest may notice.`}},
		{name: "a drink with a cover lists what is poured now", out: []string{"falernum"}, path: "/tonight", status: 200,
			want: []string{`value="almond-syrup" data-bottle="almond syrup" aria-label="½ oz almond syrup instead, ran out">½ oz almond syrup <span class="small">instead</span></button>`, "<s>½ oz falernum</s>"}},
		{name: "what is in a drink as it is poured now", out: []string{"falernum"}, path: "/tonight?q=mainbrace", status: 200,
			want: []string{`<p class="carries">Contains tree nuts.</p>`}},
		{name: "what is in a drink as it is written", path: "/tonight?q=halyard", status: 200, want: []string{`<p class="carries">No allergen is recorded; read the labels.</p>`}},
		{name: "nothing is said of what nobody can pour", out: []string{"london-dry-gin"}, path: "/tonight", status: 200, not: []string{`class="carries"`}},
		{name: "a guest who must not have nuts", out: []string{"falernum"}, path: "/tonight?avoid=tree+nuts", status: 200,
			want: []string{"½ oz clove syrup", "Not for this guest: 1", "orgeat contains tree nuts", "wash the tins", `type="hidden" name="avoid" value="tree nuts"`},
			not:  []string{"almond"}},
		{name: "a guest's way leads on for that guest", path: "/tonight?avoid=milk&diet=vegan", status: 200,
			want: []string{`href="/specs/halyard-sour?avoid=milk&amp;diet=vegan"`, `<li><a href="/board?avoid=milk&amp;diet=vegan">Cover board</a>`, `<li><a href="/riffs?avoid=milk&amp;diet=vegan">Riffs</a>`, `<p class="mark"><a href="/?avoid=milk&amp;diet=vegan">`, `<li><a href="/tonight?avoid=milk&amp;diet=vegan" aria-current="page">Tonight</a>`, `<a href="/tonight">Show for everyone</a>`}},
		{name: "nothing covers gin", out: []string{"london-dry-gin"}, path: "/tonight", status: 200,
			want: []string{"0 ready, 0 with a cover, 4 missing", "Missing London dry gin", "Needs one bottle: London dry gin.", "Nothing on the menu can be poured", `href="/start#bottles"`}},
		{name: "something can be poured", out: []string{"falernum"}, path: "/tonight", status: 200, not: []string{"Nothing on the menu can be poured"}},
		{name: "a drink can do without what is out", out: []string{"falernum"}, path: "/tonight", status: 200,
			want: []string{"Or pour it without falernum. A guest may notice; it scores 71."}, not: []string{"Nothing here keeps this drink"}},
		{name: "nothing keeps a drink, and another is near", out: []string{"orgeat"}, path: "/tonight", status: 200,
			want: []string{`Nothing here keeps this drink. Nearest on the menu: <a href="/specs/halyard-sour">Halyard Sour</a>.`, "Missing orgeat"}},
		{name: "a drink that cannot be poured is not offered", out: []string{"orgeat", "simple-syrup"}, path: "/tonight", status: 200, not: []string{"Nearest on the menu"}},
		{name: "what else goes for a guest", out: []string{"falernum"}, path: "/tonight?diet=alcohol-free", status: 200, want: []string{"For this guest leave out London dry gin", "<s>2 oz London dry gin</s>"}},
		{name: "a limit that is none", path: "/tonight?strength=0", status: 400, want: []string{"&#34;0&#34; is no limit on strength; write 0.5 to 80 % vol"}},
		{name: "strength for a guest with a limit", path: "/tonight?strength=low", status: 200, want: []string{"14.5\u00a0% vol"}},
		{name: "no strength for anybody", path: "/tonight", status: 200, not: []string{"% vol</li>"}},
		{name: "only what is ready", out: []string{"falernum"}, path: "/tonight?show=ready", status: 200, want: []string{"Halyard Sour"}, not: []string{"Mainbrace"}},
		{name: "one bottle away", out: []string{"falernum"}, path: "/tonight?show=away", status: 200, want: []string{"Mainbrace"}, not: []string{"Halyard Sour"}},
		{name: "a guest who drinks no alcohol", path: "/tonight?strength=none", status: 200, want: []string{"For a guest: <strong>alcohol-free (at most 0.5 % vol)</strong>", "Not for this guest: 4", "holds 40 % vol of alcohol", "0 ready"}},
		{name: "a drink that is asked for", out: []string{"falernum"}, path: "/tonight?q=halyard", status: 200,
			want: []string{"1 of 4 drinks with “halyard”.", `<a href="/tonight">Show all</a>`, `type="hidden" name="q" value="halyard"`, "<strong>4</strong> All", ">1 out<"}, not: []string{"Mainbrace"}},
		{name: "a pour that is asked for", path: "/tonight?q=orgeat", status: 200, not: []string{"Halyard Sour"}},
		{name: "a drink that is asked for and not for this guest", path: "/tonight?avoid=tree+nuts&q=orgeat", status: 200,
			want: []string{", 1 of them not for this guest.", `id="not-for" open`, "orgeat contains tree nuts", `<a href="/tonight?avoid=tree&#43;nuts">Show all</a>`}},
		{name: "a word that no drink has", path: "/tonight?q=zorble", status: 200, want: []string{"0 of 4 drinks with “zorble”.", "“zorble” may be the name on a bottle", `<a href="/stock?words=zorble#own-words">Say what it is</a>`}},
		{name: "a bottle that ran out is typed", path: "/tonight?q=falernum", status: 200,
			want: []string{`<span class="bottle">falernum <span class="small">in 2 drinks</span></span><button type="submit" name="out" value="falernum" data-bottle="falernum" aria-label="falernum ran out">Ran out</button>`}},
		{name: "a bottle that is out already", out: []string{"falernum"}, path: "/tonight?q=falernum", status: 200, not: []string{"falernum ran out"}},
		{name: "a slip of a pour", path: "/tonight?q=falernmu", status: 200, want: []string{`Did you mean <a href="/tonight?q=falernum">falernum</a>?`}, not: []string{"may be the name on a bottle"}},
		{name: "what no drink pours", path: "/tonight?q=almond+syrup", status: 200, want: []string{"No drink of the menu pours almond syrup."}, not: []string{"Did you mean", "may be the name on a bottle"}},
		{name: "a taste that no drink has", path: "/tonight?q=smoky", status: 200, want: []string{"No drink of the menu is plainly smoky."}, not: []string{"Did you mean", "may be the name on a bottle"}},
		{name: "more words than a name has", path: "/tonight?q=" + strings.Repeat("a", 401), status: 400, want: []string{"could not be read"}},
		{name: "the way to the sheet for the wall", path: "/tonight?avoid=milk", status: 200, want: []string{`<a href="/tonight/wall?avoid=milk">For the wall</a>`}},
		{name: "a sheet for the wall", out: []string{"falernum"}, path: "/tonight/wall", status: 200,
			want: []string{"Out: falernum.", `<strong><span class="amount">½ oz</span> almond syrup</strong> (instead)`, "<s>falernum</s> A guest may notice.", "New allergen: tree nuts", "Contains tree nuts.", `<span class="amount">2 oz</span> London dry gin`, `id="wall-ready"`, " UTC</time>"},
			not:  []string{"½ oz falernum", "½ oz</span> falernum", `id="wall-missing"`, "<details", `name="out"`}},
		{name: "a sheet of a guest", out: []string{"falernum"}, path: "/tonight/wall?avoid=tree+nuts", status: 200,
			want: []string{"For a guest: <strong>", "Not for this guest <span", "orgeat contains tree nuts", `href="/tonight?avoid=tree&#43;nuts">Tonight</a>`}, not: []string{"almond"}},
		{name: "a sheet with nothing to pour", out: []string{"london-dry-gin"}, path: "/tonight/wall", status: 200, want: []string{"Missing London dry gin.", "Needs one bottle: London dry gin."}, not: []string{"2 oz"}},
		{name: "a sheet for a guest who may have none of it", path: "/tonight/wall?strength=none", status: 200, want: []string{"no drink of the menu is for this guest"}},
		{name: "a sheet for whom nobody knows", path: "/tonight/wall?avoid=nutz", status: 400, want: []string{"could not be read"}},
		{name: "an allergen that is not known", path: "/tonight?avoid=nutz", status: 400, want: []string{"could not be read"}},
		{name: "a list that is not known", path: "/tonight?show=some", status: 400, want: []string{"could not be read"}},
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

// A pour that is tapped is out at once, its drinks come first, and the button
// beside it takes the mark back.
func TestTonightTakesMarks(t *testing.T) {
	h := webuitest.NewHouse()
	p := webuitest.PagesOf(t, h)
	w := webuitest.Post(p, "/tonight", url.Values{"out": {"falernum"}, "avoid": {"eggs"}}, false)
	assert.Equal(t, http.StatusSeeOther, w.Code)
	assert.Equal(t, "/tonight?avoid=eggs", w.Header().Get("Location"))
	body := webuitest.Post(p, "/tonight", url.Values{"out": {"falernum"}}, true).Body.String()
	assert.Less(t, strings.Index(body, "Mainbrace"), strings.Index(body, "Halyard Sour"))
	body = webuitest.Post(p, "/tonight", url.Values{"back": {"falernum"}}, true).Body.String()
	assert.Contains(t, body, "4 ready")
}

// A house that measures in millilitres reads tonight and the board in them, covers too.
func TestTonightInTheUnitsOfTheHouse(t *testing.T) {
	h := webuitest.NewHouse()
	h.Dry = []string{"falernum"}
	_, err := h.Store().Write(t.Context(), webuitest.Opening, house.Put(house.Settings{Units: measure.Metric}, 0))
	require.NoError(t, err)
	pages := webuitest.PagesOf(t, h)
	for _, path := range []string{"/tonight", "/board"} {
		webuitest.Says(t, webuitest.Get(pages, path, ""), []string{"15 mL almond syrup"}, []string{" oz "})
	}
	webuitest.Says(t, webuitest.Get(pages, "/tonight", ""), []string{"60 mL London dry gin", "lemon juice to 22.5\u00a0mL"}, nil)
}

// A garnish that the guest must not have is told of once, as what is left out.
func TestTonightTellsOnceOfAGarnishLeftOut(t *testing.T) {
	h := webuitest.NewHouse()
	_, err := h.Store().Write(t.Context(), webuitest.Opening, house.Put(house.Spec{ID: "praline", Name: "Praline", Method: "shake", Service: "up", Garnish: "crushed almonds",
		Pours: []house.Pour{{Ingredient: "london-dry-gin", Amount: 2, Unit: "oz"}, {Ingredient: "lemon-juice", Amount: 1, Unit: "oz"}}}, 0))
	require.NoError(t, err)
	p := webuitest.PagesOf(t, h)
	for _, path := range []string{"/tonight?avoid=tree+nuts", "/tonight/wall?avoid=tree+nuts"} {
		webuitest.Says(t, webuitest.Get(p, path, ""), []string{"For this guest leave out garnish: crushed almonds."}, []string{"pour it without garnish"})
	}
}

// Rim and garnish stand on the card, since they are what is forgotten at the pass.
func TestTonightTellsTheRim(t *testing.T) {
	h := webuitest.NewHouse()
	_, err := h.Store().Write(t.Context(), webuitest.Opening, house.Put(house.Spec{ID: "brine", Name: "Brine", Method: "shake", Service: "rocks", Rim: "salt", Garnish: "a lime wheel",
		Pours: []house.Pour{{Ingredient: "london-dry-gin", Amount: 2, Unit: "oz"}, {Ingredient: "lemon-juice", Amount: 1, Unit: "oz"}}}, 0))
	require.NoError(t, err)
	webuitest.Says(t, webuitest.Get(webuitest.PagesOf(t, h), "/tonight", ""), []string{"shake, rocks · a lime wheel · rim of salt"}, nil)
}

// Tonight and the board say why nothing stands in for what is out.
func TestWhyADrinkHasNoCover(t *testing.T) {
	h := webuitest.NewHouse()
	h.Dry = []string{"london-dry-gin"}
	pages := webuitest.PagesOf(t, h)
	for _, path := range []string{"/tonight", "/board"} {
		webuitest.Tells(t, webuitest.Get(pages, path, ""), 200, `class="plain barred"`, "at hand")
	}
}
