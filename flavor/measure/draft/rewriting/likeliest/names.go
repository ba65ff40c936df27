package likeliest

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/jargon"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
)

// lookup is a name in a place.
type lookup struct {
	written string
	unit    flavor.Unit
}

// name is what a stretch of words names in its place.
type name struct {
	ok      bool
	cost    float64
	written string          // as it is to be read again
	mended  string          // how it stood, if it is written otherwise
	profile *flavor.Profile // nil: it may be several, and is asked for
	whole   bool            // no word of it is passed over
	either  bool            // it may be one of several forms of a thing, and is none here
}

// nameAt looks up the words between two tokens in a place.
func (s *script) nameAt(from, to int, unit flavor.Unit, amount float64) name {
	key := lookup{s.written(from, to), unit}
	if n, seen := s.known[key]; seen {
		return n
	}
	var n name
	if s.mayEndName(to-1, key.written) && len(s.known) < mostLookups {
		n = s.find(from, to, naming.PlaceOf(unit, amount, unit.After()))
	}
	s.known[key] = n
	return n
}

// mayEndName reports whether a name may end in the word at i: one of speech or of making ends
// none, unless a name is written so.
func (s *script) mayEndName(i int, written string) bool {
	if t := &s.toks[i]; t.Kind == token.Word && eggs[strings.ToLower(written)] == "" && (joins.Has(t.Text) || thoughts.Has(t.Text) || opens.Has(t.Text) || serving.Known(t.Text)) {
		return s.resolver.Has(written) || strings.Contains(written, " ") && s.resolver.Mentions(written[strings.LastIndexByte(written, ' ')+1:])
	}
	return true
}

func (s *script) find(from, to int, pl naming.Place) name {
	written := s.written(from, to)
	n := name{written: written}
	for i := from; i < to; i++ {
		if t := &s.toks[i]; t.Kind == token.Word && serving.Known(t.Text) && eggs[strings.ToLower(written)] == "" && !s.resolver.Has(written) {
			n.cost += costWorded
		}
	}
	if as := eggs[strings.ToLower(written)]; as != "" {
		n.written, n.mended = as, written
	}
	f := s.resolver.Find(n.written, pl)
	if !f.Firm() && f.Fault != nil && f.Fault.Kind == flavor.ErrUnknown || f.How == flavor.MatchFuzzy {
		if as, p := s.parted(from, to, pl); p != nil {
			return name{ok: true, cost: n.cost + costParted, written: as, mended: written, profile: p}
		}
	}
	if raw, _, ok := s.resolver.Named(n.written); ok && f.Profile != nil && f.Inferred && f.Profile.Class.Part() == flavor.PartSweetener && raw.Class.Solid() { // "20 ginger" may be its juice as well
		return name{either: true}
	}
	switch {
	case f.Profile == nil && f.Fault.Kind == flavor.ErrUnknown:
		return name{}
	case f.Profile == nil:
		n.cost += costUnsure
	case !f.Firm():
		n.cost += costSlip
	case f.Inferred:
		n.cost += costShort
	}
	if f.Dropped != "" {
		n.cost += float64(len(strings.Fields(f.Dropped)))
	}
	n.ok, n.profile, n.whole = true, f.Profile, f.Dropped == ""
	return n
}

// eggs are ways to write the white of an egg by the signs between its letters.
var eggs = map[string]string{"e/w": "egg white", "e.w": "egg white", "e.w.": "egg white", "egg wht": "egg white", "egg wh": "egg white"}

// leastHalf is the fewest letters of either of two words that run together, and leastWhole of both.
const (
	leastHalf  = 2
	leastWhole = 6
)

// parted parts a word that is two, where one ingredient is known then: "gingerbeer", "dkcacao".
func (s *script) parted(from, to int, pl naming.Place) (string, *flavor.Profile) {
	var as string
	var hit *flavor.Profile
	exact := false
	for i := from; i < to; i++ {
		t := &s.toks[i]
		if t.Kind != token.Word || t.End-t.Start < leastWhole || s.resolver.Has(t.Text) {
			continue
		}
		w := s.text[t.Start:t.End]
		before, behind := s.text[s.toks[from].Start:t.Start], s.text[t.End:s.toks[to-1].End]
		for k := range w {
			if k < leastHalf || len(w)-k < leastHalf {
				continue
			}
			if !s.says(w[:k]) && !s.says(w[k:]) || opens.Has(w[:k]) || opens.Has(w[k:]) { // "mate de" says no more than "mate"
				continue
			}
			two := token.OneLine(before + w[:k] + " " + w[k:] + behind)
			f := s.resolver.Find(two, pl)
			if !f.Firm() || f.Fault != nil || f.Dropped != "" || f.Infusion != "" {
				continue
			}
			switch whole := s.resolver.Has(two); {
			case whole && !exact:
				as, hit, exact = two, f.Profile, true
			case whole == exact && hit == nil:
				as, hit = two, f.Profile
			case whole == exact && hit != f.Profile: // it may be either
				return "", nil
			}
		}
	}
	return as, hit
}

// says reports whether a word is one of names, in full or shortened.
func (s *script) says(w string) bool {
	_, shortened := jargon.Lengthen(strings.ToLower(w))
	return shortened || s.resolver.Mentions(w)
}

// named lists where a name may end that starts at i, the shortest first.
func (s *script) named(i int) []int {
	var out []int
	words, depth := 0, 0
	for k := i; k < len(s.toks) && words <= mostName; k++ {
		t := &s.toks[k]
		switch {
		case t.Kind == token.Word:
			words++
		case t.Is("(") && k > i && depth == 0:
			depth++
		case t.Is(")") && depth > 0:
			depth--
		case t.Is("&") && k > i && depth == 0, t.Is("/") && t.Glued && k+1 < len(s.toks) && s.toks[k+1].Glued && k > i && len(s.toks[k-1].Text) == 1:
			continue
		case t.Is(".") && t.Glued && k > i && !s.ends(k+1) && s.toks[k+1].Kind == token.Word:
			continue // "arom. bitters"
		default:
			return out
		}
		if depth == 0 && words > 0 && words <= mostName {
			out = append(out, k+1)
		}
	}
	return out
}
