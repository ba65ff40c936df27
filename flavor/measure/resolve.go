package measure

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"counterpour/flavor"
)

// Finder finds the ingredient behind a written name. An unknown name is an
// error that holds a *[flavor.Fault] of kind [flavor.ErrUnknown]; any other
// error is the finder's own failure and ends the reading.
type Finder interface {
	Resolve(written string) (*flavor.Profile, flavor.Match, error)
}

// Resolve looks up the names of a draft and works out millilitres, method and
// service. A name is tried as written, then without words such as "fresh" or
// "large"; Match.Asked stays as written. It fails with [flavor.Faults], one for
// every line at fault, or with the finder's error, wrapped. What the draft left
// out is assumed, see [Assume].
func Resolve(d Draft, f Finder) (flavor.Spec, error) {
	s := flavor.Spec{Name: d.Name, Method: d.Method, Service: d.Service, Notes: slices.Clone(d.Notes)}
	var faults flavor.Faults
	for i, l := range d.Lines {
		pour, fault, err := resolveLine(l, f)
		switch {
		case err != nil:
			return flavor.Spec{}, err
		case i == 0 && l.perhapsName && d.Name == "" && (fault != nil || pour.Match.How == flavor.MatchFuzzy):
			s.Name = stripBullet(l.Asked)
			continue
		case fault != nil:
			fault.Location = lineLocation(l.Number)
			if i == 0 && d.Name == "" && l.Unit == "" {
				fault.Message += "; if this is the name of the drink, write \"" + namePrefix + " " + stripBullet(l.Asked) + "\""
			}
			faults = append(faults, fault)
			continue
		}
		s.Pours = append(s.Pours, pour)
		if l.Note != "" {
			s.Notes = append(s.Notes, lineLocation(l.Number)+": "+l.Note)
		}
	}
	faults = append(faults, checkDraft(d, &s, len(faults) > 0)...)
	if len(faults) > 0 {
		return flavor.Spec{}, faults
	}
	return Assume(s), nil
}

// checkDraft finds what is wrong with a draft beside its lines.
func checkDraft(d Draft, s *flavor.Spec, failed bool) (faults flavor.Faults) {
	if len(s.Pours) == 0 && !failed {
		f := invalid("", "", "there is no pour here; write at least one, such as \"2 oz London dry gin\"")
		f.Location = lineLocation(1)
		faults = append(faults, f)
	}
	if d.Method != "" && !d.Method.Valid() {
		faults = append(faults, invalid("method", string(d.Method), "%q is no method; use %s", string(d.Method), flavor.JoinOr(names(flavor.Methods()))))
	}
	if d.Service != "" && !d.Service.Valid() {
		faults = append(faults, invalid("service", string(d.Service), "%q is no service; use %s", string(d.Service), flavor.JoinOr(names(flavor.Services()))))
	}
	return faults
}

// ResolvePour makes a pour of an amount, a unit and a name that were given
// apart, with the checks of [Parse] and [Resolve]. An empty unit is a piece,
// where the ingredient comes in pieces. The faults are located at location
// with ".amount", ".unit" or ".ingredient".
func ResolvePour(amount float64, unit, name, location string, f Finder) (flavor.Pour, error) {
	var faults flavor.Faults
	at := func(fault *flavor.Fault) {
		if location != "" {
			fault.Location = location + "." + fault.Location
		}
		faults = append(faults, fault)
	}
	u, known := ParseUnit(unit)
	if !known && strings.TrimSpace(unit) != "" {
		fault := invalid("unit", unit, "%q is no unit%s; use %s", unit, didYouMean(NearestUnits(unit)), flavor.JoinOr(unitNames(Units())))
		fault.Suggest = NearestUnits(unit)
		at(fault)
	}
	if fault := checkAmount(amount, u, number(amount)); fault != nil {
		at(fault)
	}
	written := oneLine(name)
	switch {
	case written == "":
		at(invalid("ingredient", name, "the pour names no ingredient; write one, such as \"London dry gin\""))
	case len([]rune(written)) > MaxLine:
		at(invalid("ingredient", string([]rune(written)[:40]), "the name is longer than %d characters", MaxLine))
	}
	if len(faults) > 0 {
		return flavor.Pour{}, faults
	}
	pour, fault, err := resolveLine(Line{Amount: amount, Unit: u, Name: written}, f)
	if err != nil {
		return flavor.Pour{}, err
	}
	if fault != nil {
		at(fault)
		return flavor.Pour{}, faults
	}
	return pour, nil
}

// found is an ingredient that a wording of a name led to.
type found struct {
	profile *flavor.Profile
	match   flavor.Match
	unit    flavor.Unit
	ml      float64
	fault   *flavor.Fault // why it cannot be poured in that unit
}

// firm reports whether the name is the ingredient's own and not merely near it.
func (c *found) firm() bool { return c.match.How != flavor.MatchFuzzy }

// resolveLine finds the ingredient of a line. A firm match that can be poured
// as written comes first; a near one only if there is no firm match at all, so
// that a slip in a unit is not taken for a slip in a name.
func resolveLine(l Line, f Finder) (flavor.Pour, *flavor.Fault, error) {
	if fault := checkAmount(l.Amount, l.Unit, number(l.Amount)); fault != nil {
		return flavor.Pour{}, fault, nil
	}
	hits, unknown, err := lookUp(l, f)
	if err != nil {
		return flavor.Pour{}, nil, err
	}
	hit := choose(hits)
	if l.Unit == "" && (hit == nil || !hit.firm()) {
		fault, err := misspeltUnit(l, f)
		if fault != nil || err != nil {
			return flavor.Pour{}, fault, err
		}
	}
	switch {
	case hit == nil:
		return flavor.Pour{}, unknown, nil
	case hit.fault != nil && l.Unit == "":
		return flavor.Pour{}, noUnit(l, hit.profile), nil
	case hit.fault != nil:
		return flavor.Pour{}, hit.fault, nil
	case hit.ml > MaxPourML:
		return flavor.Pour{}, invalid("amount", number(l.Amount), "%s of %s is more than %v ml; write less", FormatAmount(l.Amount, hit.unit), hit.profile.Name, MaxPourML), nil
	}
	return flavor.Pour{Profile: hit.profile, Amount: l.Amount, Unit: hit.unit, ML: hit.ml, Match: hit.match}, nil, nil
}

// choose picks the best hit: firm and pourable, firm, near and pourable, near.
func choose(hits []found) *found {
	rank := func(c *found) int {
		n := 0
		if c.firm() {
			n += 2
		}
		if c.fault == nil {
			n++
		}
		return n
	}
	var best *found
	for i := range hits {
		if best == nil || rank(&hits[i]) > rank(best) {
			best = &hits[i]
		}
	}
	return best
}

// lookUp tries every wording of a line's name, in order. Without a hit it
// returns the fault that says the name is unknown.
func lookUp(l Line, f Finder) (hits []found, unknown *flavor.Fault, err error) {
	for _, w := range wordings(l) {
		p, m, fault, err := ask(w.name, f)
		if err != nil {
			return nil, nil, err
		}
		if fault != nil {
			if unknown == nil || len(unknown.Suggest) == 0 && len(fault.Suggest) > 0 {
				fault.Value = l.Name
				unknown = fault
			}
			continue
		}
		m.Asked = w.asked
		for _, u := range w.units {
			c := found{profile: p, match: m, unit: u}
			c.ml, c.fault = toML(l.Amount, u, p)
			hits = append(hits, c)
		}
	}
	return hits, unknown, nil
}

// ask calls the finder. An unknown name is a fault at "ingredient", a copy that
// may be changed; anything else the finder reports is an error.
func ask(name string, f Finder) (*flavor.Profile, flavor.Match, *flavor.Fault, error) {
	p, m, err := f.Resolve(name)
	if err == nil && p != nil {
		return p, m, nil, nil
	}
	var fault *flavor.Fault
	switch {
	case err == nil:
		return nil, m, unknownName(name), nil
	case errors.As(err, &fault) && fault != nil:
		own := *fault
		own.Location = "ingredient"
		return nil, m, &own, nil
	}
	return nil, m, nil, fmt.Errorf("measure: look up %q: %w", name, err)
}

func unknownName(name string) *flavor.Fault {
	return &flavor.Fault{Kind: flavor.ErrUnknown, Location: "ingredient", Value: name,
		Message: fmt.Sprintf("%q is not an ingredient known here; check the spelling, or write its category, such as \"London dry gin\"", name)}
}

// wording is a name to look up and the units that it would be poured in.
type wording struct {
	name  string
	asked string // what it stands for in Match
	units []flavor.Unit
}

// adjectives change nothing about which ingredient is meant.
var adjectives = map[string]bool{
	"fresh": true, "freshly": true, "squeezed": true, "pressed": true, "thin": true, "thick": true, "large": true, "medium": true,
	"small": true, "big": true, "good": true, "quality": true, "cold": true, "chilled": true, "hot": true, "ripe": true,
	"whole": true, "strained": true, "homemade": true, "home-made": true, "house": true, "house-made": true, "housemade": true,
}

// wordings lists what to look up for a line: the name, the name without
// adjectives, and, after a counted unit, both with the unit as their last word
// ("sugar cube", "bay leaf"), which may then be counted in pieces.
func wordings(l Line) []wording {
	units := []flavor.Unit{l.Unit}
	if l.Unit == "" {
		units[0] = flavor.Piece
	}
	plain := strip(l.Name)
	var out []wording
	for _, n := range plain {
		out = append(out, wording{n, l.Name, units})
	}
	info, ok := infoOf(l.Unit)
	if !ok || info.kind != byCount {
		return out
	}
	for _, n := range plain {
		out = append(out, wording{n + " " + info.one, l.Name + " " + info.one, []flavor.Unit{l.Unit, flavor.Piece}})
	}
	return out
}

// strip returns the name, then the name with its leading adjectives dropped one
// by one, then without any.
func strip(name string) []string {
	out := []string{name}
	add := func(words []string) {
		if n := strings.Trim(strings.Join(words, " "), " ,;"); n != "" && !slices.Contains(out, n) {
			out = append(out, n)
		}
	}
	is := func(w string) bool { return adjectives[strings.ToLower(strings.Trim(w, ",;()"))] }
	words := strings.Fields(name)
	for len(words) > 1 && is(words[0]) {
		words = words[1:]
		add(words)
	}
	add(slices.DeleteFunc(slices.Clone(words), is))
	return out
}

// misspeltUnit finds a word at either end of the name that is nearly a unit,
// where the rest is an ingredient: "2 onces gin". It is nil if there is none.
func misspeltUnit(l Line, f Finder) (*flavor.Fault, error) {
	words := strings.Fields(l.Name)
	if len(words) < 2 {
		return nil, nil
	}
	last := len(words) - 1
	for _, split := range []struct {
		word string
		rest []string
	}{{words[0], words[1:]}, {words[last], words[:last]}} {
		near := NearestUnits(split.word)
		if len(near) == 0 {
			continue
		}
		rest := tidyName(strings.Join(split.rest, " "))
		if rest == "" {
			continue
		}
		_, m, unknown, err := ask(rest, f)
		if err != nil {
			return nil, err
		}
		if unknown == nil && m.How != flavor.MatchFuzzy {
			fault := invalid("unit", split.word, "%q is no unit%s", split.word, didYouMean(near))
			fault.Suggest = near
			return fault, nil
		}
	}
	return nil, nil
}

// noUnit says that an ingredient does not come by the piece.
func noUnit(l Line, p *flavor.Profile) *flavor.Fault {
	suggest := unitNames(UnitsFor(p))
	f := invalid("unit", l.Name, "%q has an amount but no unit; write it after the amount: %s is poured in %s", l.Name, p.Name, flavor.JoinOr(suggest))
	f.Suggest = suggest
	return f
}
