package bench

import (
	"cmp"
	"context"
	"math"
	"slices"
	"strings"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/webui/form"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// nightTool is how much a night takes of what is pressed, cut, cracked or made for it.
type nightTool struct {
	Drinks string
	worked
}

// mostNight is the most drinks of one night that the sum is made for.
const mostNight = 5000

// needed is how much of one thing a night takes.
type needed struct {
	profile *flavor.Profile
	ml      float64
	pieces  map[flavor.Unit]float64 // of what is counted
}

// night adds up what the drinks of the menu that can be poured take, each poured as often as any
// other. What comes in a bottle and keeps is not in it.
func (p *pages) night(ctx context.Context, w *worked, f form.Values) error {
	drinks, err := f.Number("drinks", say.It("bench.drinks-of-a-night"), "")
	if err != nil {
		return err
	}
	if drinks < 1 || drinks > mostNight || drinks != math.Trunc(drinks) {
		return form.Missing("drinks", say.It("bench.so-many-drinks", "Most", mostNight))
	}
	menu, err := p.house.Menu(ctx)
	if err != nil {
		return err
	}
	out, err := p.house.RunOut(ctx)
	if err != nil {
		return err
	}
	var poured []*flavor.Spec
	for i := range menu {
		if !menu[i].Spec.Has(func(q *flavor.Profile) bool { return slices.Contains(out, q.ID) }) {
			poured = append(poured, &menu[i].Spec)
		}
	}
	if len(poured) == 0 {
		return form.Missing("drinks", say.It("bench.nothing-to-pour"))
	}
	each := drinks / float64(len(poured))
	for _, n := range neededFor(poured, each) {
		w.row(words.SentenceStart(n.profile.Name), n.amount(p.house.Shelf()))
	}
	w.Sums = say.It("bench.night-sums", "Drinks", words.Plain(drinks), "Menu", len(poured), "Each", words.Figure(each, 1))
	w.Note = say.It("bench.night-note")
	return nil
}

// neededFor adds up what is prepared for drinks, each poured so many times: what spoils by its
// kind first, then by how much of it there is.
func neededFor(drinks []*flavor.Spec, each float64) []*needed {
	sums := map[string]*needed{}
	for _, s := range drinks {
		for i := range s.Pours {
			q := &s.Pours[i]
			if !prepared(q.Profile) {
				continue
			}
			n := sums[q.Profile.ID]
			if n == nil {
				n = &needed{profile: q.Profile, pieces: map[flavor.Unit]float64{}}
				sums[q.Profile.ID] = n
			}
			if q.Unit.Counted() {
				n.pieces[q.Unit] += each * q.Amount
			} else {
				n.ml += each * q.ML
			}
		}
	}
	list := make([]*needed, 0, len(sums))
	for _, n := range sums {
		list = append(list, n)
	}
	slices.SortFunc(list, func(a, b *needed) int {
		return cmp.Or(cmp.Compare(b.ml, a.ml), strings.Compare(a.profile.Name, b.profile.Name))
	})
	return list
}

// prepared reports whether something is pressed, cut, cracked or made before the shift.
func prepared(p *flavor.Profile) bool {
	if p.Class.StandsForSpirit() || p.Class == flavor.ClassSavoury {
		return false
	}
	switch p.Class.Spoils() {
	case flavor.SpoilsRawEgg, flavor.SpoilsMilk, flavor.SpoilsCut, flavor.SpoilsJuice, flavor.SpoilsMade:
		return true
	}
	return p.Class.Part() == flavor.PartSweetener && !p.Class.Solid() && p.ABV.Value == 0
}

// amount says how much it is, and how many whole fruits or eggs give it.
func (n *needed) amount(shelf *house.Shelf) string {
	var parts []string
	if n.ml > 0 {
		text := words.Joined(words.Millilitres(n.ml), "mL")
		if whole, each := wholeOf(n.profile, shelf); each > 0 {
			text += say.It("bench.some-whole", "Pieces", int(math.Ceil(n.ml/each)), "Name", whole)
		}
		parts = append(parts, text)
	}
	for _, u := range measure.Units() {
		if amount := math.Ceil(n.pieces[u]); amount > 0 {
			parts = append(parts, measure.FormatAmount(amount, u))
		}
	}
	return words.List(parts)
}

// wholeOf is the fruit that a juice is pressed of, or the thing itself where it comes by the piece,
// and how many mL one gives; 0 if nobody says.
func wholeOf(p *flavor.Profile, shelf *house.Shelf) (name string, eachML float64) {
	if fruit, is := strings.CutSuffix(p.Name, " juice"); is {
		if whole, _, err := shelf.Resolve(fruit); err == nil && whole.Class == flavor.ClassFruit {
			p = whole
		}
	}
	y, ok := p.Yield(flavor.Piece)
	if !ok {
		return "", 0
	}
	return p.Name, y.Amount.Value
}
