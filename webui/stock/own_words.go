package stock

import (
	"cmp"
	"net/http"
	"net/url"
	"slices"
	"strings"

	"counterpour/api/service"
	"counterpour/flavor"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/part"
	"counterpour/webui/words"
)

// OwnWordsPath takes what words of the house mean.
const OwnWordsPath = "/stock/words"

// ownWordsView is the house's own words, with what was just done to them.
type ownWordsView struct {
	Names []ownWord
	Words string // what was typed, or asked for elsewhere
	Kind  string
	Kinds []ownClass // to choose from without typing; none if no words are asked for
	Fault string
	Done  *ownWordDone
	Open  bool
}

type ownWord struct{ Words, Kind string }

// ownClass is a class of what comes in bottles, and the ingredients of it.
type ownClass struct {
	Name  string
	Kinds []part.Meaning
}

// bottled are the classes of what comes in bottles beside spirits and what modifies them, and
// that a name on a label may be of.
var bottled = []flavor.Class{flavor.ClassCocktailBitters, flavor.ClassSyrup, flavor.ClassFruitSyrup, flavor.ClassSpicedSyrup, flavor.ClassCordial, flavor.ClassSoda, flavor.ClassAlcoholFree}

// ownClasses lists what a name on a bottle may mean, by class.
func (p *pages) ownClasses() (out []ownClass) {
	of := map[flavor.Class][]part.Meaning{}
	for _, b := range p.house.Shelf().Profiles() {
		of[b.Class] = append(of[b.Class], part.Meaning{ID: b.ID, Name: b.Name})
	}
	for _, c := range flavor.Classes() {
		in := c.Part() == flavor.PartBase || c.Part() == flavor.PartModifier || slices.Contains(bottled, c)
		if kinds := of[c]; in && len(kinds) > 0 {
			slices.SortFunc(kinds, func(a, b part.Meaning) int {
				return cmp.Or(strings.Compare(a.Name, b.Name), strings.Compare(a.ID, b.ID))
			})
			out = append(out, ownClass{words.SentenceStart(string(c)), kinds})
		}
	}
	return out
}

// ownWordDone is what was just kept or forgotten, and how to take it back.
type ownWordDone struct {
	Words, Kind string
	Forgotten   bool
}

// ownWords lists the house's own words, and what the address says was done.
func (p *pages) ownWords(r *http.Request) ownWordsView {
	v := ownWordsView{Words: strings.TrimSpace(r.Form.Get("words"))}
	for _, n := range p.house.Names() {
		v.Names = append(v.Names, ownWord{n.Words, n.Profile.Name})
	}
	if done := r.Form.Get("named"); done != "" {
		for _, n := range v.Names {
			if n.Words == done {
				v.Done = &ownWordDone{Words: n.Words, Kind: n.Kind}
			}
		}
	}
	if gone := r.Form.Get("forgotten"); gone != "" {
		if profile, known := p.house.Shelf().ByID(r.Form.Get("meant")); known {
			v.Done = &ownWordDone{Words: gone, Kind: profile.Name, Forgotten: true}
		}
	}
	if v.Words != "" {
		v.Kinds = p.ownClasses()
	}
	v.Open = v.Words != "" || v.Done != nil
	return v
}

// nameWords keeps or forgets what words of the house mean, and shows the stock again.
func (p *pages) nameWords(w http.ResponseWriter, r *http.Request) error {
	if err := form.Parse(r); err != nil {
		return err
	}
	request := service.NameRequest{Words: strings.TrimSpace(r.PostForm.Get("words")), Kind: strings.TrimSpace(cmp.Or(r.PostForm.Get("is"), r.PostForm.Get("kind"))), Undo: r.PostForm.Get("do") == "forget"}
	meant := ""
	for _, n := range p.house.Names() {
		if n.Words == request.Words {
			meant = n.Profile.ID
		}
	}
	err := p.house.Name(r.Context(), frame.By(r), request)
	if faults := flavor.DataFaultsOf(err); len(faults) > 0 {
		return p.misnamed(w, r, request, words.Sentence(faults[0].Message))
	}
	if err != nil {
		return err
	}
	more := url.Values{"named": {request.Words}}
	if request.Undo {
		more = url.Values{"forgotten": {request.Words}, "meant": {meant}}
	}
	http.Redirect(w, r, "/stock?"+more.Encode()+"#said", http.StatusSeeOther)
	return nil
}

// misnamed shows the stock with what is wrong with the words that were sent.
func (p *pages) misnamed(w http.ResponseWriter, r *http.Request, sent service.NameRequest, fault string) error {
	v, err := p.stockOf(r.Context(), stockQuery{Per: pourSizes[0], Page: 1})
	if err != nil {
		return err
	}
	v.OwnWords = p.ownWords(r)
	v.OwnWords.Words, v.OwnWords.Kind, v.OwnWords.Fault, v.OwnWords.Open = sent.Words, sent.Kind, fault, true
	return p.Write(w, r, http.StatusUnprocessableEntity, "stock", "layout", v)
}
