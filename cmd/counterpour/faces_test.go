package main

import (
	"encoding/json"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/spf13/cobra"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/service"
)

// asked is one thing that can be asked of a house: the methods of the centre that answer it,
// and where each face asks it. A face that does not ask it says why not.
type asked struct {
	what, methods, route, page, command string
	why                                 string // empty if all three faces ask it
}

// faces is everything that can be asked. Several of one kind are parted by blanks.
var faces = []asked{
	{what: "score a draft", methods: "Score", route: "score", page: "/bench /bench/share /tools /names", command: "score"},
	{what: "cover what is missing", methods: "Cover", route: "cover", page: "/bench", command: "cover"},
	{what: "cover a whole menu", methods: "Outs", route: "outs", page: "/board /board/events", command: "outs"},
	{what: "look ahead before service", methods: "Coverage", route: "coverage", page: "/tonight/ahead", command: "outs"},
	{what: "what can be poured now", methods: "Tonight", route: "tonight", page: "/tonight /tonight/wall", command: "tonight"},
	{what: "a flight of several drinks", methods: "TonightFlight", route: "tonight-flight", page: "/tonight/flight", command: "tonight flight"},
	{what: "riff on a draft", methods: "Riff", route: "riff", page: "/riffs", command: "riff"},
	{what: "use bottles up", methods: "UseUp", route: "use-up", page: "/riffs/use-up", command: "use-up"},
	{what: "walk between drinks", methods: "Walk", route: "walk", page: "/riffs/walk", command: "walk"},
	{what: "what drinks cost", methods: "Cost", route: "cost", page: "/costs", command: "house cost"},
	{what: "plan a batch", methods: "Batch", route: "batch", page: "/specs/{slug}/batch", command: "house batch"},
	{what: "drinks that are right", methods: "Palate Right", route: "get-palate mark-right", page: "/specs/{slug}", command: "house right"},
	{what: "what ran out", methods: "Mark", route: "get-marks mark", page: "/board /tonight /stock/mark", command: "house mark"},
	{what: "how covers were received", methods: "Taste", route: "get-tastings note-tasting", page: "/board", command: "house tasted"},
	{what: "words of the house", methods: "Name Names", route: "get-names name", page: "/stock/words", command: "house name"},
	{what: "find ingredients", methods: "Find Ingredient", route: "find-ingredients get-ingredient", page: "/stock /stock/bottle", command: "find"},
	{what: "how alike things smell", methods: "Likeness", route: "likeness", page: "/map", command: "likeness"},
	{what: "families, and the card of one", methods: "StarterCard", route: "get-templates get-card", page: "/training/starter", command: "card"},
	{what: "a training round", methods: "Round RoundAgain Grade", route: "round grade", page: "/training", command: "drill"},
	{what: "a flight of one drink", methods: "FlightOf", route: "flight", page: "/training/flight", command: "flight"},
	{what: "a triangle test", methods: "Triangle", route: "triangle", page: "/training/triangle", command: "triangle"},
	{what: "how training went", page: "/training/progress", why: "it is about people: only they and their lead see it, signed in"},
	{what: "keep specs and stock", methods: "FindDrinks Store", page: "/specs /specs/import /specs/export /specs/print /menu /specs/{slug}/card /card /stock/import /stock/order /stock/stock.csv /stock/label /stock/made /stock/undo /undo /start", command: "house import house export",
		why: "a script keeps a house through files, so that it is read back as a person would check it"},
	{what: "how the house is set up", page: "/stock/house /login", command: "house passcode house token", why: "the file of passcodes is on the server alone"},
	{what: "keep the file of a house", methods: "Ready Age Listeners", route: "health ready metrics openapi", command: "serve check version calibrate house backup house restore house check",
		why: "whoever runs the program does it where the file is"},
}

// within are methods of the centre that nobody asks by themselves: parts of what is asked above.
var within = strings.Fields(`AllCautions BarredFrom Beside Bottles Card Catalogue Cautions CautionsOf Changes Close Contrast Drink Drinks Flight For HangUp
	InStock Known Look MeaningsOf Mend NameOf Named Nearest Now Others Poured ProvenCalled Ranges Read ReadFields ReadPart ReadRest ReadText
	Remedies Starters StockList Usual UsualML Admitting`)

// What one face can ask, all three can, or the row says why not; and every method of the
// centre, route, page and command stands in a row.
func TestEveryFaceAsksTheSame(t *testing.T) {
	var doc struct {
		Paths map[string]map[string]struct{ OperationID string }
	}
	require.NoError(t, json.Unmarshal([]byte(fetch(t, startService(t)+"/openapi.json", "")), &doc))
	var routes []string
	for _, path := range doc.Paths {
		for _, op := range path {
			routes = append(routes, op.OperationID)
		}
	}
	var methods []string
	for _, of := range []reflect.Type{reflect.TypeFor[*service.Snapshot](), reflect.TypeFor[*service.Venue]()} {
		for i := range of.NumMethod() {
			if name := of.Method(i).Name; !slices.Contains(within, name) {
				methods = append(methods, name)
			}
		}
	}
	var commands []string
	commandsUnder(newRoot(shared), "", &commands)
	for _, face := range []struct {
		name  string
		there []string
		said  func(a *asked) string
	}{
		{"method", methods, func(a *asked) string { return a.methods }},
		{"route", routes, func(a *asked) string { return a.route }},
		{"page", pagesServed(t), func(a *asked) string { return a.page }},
		{"command", commands, func(a *asked) string { return a.command }},
	} {
		var said []string
		for i := range faces {
			said = append(said, namedIn(face.said(&faces[i]), face.there)...)
		}
		slices.Sort(said)
		slices.Sort(face.there)
		assert.Equal(t, slices.Compact(face.there), slices.Compact(said), "every %s stands in a row of faces, and no other", face.name)
	}
	for i := range faces {
		a := &faces[i]
		assert.Equal(t, a.route == "" || a.page == "" || a.command == "", a.why != "", "%s: a face does not ask it; close the gap or say why", a.what)
	}
}

// namedIn lists the names that a row says. Commands have names of several words: each is as
// long as one of those that are there.
func namedIn(said string, there []string) (out []string) {
	words := strings.Fields(said)
	for len(words) > 0 {
		n := 1
		if len(words) > 1 && slices.Contains(there, words[0]+" "+words[1]) {
			n = 2
		}
		out, words = append(out, strings.Join(words[:n], " ")), words[n:]
	}
	return out
}

// commandsUnder lists the commands that do something.
func commandsUnder(c *cobra.Command, name string, out *[]string) {
	for _, sub := range c.Commands() {
		full := strings.TrimSpace(name + " " + sub.Name())
		if sub.Runnable() && sub.Name() != "help" && sub.Name() != "completion" {
			*out = append(*out, full)
		}
		if sub.Name() != "completion" {
			commandsUnder(sub, full, out)
		}
	}
}

var (
	mounted  = regexp.MustCompile(`mux\.Handle\((?:"([^"]+)"|(?:part\.)?(\w+))`)
	constant = regexp.MustCompile(`(?m)^(?:const)?\s*(\w+)\s*=\s*"(/[^"]*)"`)
)

// pagesServed lists the addresses that the pages mount, read in their sources; those that
// every page needs, such as its looks, are left out.
func pagesServed(t *testing.T) (out []string) {
	for _, folder := range []string{"", "bench", "board", "likeness", "riffs", "specs", "stock", "stocksheet", "training"} {
		text := ""
		files, err := filepath.Glob(filepath.Join(root, "webui", folder, "*.go"))
		require.NoError(t, err)
		parts, err := filepath.Glob(filepath.Join(root, "webui", "part", "*.go"))
		require.NoError(t, err)
		for _, file := range append(files, parts...) {
			if !strings.HasSuffix(file, "_test.go") {
				text += contentOf(t, file)
			}
		}
		named := map[string]string{}
		for _, c := range constant.FindAllStringSubmatch(text, -1) {
			named[c[1]] = c[2]
		}
		for _, m := range mounted.FindAllStringSubmatch(text, -1) {
			path := m[1]
			if path == "" {
				path = named[m[2]]
				require.NotEmpty(t, path, "%s in %s", m[2], folder)
			}
			if path != "/{$}" {
				out = append(out, path)
			}
		}
	}
	return out
}

func contentOf(t *testing.T, file string) string {
	text, err := fs.ReadFile(os.DirFS(filepath.Dir(file)), filepath.Base(file))
	require.NoError(t, err, fmt.Sprint(file))
	return string(text)
}
