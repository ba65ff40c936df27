package likeliest

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/pouring"
	"counterpour/flavor/measure/vocabulary"
)

// List is a text that was parted, as a list of lines.
type List struct {
	Text   string       // one pour a line, then how it is made, what is laid on it
	Pours  int          // lines of it that pour something
	Passed []entry.Span // of the text that was parted: what is passed over
	Notes  []string     // what was mended, or taken back
}

// AsList parts a text of at most 1,000 bytes at the least cost; false if that cannot be done, or
// if another way to part it costs hardly more and pours something else. It is to be read by the
// rules, which may find faults in it.
func AsList(text string, b *naming.Resolver) (List, bool) {
	r, ok := parted(text, b)
	if !ok {
		return List{}, false
	}
	if at, led := r.script.led(r); led && MayPour(text, at, len(r.pours), b) {
		return List{}, false
	}
	return r.list(), b.Err() == nil
}

// parted is the way to part a text that costs least.
func parted(text string, b *naming.Resolver) (*reading, bool) {
	if len(text) > mostText {
		return nil, false
	}
	s := newScript(text, b)
	var best *reading
	for _, w := range s.cheapest() {
		if best != nil && w.cost-best.cost >= margin {
			break
		}
		r, ok := s.read(w)
		switch {
		case !ok:
		case best == nil:
			best = r
		case !best.poursAs(r):
			return nil, false
		}
	}
	return best, best != nil && !best.runsOn && b.Err() == nil && len(s.known) < mostLookups
}

// reading is a way to part a text that holds together.
type reading struct {
	script *script
	cost   float64
	title  string
	titled *stretch // where the title stands
	pours  []poured
	making []string
	laid   []string
	passed []entry.Span
	notes  []string
	runsOn bool // what is laid on it may be the end of a name that is not known
}

// poured is a line of a reading.
type poured struct {
	line    string
	profile *flavor.Profile
}

// poursAs reports whether two readings pour the same.
func (r *reading) poursAs(o *reading) bool {
	return slices.EqualFunc(r.pours, o.pours, func(a, b poured) bool { return a.amount() == b.amount() })
}

// amount is a line without the verb that tells how an amount goes in.
func (p *poured) amount() string {
	verb, rest, _ := strings.Cut(p.line, " ")
	if pouring.Verbs[verb] != "" && strings.ContainsAny(rest, "0123456789½¼¾⅓⅔") {
		return rest
	}
	return p.line
}

// read puts together what a way says; false if it does not hold together.
func (s *script) read(w *way) (*reading, bool) {
	r := &reading{script: s, cost: w.cost}
	parts := w.stretches()
	for _, t := range parts {
		if t.said != "" && t.kind != aNone {
			r.notes = append(r.notes, t.said)
		}
		switch t.kind {
		case aPour:
			if t.again && r.pouring(t.pours[0]) { // it says how it goes in
				continue
			}
			for i, l := range t.lines {
				r.pours = append(r.pours, poured{l, t.pours[i]})
			}
		case aReplaced:
			i := slices.IndexFunc(r.pours, func(p poured) bool { return p.profile == t.pours[0] })
			if i < 0 {
				return nil, false
			}
			r.notes = append(r.notes, "“"+s.written(t.from, t.to)+"” replaces “"+r.pours[i].line+"”")
			r.pours[i].line = t.lines[0]
		case aMaking:
			r.making = append(r.making, t.lines...)
		case aLaid:
			r.laid, r.runsOn = append(r.laid, t.lines...), r.runsOn || t.runsOn
		case aTitle:
			r.title, r.titled = t.lines[0], t
			if !s.ends(t.to) || !s.starts(t.from) {
				r.notes = append(r.notes, "“"+r.title+"” is read as the name of the drink")
			}
		case aHeading, aRemark, aNone:
			r.passed = append(r.passed, s.at(t.from, t.to))
		}
	}
	return r, len(r.pours) >= leastPours && !r.twice() && !s.poursInTitle(parts) && s.accounts(r, parts)
}

// poursInTitle reports whether something goes without saying on the line of the name, above lines that state
// what they pour: "whiskey sour, egg".
func (s *script) poursInTitle(parts []*stretch) bool {
	line := func(t *stretch) int { return strings.Count(s.text[:s.at(t.from, t.to).Start], "\n") }
	title, below := -1, 0
	for _, t := range parts {
		switch {
		case t.kind == aTitle:
			title = line(t)
		case t.kind == aPour && title >= 0 && line(t) > title && !t.unsaid:
			below++
		}
	}
	return below >= leastPours && slices.ContainsFunc(parts, func(t *stretch) bool { return t.kind == aPour && t.unsaid && line(t) == title })
}

// twice reports whether something is poured twice: one of two amounts may stand for the other.
func (r *reading) twice() bool {
	for i, p := range r.pours {
		if p.profile != nil && slices.ContainsFunc(r.pours[:i], func(o poured) bool { return o.profile == p.profile }) {
			return true
		}
	}
	return false
}

// accounts reports whether nothing is passed over that may be poured: every ingredient that is
// named beside the pours is poured too, and none that the drink is said to have none of.
func (s *script) accounts(r *reading, parts []*stretch) bool {
	for _, t := range parts {
		switch t.kind {
		case aNone:
			if slices.ContainsFunc(s.resolver.Mentioned(t.said), r.pouring) {
				return false
			}
		case aTitle, aHeading, aRemark:
			if t.free && r.strong() || t.last && !r.ends() || t.about != nil && !r.pouring(t.about) || t.named || t.plain && !r.based() {
				return false
			}
			if s.cut(t) {
				continue
			}
			for _, p := range s.resolver.Mentioned(withoutAllergens(s.told(t))) {
				if !r.kin(p) && !((t.kind == aTitle || s.refers(t)) && r.tastesOf(p)) && !(t.kind == aHeading && sections.Has(strings.ToLower(s.words(t.to-1, t.to)))) {
					return false
				}
			}
		}
	}
	return true
}

// withoutAllergens are words without what somebody must not have: it is not poured.
func withoutAllergens(words string) string {
	before, behind, ok := strings.Cut(words, "allergic to ")
	if !ok {
		return words
	}
	_, behind, _ = strings.Cut(behind, " ")
	return before + behind
}

// based reports whether a spirit is poured: where none is, a line of unknown words may be one.
func (r *reading) based() bool {
	return slices.ContainsFunc(r.pours, func(p poured) bool { return p.profile != nil && p.profile.Base() })
}

// ends reports whether something is poured on top of the rest.
func (r *reading) ends() bool {
	return slices.ContainsFunc(r.pours, func(p poured) bool {
		return slices.ContainsFunc(strings.Fields(p.line), func(w string) bool { return pouring.Verbs[strings.Trim(w, "(,)")] != "" })
	})
}

// strong reports whether alcohol is poured, or something that is still asked for.
func (r *reading) strong() bool {
	return slices.ContainsFunc(r.pours, func(p poured) bool { return p.profile == nil || p.profile.ABV.Value > flavor.NoAlcoholABV })
}

// cut reports whether a remark is a line that is taken back.
func (s *script) cut(t *stretch) bool {
	return t.kind == aRemark && slices.ContainsFunc(s.takenBack(t.from), func(o stretch) bool { return o.kind == aRemark && o.to == t.to })
}

// told are the words of a stretch, without how the drink tastes that they refer to.
func (s *script) told(t *stretch) string {
	words := strings.Fields(s.words(t.from, t.to))
	if s.refers(t) {
		words = slices.DeleteFunc(words, func(w string) bool { return tastes.Has(strings.ToLower(w)) })
	}
	return strings.Join(words, " ")
}

// tastes are how a drink tastes.
var tastes = vocabulary.Words(`bitter sweet sour dry smoky spicy salty fruity boozy hot cold`)

// refers reports whether a remark names the drink by what it tastes of: "the coffee thing".
func (s *script) refers(t *stretch) bool {
	return t.kind == aRemark && (s.word(t.to-1, "thing") || strings.EqualFold(s.written(t.to-1, t.to), "one"))
}

// pouring reports whether an ingredient is poured.
func (r *reading) pouring(p *flavor.Profile) bool {
	if p == nil {
		return false
	}
	return slices.ContainsFunc(r.pours, func(q poured) bool { return q.profile == p })
}

// kin reports whether an ingredient, or one of its class, is poured: a "rum punch" pours some rum.
func (r *reading) kin(p *flavor.Profile) bool {
	key := " " + flavor.NormaliseName(p.Name) + " "
	return slices.ContainsFunc(r.pours, func(q poured) bool {
		return q.profile != nil && (q.profile == p || q.profile.Class == p.Class || strings.Contains(" "+flavor.NormaliseName(q.profile.Name)+" ", key))
	})
}

// tastesOf reports whether something is poured that shares a word with an ingredient: "Coffee at
// Night" pours coffee liqueur.
func (r *reading) tastesOf(p *flavor.Profile) bool {
	for w := range strings.FieldsSeq(flavor.NormaliseName(p.Name)) {
		if slices.ContainsFunc(r.pours, func(q poured) bool {
			return q.profile != nil && slices.Contains(strings.Fields(flavor.NormaliseName(q.profile.Name)), w)
		}) {
			return true
		}
	}
	return false
}

// sections are parts of a menu that are named like what is poured.
var sections = vocabulary.Words(`aperitivo aperitif digestivo digestif sours spritz spritzes highballs punch coffee dessert tea`)

// list writes a reading as lines.
func (r *reading) list() List {
	var lines []string
	if r.title != "" {
		lines = append(lines, draft.NamePrefix+" "+r.title)
	}
	for _, p := range r.pours {
		lines = append(lines, p.line)
	}
	if len(r.making) > 0 {
		lines = append(lines, strings.Join(r.making, ", "))
	}
	lines = append(lines, r.laid...)
	return List{Text: strings.Join(lines, "\n"), Pours: len(r.pours), Passed: r.passed, Notes: r.notes}
}
