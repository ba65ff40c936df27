package riffs_test

import (
	"html"
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/webui/form"
	"counterpour/webui/riffs"
	"counterpour/webui/webuitest"
)

// pageCase is one request for a page and what must come of it.
type pageCase struct {
	name, method, path string
	form               url.Values
	status             int
	want, not          []string
}

func (c *pageCase) run(t *testing.T, h http.Handler) {
	t.Run(c.name, func(t *testing.T) {
		w := webuitest.Get(h, c.path, "")
		if c.method == http.MethodPost {
			w = webuitest.Post(h, c.path, c.form, false)
		}
		assert.Equal(t, c.status, w.Code)
		said := w.Body.String() + html.UnescapeString(w.Body.String())
		for _, s := range c.want {
			assert.True(t, strings.Contains(said, s), "should hold %q", s)
		}
		for _, s := range c.not {
			assert.False(t, strings.Contains(said, s), "should not hold %q", s)
		}
	})
}

func query(path string, pairs ...string) string {
	v := url.Values{}
	for i := 0; i < len(pairs); i += 2 {
		v.Add(pairs[i], pairs[i+1])
	}
	return form.Link(path, v)
}

func TestRiffsScenarios(t *testing.T) {
	h := webuitest.PagesOf(t, webuitest.PricedHouse(t))
	riffs := func(pairs ...string) string {
		return query("/riffs", append([]string{"text", webuitest.GoodDraft}, pairs...)...)
	}
	for _, c := range []pageCase{
		{name: "nothing yet", path: "/riffs", status: 200, want: []string{"Nothing to riff on yet", "Or riff on a drink of the menu", `aria-current="page">Riffs`, "Use up", webuitest.FootLine}, not: []string{"role=\"alert\""}},
		{name: "a draft in the address", path: riffs(), status: 200,
			want: []string{"2 riffs on Halyard Sour", "<h3>London dry gin, almond syrup: sour, up</h3>\n<p>½\u00a0oz almond syrup for simple syrup. More of it.</p>", "<strong>New allergen: tree nuts</strong>", "1¾ oz London dry gin <span class=\"small\">was 2\u00a0oz",
				"½ oz almond syrup <span class=\"small\">new", "no simple syrup <span class=\"small\">left out", "Scores 91 of 100, sour.", "13.9\u00a0% vol; the draft has 14.5.", "3.6 noticeable steps away.", `<p class="notice">A guest will notice</p>`, "less marzipan",
				"Costs 2.07\u00a0EUR to pour.", "Beside its family", "riff-1-strips-title", "Take to the bench", `name="seed" value="0"`, "name=\"others\" value=\"1\"",
				"Its nearest proven relatives", "Distance 0.25", "An old book, recalled", "Walk to it", "2 drafts that stay out of balance at any amounts"},
			not: []string{"sesame orgeat", "Take care"}},
		{name: "a draft that is sent", method: "POST", path: "/riffs", form: url.Values{"text": {webuitest.GoodDraft}, "avoid": {"tree nuts"}}, status: 200,
			want: []string{"1 riff on Halyard Sour", "For a guest: without tree nuts.", "clove syrup", `value="tree nuts" checked`}, not: []string{"almond", "orgeat"}},
		{name: "another list", path: riffs("seed", "1"), status: 200, want: []string{`name="seed" value="1"`, `value="2"`, `<li id="riff-1">` + "\n<h3>London dry gin, clove syrup"}},
		{name: "others come after the list that is there", path: riffs("seed", "1", "others", "2"), status: 200, want: []string{`name="seed" value="2"`, `<li id="riff-1">` + "\n<h3>London dry gin, almond"}},
		{name: "from the whole catalogue", path: riffs("from", "all"), status: 200, want: []string{"3 riffs on", "sesame orgeat", `value="all" checked`}},
		{name: "one of five", path: riffs("limit", "5"), status: 200, want: []string{`<option value="5" selected>`}},
		{name: "wishes come back as they were chosen", path: riffs("toward", "drier", "toward", "more nut", "toward", "below 12 %", "toward", "no rum", "words", "less sweet; no smoke"), status: 200,
			want: []string{`value="drier" checked`, `<option value="more nut" selected>`, `<option value="below 12 %" selected>`, `value="less sweet, no smoke, no rum"`}},
		{name: "a wish that nothing meets", path: riffs("toward", "longer"), status: 200, want: []string{"No riff on", "No riff meets all of that", "7 drafts in balance, but not meeting a wish"}},
		{name: "a wish that nobody understands", path: riffs("words", "crunchy, nuttier"), status: 422,
			want: []string{`"crunchy" is no wish known here`, `value="crunchy, nuttier"`, `id="wish-says"`, "Halyard Sour\n2 oz gin"}, not: []string{"Take to the bench", "Nothing to riff on"}},
		{name: "wishes at odds", path: riffs("toward", "sweeter", "toward", "drier"), status: 422, want: []string{"cannot both be met", `value="sweeter" checked`, `value="drier" checked`}},
		{name: "a draft with a slip", path: query("/riffs", "text", "2 oz gin\n3/4 oz lemon thing\nshake", "words", "no smoke", "avoid", "eggs"), status: 422,
			want: []string{"Line 2", "3/4 oz lemon thing", "2 oz gin\n3/4 oz lemon juice\nshake\"", `value="no smoke"`, `value="eggs" checked`}, not: []string{"riffs on"}},
		{name: "everything at once", path: query("/riffs", "text", "2 oz gnx", "words", "crunchy", "cost", "much"), status: 422, want: []string{"Line 1", "is no wish", `"much" is no cost`, `value="much"`}},
		{name: "nothing to weigh", path: query("/riffs", "text", "Weightless\n2 oz gin\nstir"), status: 422, want: []string{"nothing in the drink to weigh", "Weightless"}},
		{name: "a cost", path: riffs("cost", "2,50"), status: 200, want: []string{`value="2,50"`}},
		{name: "a cost of nothing", path: riffs("cost", "0"), status: 422, want: []string{"is no cost"}},
		{name: "a drink of the menu", path: riffs("become", "Spindrift\n1 oz gin\n1 oz lemon juice\n1/2 oz orgeat\nshake, up"), status: 200,
			want: []string{"riffs on Spindrift", "Undo the change", `value="` + webuitest.GoodDraft + `"`}},
		{name: "a guest's diet", path: riffs("diet", "vegan", "diet", "no  Egg"), status: 200, want: []string{"For a guest: vegan, no egg.", `value="no egg" checked`}},
		{name: "too slow", path: query("/riffs", "text", "Slow\n2 oz gin\nstir"), status: 503, want: []string{"This took too long", "Slow\n2 oz gin"}},
		{name: "a bar that breaks", path: query("/riffs", "text", "Broken\n2 oz gin\nstir"), status: 500, want: []string{"broke"}},
		{name: "an allergen that nobody knows", path: riffs("avoid", "nutz"), status: 400, want: []string{"could not be read"}},
		{name: "a diet that nobody knows", path: riffs("diet", "moon"), status: 400},
		{name: "a number that is not offered", path: riffs("limit", "1000"), status: 400},
		{name: "a seed that is none", path: riffs("seed", "-1"), status: 400},
		{name: "markup", path: query("/riffs", "text", "<script>alert(1)</script>\n2 oz gin\nstir", "words", `"><script>`), status: 422, want: []string{"&lt;script&gt;"}, not: []string{`"><script>alert`}},
	} {
		if c.name == "markup" {
			w := webuitest.Get(h, c.path, "")
			assert.Equal(t, c.status, w.Code)
			assert.NotContains(t, w.Body.String(), "<script>")
			continue
		}
		c.run(t, h)
	}
}

// A house that has run out of something pours it in no riff.
func TestRiffsPourNothingThatIsOut(t *testing.T) {
	h := webuitest.PricedHouse(t)
	h.Dry = []string{webuitest.Almond.ID}
	body := webuitest.Get(webuitest.PagesOf(t, h), query("/riffs", "text", webuitest.GoodDraft), "").Body.String()
	assert.Contains(t, body, "clove syrup")
	assert.NotContains(t, body, "almond")
	body = webuitest.Get(webuitest.PagesOf(t, h), query("/riffs", "text", webuitest.GoodDraft, "from", "all"), "").Body.String()
	assert.Contains(t, body, "almond", "the whole catalogue does not ask what the house has")
}

// Every list has an address that brings it again, others apart.
func TestRiffsCanBeLinkedTo(t *testing.T) {
	h := webuitest.PagesOf(t, webuitest.PricedHouse(t))
	link := regexp.MustCompile(`href="([^"]*)">Link to this`)
	for _, c := range []struct {
		path string
		form url.Values
	}{
		{"/riffs", url.Values{"text": {webuitest.GoodDraft}, "toward": {"drier", "more nut"}, "words": {"no smoke"}, "avoid": {"eggs"}, "diet": {"vegan"}, "others": {"3"}, "limit": {"5"}, "from": {"all"}, "cost": {"3"}}},
		{"/riffs/use-up", url.Values{"bottle": {webuitest.Almond.ID}, "names": {"clove syrup"}, "unit": {"ml"}, "avoid": {"eggs"}, "seed": {"2"}}},
		{"/riffs/walk", url.Values{"from": {"halyard-sour"}, "to-text": {webuitest.NutDraft}, "steps": {"2"}, "avoid": {"milk"}}},
	} {
		w := webuitest.Post(h, c.path, c.form, false)
		require.Equal(t, http.StatusOK, w.Code, w.Body.String())
		m := link.FindStringSubmatch(w.Body.String())
		require.NotNil(t, m, c.path)
		again := webuitest.Get(h, html.UnescapeString(m[1]), "").Body.String()
		list := func(body string) string { return body[strings.Index(body, `id="list"`):] }
		assert.Equal(t, list(w.Body.String()), list(again), c.path)
	}
}

func TestUseUpScenarios(t *testing.T) {
	h := webuitest.PagesOf(t, webuitest.PricedHouse(t))
	for _, c := range []pageCase{
		{name: "nothing yet", path: "/riffs/use-up", status: 200, want: []string{"No bottle chosen yet", "<summary>Spirits</summary>", `value="falernum"> falernum`, "Measured in"}, not: []string{"No use found"}},
		{name: "two ticked and one written", path: query("/riffs/use-up", "bottle", webuitest.Almond.ID, "bottle", webuitest.Spare.ID, "names", "falernum"), status: 200,
			want: []string{"2 drafts", "Uses some almond syrup", "½ oz almond syrup <span class=\"small\">must move", "Uses some falernum", "No use found for", "<strong>spare bitters.</strong>", "takes enough of it",
				`value="almond-syrup" checked`, "Scores 88 of 100.", "14.1\u00a0% vol, 150\u00a0mL in the glass.", "Take to the bench", `name="seed" value="0"`}, not: []string{"New allergen"}},
		{name: "what is ticked stays through the filter", path: query("/riffs/use-up", "bottle", webuitest.Almond.ID, "filter", "CLOVE"), status: 200,
			want: []string{`value="almond-syrup" checked`, `value="clove-syrup"> clove syrup`, `value="CLOVE"`, "1 draft"}, not: []string{`value="falernum"`}},
		{name: "a filter that lets nothing through", path: query("/riffs/use-up", "filter", "zzz"), status: 200, want: []string{"No bottle has that name", "see all 9"}},
		{name: "for a guest", path: query("/riffs/use-up", "bottle", webuitest.Almond.ID, "bottle", webuitest.Clove.ID, "avoid", "tree nuts"), status: 200,
			want: []string{"1 draft<", "For a guest: without tree nuts.", "<strong>almond syrup.</strong> The guest must not have it", "Uses some clove syrup"}, not: []string{"Uses some almond", "orgeat <span"}},
		{name: "more bottles than drafts", path: query("/riffs/use-up", "bottle", webuitest.Almond.ID, "bottle", webuitest.Clove.ID, "bottle", webuitest.Falernum.ID, "bottle", webuitest.Gin.ID, "bottle", webuitest.Lemon.ID, "bottle", webuitest.Syrup.ID, "limit", "5"), status: 200,
			want: []string{"5 drafts", "others came first; ask for more drafts"}},
		{name: "in millilitres", path: query("/riffs/use-up", "bottle", webuitest.Almond.ID, "unit", "ml"), status: 200, want: []string{"15 mL almond syrup", `<option value="ml" selected>mL`}},
		{name: "names that nobody knows", path: query("/riffs/use-up", "bottle", webuitest.Almond.ID, "names", "moon dust, falernum\nsun dust"), status: 422,
			want: []string{"moon dust", "sun dust", "moon dust, falernum\nsun dust</textarea>", `value="almond-syrup" checked`, `id="names-says"`}, not: []string{"Uses some"}},
		{name: "nothing that finds a use", path: query("/riffs/use-up", "bottle", webuitest.Spare.ID), status: 200, want: []string{"<h2>No draft</h2>", "No draft is in balance", "No use found for"}},
		{name: "too strong", path: query("/riffs/use-up", "bottle", webuitest.Almond.ID, "abv", "12 %"), status: 200, want: []string{"<h2>No draft</h2>", "beyond a limit", `value="12 %"`}},
		{name: "strong enough", path: query("/riffs/use-up", "bottle", webuitest.Almond.ID, "abv", "15"), status: 200, want: []string{"1 draft<"}},
		{name: "stronger than the guest asked for", path: query("/riffs/use-up", "bottle", webuitest.Almond.ID, "strength", "low", "abv", "15"), status: 200, want: []string{"<h2>No draft</h2>", "beyond a limit"}},
		{name: "a strength beyond any", path: query("/riffs/use-up", "bottle", webuitest.Almond.ID, "abv", "120"), status: 422, want: []string{"Write a strength above 0"}, not: []string{"1 draft<"}},
		{name: "a bottle that is not there", path: query("/riffs/use-up", "bottle", "moonshine"), status: 409, want: []string{"Not in stock now: moonshine. Choose from what is there."}},
		{name: "a unit that nobody pours", path: query("/riffs/use-up", "unit", "bucket"), status: 400},
		{name: "an allergen that nobody knows", path: query("/riffs/use-up", "avoid", "nutz"), status: 400},
		{name: "sent", method: "POST", path: "/riffs/use-up", form: url.Values{"bottle": {webuitest.Almond.ID}}, status: 200, want: []string{"1 draft<"}},
	} {
		c.run(t, h)
	}
	out := webuitest.PricedHouse(t)
	out.Dry = []string{webuitest.Falernum.ID}
	assert.NotContains(t, webuitest.Get(webuitest.PagesOf(t, out), "/riffs/use-up", "").Body.String(), `value="falernum"`, "what is out cannot move")
	assert.Contains(t, webuitest.Get(webuitest.PagesOf(t, &webuitest.House{}), "/riffs/use-up", "").Body.String(), "By name", "a house without stock takes names")
}

func TestWalkScenarios(t *testing.T) {
	h := webuitest.PagesOf(t, webuitest.PricedHouse(t))
	for _, c := range []pageCase{
		{name: "nothing yet", path: "/riffs/walk", status: 200, want: []string{"Choose two drinks", `<option value="mainbrace">Mainbrace`, "Drinks between the two"}, not: []string{"g of alcohol"}},
		{name: "two of the menu", path: query("/riffs/walk", "from", "halyard-sour", "to", "mainbrace", "steps", "2"), status: 200,
			// 3 × 60 mL and 40 mL at 20 % vol, 0.789 g/mL
			want: []string{"A walk of 4 drinks", "<h3>Halyard Sour</h3>", "<h3>Between, 1</h3>", "<h3>Mainbrace</h3>", "The first drink.", "2.4 noticeable steps from the one before.",
				"4 pours of 60\u00a0mL are 220\u00a0mL with 35\u00a0g of alcohol.", "2.5 standard drinks of 14\u00a0g (United States)", "not a safe limit", "harms an unborn child", "½ oz falernum <span class=\"small\">new", `<option value="mainbrace" selected>`}},
		{name: "a written one counts", path: query("/riffs/walk", "from", "halyard-sour", "to", "mainbrace", "to-text", "Written\n"+webuitest.NutDraft), status: 200,
			want: []string{"<h3>Written</h3>", "<strong>New allergen: eggs, soybeans, tree nuts</strong>", "Raw egg can carry Salmonella", "Drink 5."}, not: []string{"<h3>Mainbrace</h3>"}},
		{name: "without names", path: query("/riffs/walk", "from", "halyard-sour", "to-text", webuitest.NutDraft, "steps", "1"), status: 200, want: []string{"<h3>The last drink</h3>"}},
		{name: "one end alone", path: query("/riffs/walk", "from", "mainbrace"), status: 200, want: []string{"Choose two drinks", `<option value="mainbrace" selected>`}},
		{name: "a slip at one end", path: query("/riffs/walk", "from", "mainbrace", "to-text", "2 oz gnx"), status: 422, want: []string{"Line 1, “2 oz gnx”", "2 oz gnx</textarea>", `<option value="mainbrace" selected>`}, not: []string{"Choose two drinks"}},
		{name: "for a guest", path: query("/riffs/walk", "from", "halyard-sour", "to", "nutcracker", "avoid", "tree nuts"), status: 422, want: []string{"Orgeat is not for this guest", `value="tree nuts" checked`}, not: []string{"A walk of"}},
		{name: "a label decides", path: query("/riffs/walk", "from", "halyard-sour", "to-text", "2 oz London dry gin\n1 oz unlabelled liqueur\nshake, up", "avoid", "tree nuts"), status: 200,
			want: []string{"Not safe as it stands", "Read the label of unlabelled liqueur", "A walk of"}},
		{name: "a drink and itself", path: query("/riffs/walk", "from", "mainbrace", "to", "mainbrace"), status: 422, want: []string{"ask for fewer"}},
		{name: "weaker than its ends", path: query("/riffs/walk", "from", "halyard-sour", "to", "mainbrace", "abv", "15"), status: 422, want: []string{"stronger than is asked for", `value="15"`}},
		{name: "as weak as its ends", path: query("/riffs/walk", "from", "halyard-sour", "to", "mainbrace", "abv", "20"), status: 200, want: []string{"A walk of 5 drinks", "abv=20"}},
		{name: "no such drink", path: query("/riffs/walk", "from", "nowhere", "to", "mainbrace"), status: 409},
		{name: "too many steps", path: query("/riffs/walk", "steps", "9"), status: 400},
		{name: "weak ones", path: query("/riffs/walk", "from", "halyard-sour", "to", "mainbrace", "abv", "strong", "cost", "x"), status: 422, want: []string{"is not a number; write digits alone, in % vol", "is no cost", `value="strong"`}, not: []string{"Choose two drinks"}},
		{name: "sent", method: "POST", path: "/riffs/walk", form: url.Values{"from": {"halyard-sour"}, "to": {"mainbrace"}}, status: 200, want: []string{"A walk of 5 drinks"}},
	} {
		c.run(t, h)
	}
}

// Who avoids tree nuts reads of nothing made of them in any list.
func TestNoNutsOnAnyPage(t *testing.T) {
	h := webuitest.PagesOf(t, webuitest.PricedHouse(t))
	nuts := "tree nuts"
	for _, path := range []string{
		query("/riffs", "text", webuitest.GoodDraft, "avoid", nuts), query("/riffs", "text", webuitest.GoodDraft, "avoid", nuts, "from", "all"),
		query("/riffs/use-up", "bottle", webuitest.Clove.ID, "bottle", webuitest.Falernum.ID, "avoid", nuts), query("/riffs/walk", "from", "halyard-sour", "to", "mainbrace", "avoid", nuts),
	} {
		w := webuitest.Get(h, path, "")
		require.Equal(t, http.StatusOK, w.Code)
		_, list, _ := strings.Cut(w.Body.String(), `id="list"`)
		list, _, _ = strings.Cut(list, `class="riff-form"`) // which names every bottle of the house
		list = html.UnescapeString(list)
		list = strings.NewReplacer("sesame orgeat", "", "sesame+orgeat", "").Replace(list) // it is made of sesame
		for _, word := range []string{"almond", "orgeat", "Nut Sour"} {
			assert.False(t, strings.Contains(list, word), "%s holds %s", path, word)
		}
		assert.True(t, strings.Contains(list, "avoid=tree"), "the bench is told of the guest: %s", path)
	}
}

// Every wish that the page offers is one that can be read.
func TestOfferedWishesAreKnown(t *testing.T) {
	h := webuitest.PagesOf(t, webuitest.PricedHouse(t))
	for _, p := range riffs.WishPairs {
		for _, w := range p {
			code := webuitest.Get(h, query("/riffs", "text", webuitest.GoodDraft, "toward", w), "").Code
			assert.Equal(t, http.StatusOK, code, w)
		}
	}
	for _, f := range flavor.AromaFamilies() {
		for _, way := range []string{"more ", "less "} {
			assert.Equal(t, http.StatusOK, webuitest.Get(h, query("/riffs", "text", webuitest.GoodDraft, "toward", way+f.ID), "").Code, way+f.ID)
		}
	}
	for _, s := range riffs.Strengths {
		assert.Equal(t, http.StatusOK, webuitest.Get(h, query("/riffs", "text", webuitest.GoodDraft, "toward", s), "").Code, s)
	}
}

// The pages keep to the content policy, have no id twice, load little, and
// their links lead somewhere.
func TestRiffPagesAreSound(t *testing.T) {
	h := webuitest.PagesOf(t, webuitest.PricedHouse(t))
	for _, path := range []string{
		"/riffs", query("/riffs", "text", webuitest.GoodDraft, "from", "all"), query("/riffs", "text", "2 oz gnx", "words", "crunchy", "cost", "x"),
		"/riffs/use-up", query("/riffs/use-up", "bottle", webuitest.Almond.ID, "bottle", webuitest.Spare.ID),
		"/riffs/walk", query("/riffs/walk", "from", "halyard-sour", "to", "nutcracker"),
	} {
		page := webuitest.Get(h, path, "").Body.String()
		seen := map[string]bool{}
		for _, m := range webuitest.Ids.FindAllStringSubmatch(page, -1) {
			assert.False(t, seen[m[1]], "%s: id %q twice", path, m[1])
			seen[m[1]] = true
		}
		weight := len(page)
		for _, m := range webuitest.Links.FindAllStringSubmatch(page, -1) {
			link := html.UnescapeString(m[1])
			if id, ok := strings.CutPrefix(link, "#"); ok {
				assert.True(t, seen[id], "%s: %s", path, link)
				continue
			}
			link, _, _ = strings.Cut(link, "#")
			w := webuitest.Get(h, link, "")
			assert.Equal(t, http.StatusOK, w.Code, "%s: %s", path, link)
			if strings.HasPrefix(link, "/static/") {
				weight += w.Body.Len()
			}
		}
		assert.Less(t, weight, webuitest.MaxLoad, path)
	}
}

// A walk through a drink whose bottle is out says which drinks lack it and what stands in; a
// guest is not poured what must not be there.
func TestAWalkSaysWhatIsOut(t *testing.T) {
	h := webuitest.NewHouse()
	h.Dry = []string{"falernum"}
	w := webuitest.Get(webuitest.PagesOf(t, h), "/riffs/walk?from=halyard-sour&to=mainbrace&steps=2", "")
	webuitest.Says(t, w, []string{"A walk of", "drinks lack", "a bottle that is out", "falernum is out. Instead: "}, nil)
	w = webuitest.Get(webuitest.PagesOf(t, h), "/riffs/walk?from=halyard-sour&to=mainbrace&steps=2&avoid=tree+nuts", "")
	webuitest.Says(t, w, []string{"falernum is out"}, []string{"½ oz almond", "orgeat"})
	w = webuitest.Get(webuitest.PagesOf(t, h), "/riffs/walk?from=halyard-sour&to=mainbrace&steps=2", "")
	webuitest.Says(t, w, []string{"New allergen: tree nuts"}, nil)
	h.Dry = nil
	w = webuitest.Get(webuitest.PagesOf(t, h), "/riffs/walk?from=halyard-sour&to=mainbrace&steps=2", "")
	webuitest.Says(t, w, []string{"A walk of"}, []string{"is out"})
}

// The ways between the pages of riffs, and out of them, lead on for the guest.
func TestWaysFromRiffsKeepTheGuest(t *testing.T) {
	for _, path := range []string{"/riffs", "/riffs/use-up", "/riffs/walk"} {
		body := webuitest.Get(webuitest.PagesOf(t, webuitest.NewHouse()), path+"?avoid=milk&diet=vegan", "").Body.String()
		for _, to := range []string{"/", "/tonight", "/board", "/riffs", "/riffs/use-up", "/riffs/walk"} {
			assert.Contains(t, body, `href="`+to+`?avoid=milk&amp;diet=vegan"`, path)
		}
	}
}

// What is left of a bottle may be written beside its name, and each draft says how many that
// makes.
func TestUseUpTakesWhatIsLeft(t *testing.T) {
	for _, names := range []string{"300 mL falernum", "falernum: 300 ml", "300 falernum", "half a bottle of falernum"} {
		w := webuitest.Get(webuitest.PagesOf(t, webuitest.NewHouse()), "/riffs/use-up?names="+url.QueryEscape(names), "")
		webuitest.Says(t, w, []string{"mL of falernum makes "}, []string{"Unknown ingredient"})
	}
}
