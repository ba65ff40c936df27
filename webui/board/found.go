package board

import (
	"cmp"
	"errors"
	"slices"
	"strings"

	"counterpour/api/service/evening"
	"counterpour/flavor"
	"counterpour/webui/behind"
	"counterpour/webui/part"
	"counterpour/webui/say"
)

// calledView is a bottle that is called by the words that are looked for, to be marked from there.
type calledView struct {
	ID, Name string
	One      string // id of the bottle that is poured of several; empty if it is the only one
	Drinks   string // how many drinks of the menu pour it

	drinks int
}

// mostCalled is how many bottles are offered for the words that are looked for.
const mostCalled = 4

// calledSo lists the bottles that are there and called by the words of a text, those that most
// drinks pour first: by whole words of their names, or if no name has those by parts of them, or
// by what else they are called.
func calledSo(s *behind.Shift, text string) []calledView {
	if strings.TrimSpace(text) == "" {
		return nil
	}
	drinks := map[*flavor.Profile]int{}
	for i := range s.Menu {
		var poured []*flavor.Profile
		for _, p := range s.Menu[i].Spec.Pours {
			if !slices.Contains(poured, p.Profile) {
				poured = append(poured, p.Profile)
				drinks[p.Profile]++
			}
		}
	}
	for _, p := range s.Stock {
		drinks[p] += 0
	}
	var whole, named, called []calledView
	for p, n := range drinks {
		if s.Lacks(p) || p.Class.Free() {
			continue
		}
		v := calledView{ID: p.ID, Name: p.Name, One: oneOf(s, p.ID), Drinks: say.It("board.in-so-many-drinks", "Drinks", n), drinks: n}
		switch name := flavor.NormaliseName(p.Name); {
		case evening.HasWhole(name, text):
			whole = append(whole, v)
		case n == 0: // it matters to no drink, unless it was meant
		case evening.HasWords(name, text):
			named = append(named, v)
		case evening.HasWords(name+" "+flavor.NormaliseName(strings.Join(p.Aliases, " ")), text):
			called = append(called, v)
		}
	}
	for _, found := range [][]calledView{whole, named, called} {
		if len(found) > 0 {
			slices.SortFunc(found, func(a, b calledView) int {
				return cmp.Or(b.drinks-a.drinks, cmp.Compare(a.Name, b.Name), cmp.Compare(a.ID, b.ID))
			})
			return found[:min(len(found), mostCalled)]
		}
	}
	return nil
}

// unfound says what may have been meant by words that no drink of the menu has.
func (v *tonightView) unfound(bar behind.Bar, menu []behind.HouseSpec, x *wish) {
	_, err := bar.Named(x.text)
	switch {
	case evening.NamesTaste(x.text):
		v.Unpoured = say.It("board.no-drink-tastes", "Text", x.text)
		return
	case err == nil:
		v.Unpoured = say.It("board.no-drink-pours", "Text", x.text, "Meant", "")
		return
	}
	var in []string
	for i := range menu {
		in = append(in, evening.AllWords(&menu[i].Spec, familyOf(bar, &menu[i])))
	}
	if v.Meant = part.MeantBy(x.text, in, TonightPath, findField, x.fields(x.show)); len(v.Meant) > 0 || !errors.Is(err, flavor.ErrUnknown) {
		return
	}
	var unknown *flavor.DataFault
	if errors.As(err, &unknown) {
		for _, name := range unknown.Suggest {
			if part.SlipOf(x.text, name) {
				v.Unpoured = say.It("board.no-drink-pours", "Text", x.text, "Meant", name)
				return
			}
		}
	}
	v.Unknown = x.text
}

// familyOf is what the family of a drink of the menu is called; empty if it is of none.
func familyOf(bar behind.Bar, drink *behind.HouseSpec) string {
	f, _ := bar.Family(drink.Family)
	return f.Name
}

// sought tells which drinks of a menu are looked for.
type sought struct {
	drinks  []bool // in the order of the menu
	byTaste bool   // no drink is called so: they taste so
}

// soughtBy finds the drinks of a menu by a text: by what they, their pours and their families are
// called, in whole words or, where none is called so, in parts of them; and where none is by that,
// by what they taste of.
func (p *pages) soughtBy(menu []behind.HouseSpec, text string) (out sought) {
	for _, holds := range []func(*flavor.Spec, string, string) bool{evening.HoldsWhole, evening.Holds} {
		out.drinks = nil
		for i := range menu {
			out.drinks = append(out.drinks, holds(&menu[i].Spec, familyOf(p.bar, &menu[i]), text))
		}
		if slices.Contains(out.drinks, true) {
			return out
		}
	}
	for i := range menu {
		out.drinks[i] = evening.Tastes(&menu[i].Spec, familyOf(p.bar, &menu[i]), text)
		out.byTaste = out.byTaste || out.drinks[i]
	}
	return out
}
