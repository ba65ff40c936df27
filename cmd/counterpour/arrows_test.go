package main

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// allowed lists, for each top-level folder, the other ones that it may import:
// flavor ← index, data ← api ← webui ← cmd. Of api, the pages see the centre,
// the access log and who lets searches in.
var allowed = map[string][]string{
	"flavor": {},
	"index":  {"flavor"},
	"data":   {"flavor"},
	"api":    {"flavor", "index", "data"},
	"webui":  {"flavor", "data", "api/service", "api/accesslog", "api/admission"},
	"cmd":    {"flavor", "index", "data", "api", "webui"},
}

// allowedInFlavor does the same within flavor, in the order in which a drink
// flows from text to glass to advice.
var allowedInFlavor = map[string][]string{
	"lookup":    {"flavor"},
	"chart":     {"flavor"},
	"carrier":   {"flavor"},
	"guest":     {"flavor"},
	"measure":   {"flavor", "measure/vocabulary"},
	"mix":       {"flavor"},
	"sense":     {"flavor", "mix"},
	"habit":     {"flavor"},
	"ratio":     {"flavor", "mix"},
	"makeup":    {"flavor", "mix", "ratio"},
	"technique": {"flavor", "mix", "ratio", "makeup"},
	"template":  {"flavor", "ratio", "makeup"},
	"weigh":     {"flavor", "mix", "habit", "ratio", "makeup", "technique", "template", "weigh/proportion", "weigh/forgotten", "weigh/namesake", "weigh/called"},
	"balance":   {"flavor", "mix", "ratio", "technique", "weigh", "balance/arithmetic", "balance/change", "balance/fault", "balance/mend"},
	"cover":     {"flavor", "guest", "measure", "mix", "sense", "technique", "weigh", "balance", "cover/asked", "cover/gap", "cover/idea", "cover/listing", "cover/portion", "cover/role", "cover/search", "cover/shelf", "cover/sister", "cover/wording"},
	"drill":     {"flavor", "guest", "measure", "mix", "sense", "ratio", "makeup", "template", "weigh", "balance", "balance/threshold", "cover", "riff", "drill/tasting", "drill/handling", "drill/pace", "drill/slip", "drill/wording"},

	"template/templatetest": {"flavor", "ratio", "template"},

	"balance/threshold":  {"ratio", "sense"},
	"balance/change":     {"flavor", "measure"},
	"balance/fault":      {"flavor", "makeup", "measure", "ratio", "technique", "weigh", "balance/change", "balance/threshold", "balance/wording"},
	"balance/mend":       {"flavor", "guest", "makeup", "measure", "mix", "ratio", "technique", "weigh", "weigh/forgotten", "balance/change", "balance/fault", "balance/wording"},
	"balance/arithmetic": {"flavor", "ratio", "weigh", "balance/wording"},
	"balance/wording":    {"flavor", "measure", "ratio", "technique", "template", "weigh"},
	"cover/choice":       {},
	"cover/search":       {"sense"},
	"cover/outs":         {"flavor", "guest", "beside", "cover", "cover/choice"},
	"cover/instead":      {"flavor", "guest", "mix", "sense"},
	"cover/barred":       {"flavor", "guest"},
	"cover/soft":         {"flavor", "ratio"},
	"cover/lookahead":    {"flavor", "cover", "cover/outs"},
	"drill/pace":         {"flavor"},
	"drill/handling":     {"flavor", "mix", "sense"},
	"drill/slip":         {"flavor", "measure"},
	"drill/wording":      {"flavor", "measure", "mix", "ratio", "drill/handling", "drill/slip"},
	"drill/tasting":      {"flavor", "measure", "mix", "sense", "ratio", "balance/threshold", "drill/slip", "drill/wording"},
	"cover/role":         {"flavor", "sense"},
	"cover/portion":      {"flavor", "measure", "cover/role"},
	"cover/sister":       {"flavor"},
	"cover/gap":          {"flavor", "guest", "measure", "sense", "cover/portion", "cover/role", "cover/sister"},
	"cover/fill":         {"flavor", "cover/gap", "cover/portion", "cover/role"},
	"cover/practice":     {"flavor", "cover/gap", "cover/search"},
	"cover/asked":        {"flavor", "guest", "cover/gap", "cover/search"},
	"cover/shelf":        {"flavor", "mix", "cover/asked", "cover/fill", "cover/gap", "cover/portion", "cover/practice", "cover/role", "cover/search"},
	"cover/idea":         {"flavor", "mix", "sense", "ratio", "weigh", "balance", "cover/asked", "cover/fill", "cover/gap", "cover/portion", "cover/role", "cover/search", "cover/shelf", "cover/soft"},
	"cover/listing":      {"flavor", "sense", "weigh", "cover/asked", "cover/fill", "cover/gap", "cover/idea", "cover/role", "cover/search", "cover/shelf"},
	"cover/wording":      {"flavor", "measure", "mix", "sense"},

	"measure/draft/words/token":          {"flavor"},
	"measure/draft/words/assumed":        {"flavor", "measure", "measure/draft/words/drinks"},
	"measure/draft/words/aside":          {"measure/draft/words/token", "measure/pattern", "measure/vocabulary"},
	"measure/draft/words/serving":        {"flavor", "measure", "measure/draft/words/token", "measure/vocabulary"},
	"measure/draft/words/declared":       {"flavor", "measure/draft/words/token", "measure/pattern"},
	"measure/draft/words/label":          {},
	"measure/draft/words/laid":           {"flavor", "measure", "measure/draft/words/token", "measure/vocabulary", "measure/draft/words/serving"},
	"measure/draft/words/gauge":          {"flavor", "measure/draft/words/token", "measure/vocabulary"},
	"measure/draft/words/pouring":        {"flavor", "measure/draft/words/token", "measure/vocabulary", "measure/draft/words/serving"},
	"measure/draft/words/entry":          {"flavor", "measure", "measure/draft/words/token", "measure/vocabulary", "measure/draft/words/serving", "measure/draft/words/laid", "measure/draft/words/pouring", "measure/draft/words/gauge"},
	"measure/draft/words/ownsize":        {"flavor", "measure", "measure/draft/words/entry", "measure/draft/words/gauge"},
	"measure/draft/words/speech":         {"measure/draft/words/aside", "measure/draft/words/token", "measure/pattern", "measure/vocabulary", "measure/draft/words/serving", "measure/draft/words/entry", "measure/draft/words/pouring", "measure/draft/words/gauge"},
	"measure/draft/words/parting":        {"flavor", "measure", "measure/draft/words/token", "measure/vocabulary", "measure/draft/words/serving", "measure/draft/words/entry", "measure/draft/words/speech", "measure/draft/words/label", "measure/draft/words/laid", "measure/draft/words/pouring", "measure/draft/words/gauge"},
	"measure/draft/words/sheet":          {"flavor", "measure", "measure/draft/words/token", "measure/pattern", "measure/vocabulary", "measure/draft/words/serving", "measure/draft/words/entry", "measure/draft/words/parting", "measure/draft/words/label"},
	"measure/draft/words/joining":        {"flavor", "measure/draft/words/token", "measure/draft/words/serving", "measure/draft/words/entry", "measure/draft/words/parting", "measure/draft/words/label", "measure/draft/words/laid", "measure/draft/words/pouring", "measure/pattern"},
	"measure/draft/words/title":          {"flavor", "measure/draft/words/token", "measure/draft/words/drinks", "measure/pattern", "measure/vocabulary", "measure/draft/words/aside", "measure/draft/words/serving", "measure/draft/words/entry", "measure/draft/words/speech", "measure/draft/words/parting", "measure/draft/words/joining", "measure/draft/words/label", "measure/draft/words/laid", "measure/draft/words/gauge", "measure/draft/words/pouring"},
	"measure/draft":                      {"flavor", "measure", "measure/draft/words/token", "measure/vocabulary", "measure/draft/words/aside", "measure/draft/words/serving", "measure/draft/words/entry", "measure/draft/words/speech", "measure/draft/words/parting", "measure/draft/words/joining", "measure/draft/words/sheet", "measure/draft/words/title", "measure/draft/words/label", "measure/draft/words/laid", "measure/draft/words/pouring", "measure/draft/words/gauge", "measure/draft/words/ownsize"},
	"measure/draft/onedrink":             {"flavor", "measure", "measure/draft", "measure/draft/words/serving", "measure/draft/words/token", "measure/pattern", "measure/draft/words/entry"},
	"measure/draft/literal":              {"flavor", "measure/vocabulary", "measure/draft", "measure/draft/words/entry", "measure/draft/words/token"},
	"measure/draft/left":                 {"flavor", "measure", "measure/draft", "measure/pattern"},
	"measure/draft/names/tongue":         {"flavor", "measure/draft/words/token"},
	"measure/draft/names/jargon":         {"flavor", "measure/draft/words/token", "measure/draft/names/tongue", "measure/pattern", "measure/vocabulary", "carrier"},
	"measure/draft/names/naming":         {"flavor", "carrier", "measure/draft/words/drinks", "measure", "measure/draft/names/lexicon", "measure/draft/words/token", "measure/draft/names/tongue", "measure/pattern", "measure/vocabulary", "measure/draft/words/serving", "measure/draft/words/declared", "measure/draft/names/jargon"},
	"measure/draft/names/dressing":       {"flavor", "carrier", "measure", "measure/vocabulary", "measure/draft/words/laid", "measure/draft/names/naming", "measure/draft/names/tongue", "measure/pattern"},
	"measure/draft/names/counting":       {"flavor", "measure", "measure/draft/words/token", "measure/draft/names/tongue", "measure/draft/words/entry", "measure/draft", "measure/draft/names/naming", "measure/draft/names/jargon", "measure/draft/words/gauge"},
	"measure/draft/manner":               {"flavor", "measure/draft/words/entry", "measure/draft/words/serving", "measure/draft", "measure/pattern"},
	"measure/draft/rewriting/runon":      {"flavor", "measure/draft/words/label", "measure/draft/words/pouring", "measure/draft/words/token", "measure/draft/words/serving", "measure/draft/words/entry", "measure/draft/words/speech", "measure/draft/words/parting", "measure/draft", "measure/draft/names/naming", "measure/draft/words/laid", "measure/draft/names/jargon", "measure/draft/words/gauge"},
	"measure/draft/rewriting/likeliest":  {"flavor", "measure", "measure/draft/words/token", "measure/pattern", "measure/vocabulary", "measure/draft/words/aside", "measure/draft/words/serving", "measure/draft/words/entry", "measure/draft/words/speech", "measure/draft/words/parting", "measure/draft", "measure/draft/names/naming", "measure/draft/words/title", "measure/draft/words/label", "measure/draft/words/laid", "measure/draft/words/pouring", "measure/draft/words/declared", "measure/draft/names/jargon", "measure/draft/words/gauge"},
	"measure/draft/names/fitting":        {"flavor", "measure/draft/words/drinks"},
	"measure/draft/words/drinks":         {"flavor", "measure/vocabulary"},
	"measure/draft/rewriting/phrasing":   {"measure/draft/words/speech", "measure/draft/words/token", "measure/pattern"},
	"measure/draft/rewriting/paired":     {"flavor", "measure/draft/words/title", "measure/draft/words/drinks", "measure/vocabulary", "measure/draft/words/token", "measure/draft/words/serving", "measure/draft/words/entry", "measure/draft/words/speech", "measure/draft/names/naming", "measure/pattern"},
	"measure/draft/rewriting/layout":     {"flavor", "measure/draft/words/label", "measure/draft/words/serving", "measure/draft/words/token", "measure/draft/words/title", "measure/draft/words/entry", "measure/draft/words/speech", "measure/draft/names/naming", "measure/draft/words/drinks", "measure/draft/rewriting/likeliest", "measure/pattern", "measure/draft/rewriting/paired", "measure/draft/rewriting/phrasing"},
	"measure/draft/rewriting/recipe":     {"flavor", "measure/draft/words/entry", "measure/draft/words/label", "measure/draft/names/naming", "measure/draft/words/parting", "measure/draft/words/serving", "measure/draft/words/token", "measure/pattern"},
	"measure/draft/rewriting/subrecipe":  {"flavor", "measure/draft/words/serving", "measure/draft/words/token", "measure/pattern", "measure/vocabulary", "measure/draft/words/entry", "measure/draft/words/parting", "measure/draft/words/label"},
	"measure/draft/rewriting/bilingual":  {"flavor", "measure", "measure/draft/words/token", "measure/draft/words/serving", "measure/draft/names/naming", "measure/draft/names/tongue", "measure/pattern"},
	"measure/draft/rewriting/shorthand":  {"flavor", "measure/draft/names/lexicon", "measure", "measure/draft/words/token", "measure/draft/words/serving", "measure/draft/words/entry", "measure/draft/names/naming", "measure/draft/words/label", "measure/draft/words/laid", "measure/draft/words/pouring", "measure/draft/words/gauge"},
	"measure/draft/rewriting/unpoured":   {"flavor", "measure", "measure/draft/words/token", "measure/pattern", "measure/vocabulary", "measure/draft/words/aside", "measure/draft/words/serving", "measure/draft/words/entry", "measure/draft/words/parting", "measure/draft", "measure/draft/names/naming", "measure/draft/words/title", "measure/draft/words/label", "measure/draft/words/declared"},
	"measure/draft/names/lexicon":        {},
	"measure/draft/rewriting/everyday":   {"flavor", "measure/draft/names/lexicon", "measure/draft/words/laid", "measure/draft/words/aside", "measure/draft/words/title", "measure/draft/words/token", "measure/pattern", "measure/vocabulary", "measure/draft/words/serving", "measure/draft/words/entry", "measure/draft/words/parting", "measure/draft/words/pouring", "measure/draft/names/naming"},
	"measure/draft/rewriting/around":     {"flavor", "measure/draft/words/drinks", "measure/draft/names/lexicon", "measure/draft/words/token", "measure/pattern", "measure/vocabulary", "measure/draft/words/serving", "measure/draft/words/entry", "measure/draft/names/naming", "measure/draft/rewriting/everyday"},
	"measure/draft/rewriting/correcting": {"flavor", "measure", "measure/draft/words/token", "measure/pattern", "measure/vocabulary", "measure/draft/words/serving", "measure/draft/words/entry", "measure/draft/words/speech", "measure/draft/names/naming", "measure/draft/rewriting/everyday"},
	"measure/draft/overlooked":           {"flavor", "measure/draft/words/label", "measure/draft/words/parting", "carrier", "measure", "measure/draft/words/token", "measure/pattern", "measure/vocabulary", "measure/draft/words/serving", "measure/draft/words/entry", "measure/draft/words/speech", "measure/draft/words/joining", "measure/draft", "measure/draft/names/naming", "measure/draft/words/drinks", "guest", "measure/draft/words/declared", "measure/draft/names/jargon", "measure/draft/names/lexicon"},
	"measure/draft/meaning":              {"flavor", "measure", "measure/draft", "measure/draft/words/aside", "measure/draft/words/assumed", "measure/draft/names/counting", "measure/draft/words/declared", "measure/draft/words/drinks", "measure/draft/words/entry", "measure/draft/rewriting/everyday", "measure/draft/names/fitting", "measure/draft/words/joining", "measure/draft/words/laid", "measure/draft/manner", "measure/draft/names/naming", "measure/draft/overlooked", "measure/draft/words/parting", "measure/draft/words/pouring", "measure/draft/words/serving", "measure/draft/rewriting/layout", "measure/draft/words/token", "measure/draft/names/tongue", "measure/draft/onedrink", "measure/pattern", "measure/vocabulary", "measure/draft/names/jargon"},
	"measure/draft/reading":              {"flavor", "measure", "measure/draft", "measure/draft/rewriting/around", "measure/draft/rewriting/bilingual", "measure/draft/rewriting/correcting", "measure/draft/names/dressing", "measure/draft/words/entry", "measure/draft/rewriting/everyday", "measure/draft/names/fitting", "measure/draft/rewriting/likeliest", "measure/draft/literal", "measure/draft/rewriting/subrecipe", "measure/draft/meaning", "measure/draft/names/naming", "measure/draft/overlooked", "measure/draft/rewriting/recipe", "measure/draft/rewriting/paired", "measure/draft/rewriting/phrasing", "measure/draft/rewriting/runon", "measure/draft/rewriting/layout", "measure/draft/words/sheet", "measure/draft/rewriting/shorthand", "measure/draft/words/speech", "measure/draft/words/token", "measure/draft/rewriting/unpoured", "measure/pattern", "measure/draft/onedrink"},
	"measure/draft/edit":                 {"flavor", "measure", "measure/draft", "measure/draft/names/counting", "measure/draft/words/entry", "measure/draft/meaning", "measure/draft/names/naming", "measure/draft/reading", "measure/draft/words/token"},
	"measure/pattern":                    {},
	"measure/vocabulary":                 {},
	"measure/measuretest":                {"flavor"},
	"measure/draft/drafttest":            {"flavor", "measure", "measure/measuretest"},

	"measure/draft/names/lexicon/generate": {"measure/draft/names/lexicon", "measure/vocabulary"},

	"weigh/proportion": {"flavor", "habit", "ratio", "makeup"},
	"weigh/forgotten":  {"flavor", "ratio", "makeup", "technique"},
	"weigh/namesake":   {"flavor", "ratio", "makeup"},
	"weigh/called":     {"flavor"},

	"riff/wish":      {"flavor", "sense", "measure/pattern"},
	"riff/precedent": {"flavor", "sense", "ratio", "makeup", "template"},
	"riff/serve":     {"flavor"},
	"riff/wording":   {"flavor", "measure", "sense", "weigh", "balance", "riff/precedent", "riff/serve"},
	"riff/aim":       {"flavor", "guest", "mix", "sense", "riff/serve", "riff/wish", "riff/wording"},
	"riff/station":   {"flavor", "guest", "measure", "mix", "sense", "ratio", "template", "weigh", "balance", "riff/aim", "riff/wish", "riff/precedent", "riff/serve", "riff/wording"},
	"riff":           {"flavor", "guest", "measure", "sense", "ratio", "balance", "riff/aim", "riff/wish", "riff/precedent", "riff/serve", "riff/wording", "riff/station"},
	"riff/useup":     {"flavor", "guest", "measure", "ratio", "template", "weigh", "riff/aim", "riff/wish", "riff/precedent", "riff/wording", "riff/station"},
	"riff/walk":      {"flavor", "guest", "measure", "mix", "sense", "weigh", "balance", "riff/aim", "riff/wording", "riff/station"},

	"trial": {"flavor", "measure", "mix", "ratio", "makeup", "template", "weigh", "balance", "beside"},
}

// allowedInWebui does the same within webui. What is not listed is a page; pages do
// not import one another. The package webui itself may import all of them.
var allowedInWebui = map[string][]string{
	"say":       {},
	"access":    {"say"},
	"words":     {"say"},
	"draw":      {"say", "words"},
	"form":      {"say", "words"},
	"frame":     {"access", "form", "say", "words"},
	"behind":    {"draw"},
	"desk":      {"access", "behind", "form", "frame", "say", "words"},
	"part":      {"behind", "draw", "form", "frame", "say", "words"},
	"webuitest": {"access", "behind", "draw", "form", "frame", "part", "words"},
}

// allowedInService does the same beneath the centre; the centre itself may import
// all of them.
var allowedInService = map[string][]string{
	"fault":    {},
	"kitchen":  {"fault", "remedy"},
	"records":  {},
	"specbook": {},
	"coaching": {},
	"shared":   {},
	"remedy":   {},
	"evening":  {},
	"marking":  {"fault"},

	"visit":       {"service", "coaching", "kitchen", "marking", "remedy"},
	"servicetest": {"service", "kitchen"},
}

// allowedInCounterpour does the same beneath the command; the command itself may
// import all of them.
var allowedInCounterpour = map[string][]string{
	"terminal":     {},
	"premises":     {"terminal"},
	"housekeeping": {"terminal", "premises"},
	"calibration":  {"terminal"},
	"printed":      {"terminal"},
	"training":     {"terminal", "premises", "printed"},
}

// pageParts is what a page is made with.
var pageParts = []string{"access", "behind", "desk", "draw", "form", "frame", "part", "say", "words"}

const (
	root   = "../.."
	module = "counterpour/"
	centre = "api/service/"
)

func TestArrowsPointOneWay(t *testing.T) {
	files := 0
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && strings.HasPrefix(d.Name(), ".") && path != root {
			return filepath.SkipDir
		}
		if d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return nil
		}
		files++
		rel, err := filepath.Rel(root, path)
		require.NoError(t, err)
		checkImports(t, filepath.ToSlash(rel), path)
		return nil
	})
	require.NoError(t, err)
	require.Greater(t, files, 50, "the walk found the module")
}

func checkImports(t *testing.T, rel, path string) {
	parsed, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
	require.NoError(t, err)
	parts := strings.Split(rel, "/")
	from := parts[0]
	for _, spec := range parsed.Imports {
		imported := strings.Trim(spec.Path.Value, `"`)
		if !strings.HasPrefix(imported, module) {
			continue
		}
		to := strings.Split(strings.TrimPrefix(imported, module), "/")
		if to[0] != from {
			within := slices.Contains(allowed[from], strings.Join(to[:min(2, len(to))], "/"))
			assert.True(t, within || slices.Contains(allowed[from], to[0]), "%s imports %s", rel, imported)
			continue
		}
		if strings.HasPrefix(rel, centre) {
			assert.NotEqual(t, "api", strings.Join(to, "/"), "the centre knows nothing of HTTP")
			if strings.HasPrefix(strings.Join(to, "/")+"/", centre) && len(parts) > 3 {
				assert.Contains(t, allowedInService[parts[2]], to[len(to)-1], "%s imports %s", rel, imported)
			}
		}
		if from == "cmd" && len(parts) > 3 {
			assert.Contains(t, allowedInCounterpour[parts[2]], to[len(to)-1], "%s imports %s", rel, imported)
		}
		if from == "webui" && len(parts) > 2 {
			may, listed := allowedInWebui[parts[1]]
			if !listed {
				may = pageParts
			}
			assert.Contains(t, may, to[len(to)-1], "%s imports %s", rel, imported)
		}
		if from == "flavor" {
			within := strings.TrimPrefix(strings.Join(to, "/"), "flavor/")
			if len(parts) == 2 {
				assert.Fail(t, "flavor itself imports nothing of ours", "%s imports %s", rel, imported)
				continue
			}
			assert.Contains(t, allowedInFlavor[strings.Join(parts[1:len(parts)-1], "/")], within, "%s imports %s", rel, imported)
		}
	}
}

func TestTopLevelFolders(t *testing.T) {
	entries, err := os.ReadDir(root)
	require.NoError(t, err)
	agreed := []string{"cmd", "api", "flavor", "index", "data", "webui", "go.mod", "go.sum", "README.md", "DEVELOPERS.md"}
	for _, e := range entries {
		if strings.HasPrefix(e.Name(), ".") {
			continue
		}
		assert.True(t, slices.Contains(agreed, e.Name()), "%s is not one of the agreed top-level entries", e.Name())
	}
}

// Every package has a row in the guide, but for those that serve tests.
func TestTheGuideNamesEveryPackage(t *testing.T) {
	guide, err := os.ReadFile(filepath.Join(root, "DEVELOPERS.md"))
	require.NoError(t, err)
	named := rowsOf(string(guide))
	err = filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && (strings.HasPrefix(d.Name(), ".") && path != root || d.Name() == "testdata") {
			return filepath.SkipDir
		}
		if !strings.HasSuffix(path, ".go") || strings.HasSuffix(filepath.Dir(path), "test") {
			return nil
		}
		folder, err := filepath.Rel(root, filepath.Dir(path))
		assert.True(t, named[filepath.ToSlash(folder)], "%s has no row in DEVELOPERS.md", path)
		return err
	})
	require.NoError(t, err)
}

// rowsOf are the packages that the tables of the guide name in their first column, by the
// path from the root; a table headed "in `folder`", whatever follows, names those beneath it.
func rowsOf(guide string) map[string]bool {
	named, under := map[string]bool{}, ""
	for line := range strings.Lines(guide) {
		row, table := strings.CutPrefix(line, "| ")
		cell, _, _ := strings.Cut(row, " |")
		switch folder, beneath := strings.CutPrefix(cell, "in `"); {
		case !table || strings.HasPrefix(cell, "---"):
		case beneath:
			folder, _, _ = strings.Cut(folder, "`")
			under = folder + "/"
		case !strings.HasPrefix(cell, "`"):
			under = ""
		default:
			names := strings.Split(strings.ReplaceAll(cell, "`", ""), ", ")
			for _, name := range names { // those behind the first stand beside it
				named[under+name], named[filepath.Join(filepath.Dir(under+names[0]), filepath.Base(name))] = true, true
			}
		}
	}
	return named
}
