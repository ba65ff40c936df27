package index

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/blevesearch/bleve/v2"
	"github.com/blevesearch/bleve/v2/search/query"

	"counterpour/flavor"
	"counterpour/flavor/lookup"
)

// check returns the first fault of a query.
func (x *Index) check(q lookup.Query) error {
	if q.Limit < 0 || q.Limit > lookup.MaxLimit {
		return invalid("limit", fmt.Sprint(q.Limit), fmt.Sprintf("limit must be 1 to %d; leave it out for %d", lookup.MaxLimit, lookup.DefaultLimit))
	}
	if q.Class != "" && !q.Class.Valid() {
		return invalid("class", string(q.Class), fmt.Sprintf("%q is not a class; use one of: %s", capText(string(q.Class)), list(flavor.Classes())))
	}
	if f := q.Family; f != nil && (*f < 0 || int(*f) >= flavor.NumAromaFamilies) {
		return invalid("family", f.String(), fmt.Sprintf("the aroma families are numbered 0 to %d", flavor.NumAromaFamilies-1))
	}
	for _, n := range []struct {
		location string
		value    *float64
	}{{"bitter_min", q.BitterMin}, {"abv_max", q.ABVMax}} {
		if v := n.value; v != nil && (math.IsNaN(*v) || math.IsInf(*v, 0) || *v < 0) {
			return invalid(n.location, fmt.Sprint(*v), n.location+" must be a finite number, zero or more")
		}
	}
	if err := checkAvoid(q.Avoid); err != nil {
		return err
	}
	if q.Like != "" {
		if q.Measure == nil {
			return errNoMeasure
		}
		return x.checkID("like", q.Like)
	}
	return nil
}

// checkAvoid refuses unknown allergens: to ignore one would endanger a guest.
func checkAvoid(avoid []flavor.Allergen) error {
	for i, a := range avoid {
		if !slices.Contains(flavor.Allergens(), a) {
			return invalid(fmt.Sprintf("avoid[%d]", i), string(a),
				fmt.Sprintf("%q is not an allergen known here; use one of: %s", capText(string(a)), list(flavor.Allergens())))
		}
	}
	return nil
}

// checkID refuses an id that no ingredient has.
func (x *Index) checkID(location, id string) error {
	if _, ok := x.position[id]; ok {
		return nil
	}
	fault := x.unknown(id)
	fault.Location = location
	fault.Message = fmt.Sprintf("no ingredient has the id %q; %s", capText(id), nearestText(fault.Suggest))
	return fault
}

func invalid(location, value, message string) *flavor.DataFault {
	return &flavor.DataFault{Kind: flavor.ErrInvalid, Location: location, Value: capText(value), Message: message}
}

func list[T ~string](words []T) string {
	out := make([]string, len(words))
	for i, w := range words {
		out[i] = string(w)
	}
	return strings.Join(out, ", ")
}

// capText returns the first MaxText runes of s, in valid UTF-8.
func capText(s string) string {
	s = strings.TrimSpace(s)
	if len(s) > lookup.MaxText {
		n := 0
		for i := range s {
			if n == lookup.MaxText {
				s = s[:i]
				break
			}
			n++
		}
	}
	return strings.ToValidUTF8(s, string(utf8.RuneError))
}

// Weights of the ways in which a text can match. A match of a whole name outweighs any
// sum of word matches, so an exact name comes first.
const (
	weightKey       = 400.0
	weightAliasKey  = 200.0
	weightKeyBegins = 8.0
	weightAliasBegs = 4.0
	weightKeyBegun  = 1.0
	weightClass     = 40.0
	weightName      = 6.0
	weightAlias     = 4.0
	weightTyping    = 1.0
	weightWords     = 0.5
)

// asTyped matches all words: each as a word of a name, a prefix of one, or a describing
// word. It boosts names that equal the text or begin with it, then ingredients of a class
// with that name.
func asTyped(key string, words []string) query.Query {
	q := bleve.NewBooleanQuery()
	for _, w := range words {
		q.AddMust(either(asWritten(w)...))
	}
	q.AddShould(
		term(fieldKey, key, weightKey), term(fieldAliasKey, key, weightAliasKey),
		begins(fieldKey, key+" ", weightKeyBegins), begins(fieldAliasKey, key+" ", weightAliasBegs),
		begins(fieldKey, key, weightKeyBegun))
	for _, c := range classesOf(key) {
		q.AddShould(term(fieldClass, string(c), weightClass))
	}
	return q
}

// classesOf returns the classes that a folded text names, or whose name it ends.
func classesOf(key string) []flavor.Class {
	return slices.DeleteFunc(flavor.Classes(), func(c flavor.Class) bool {
		name := fold(string(c))
		return name != key && !strings.HasSuffix(name, " "+key)
	})
}

// withSlips matches all words, allowing misspellings of unknown words, or the one profile
// that the text resolves to.
func (x *Index) withSlips(written string, words []string) query.Query {
	q := bleve.NewConjunctionQuery(x.eachWithSlips(words)...)
	p, _, ok := x.lookUp(written)
	if !ok {
		return q
	}
	meant := bleve.NewDocIDQuery([]string{p.ID})
	meant.SetBoost(weightKey)
	return either(q, meant)
}

// halfOf matches at least half of the words, allowing misspellings.
func (x *Index) halfOf(words []string) query.Query {
	q := bleve.NewDisjunctionQuery(x.eachWithSlips(words)...)
	q.SetMin(float64((len(words) + 1) / 2))
	return q
}

func (x *Index) eachWithSlips(words []string) []query.Query {
	each := make([]query.Query, len(words))
	for i, w := range words {
		ways := asWritten(w)
		if !x.names.known[w] {
			ways = append(ways, x.slips(w)...)
		}
		each[i] = either(ways...)
	}
	return each
}

// asWritten matches a word in a name, as a prefix of a word of a name, or among the
// describing words.
func asWritten(w string) []query.Query {
	begun := []rune(w)
	return []query.Query{term(fieldName, w, weightName), term(fieldAlias, w, weightAlias),
		term(fieldTyping, string(begun[:min(len(begun), maxTyping)]), weightTyping), term(fieldWords, w, weightWords)}
}

// slips matches the known words of which w may be a misspelling. They are found here and
// not by bleve, whose automata take most of a second for a long text of unusual letters.
func (x *Index) slips(w string) []query.Query {
	var out []query.Query
	for _, near := range x.names.near(w) {
		share := 1 / float64(near.slips)
		if near.begun {
			share /= 2
		}
		out = append(out, term(fieldName, near.word, weightName*share), term(fieldAlias, near.word, weightAlias*share),
			term(fieldWords, near.word, weightWords*share))
	}
	return out
}

// filtersOf returns a bleve query for each filter. Filters do not affect scores.
func filtersOf(q lookup.Query) []query.Query {
	var out []query.Query
	if q.Class != "" {
		out = append(out, term(fieldClass, string(q.Class), 0))
	}
	if q.Family != nil {
		out = append(out, term(fieldFamily, q.Family.String(), 0))
	}
	if q.BitterMin != nil {
		out = append(out, between(fieldBitter, q.BitterMin, nil))
	}
	if q.ABVMax != nil {
		out = append(out, between(fieldABV, nil, q.ABVMax))
	}
	return append(out, without(fieldAllergen, q.Avoid)...)
}

// all matches documents that match all parts. It is a conjunction, since bleve's boolean
// query with a filter returns everything that matches the filter if the other parts
// cannot match.
func all(parts ...query.Query) query.Query { return bleve.NewConjunctionQuery(parts...) }

// either matches documents that match at least one part.
func either(parts ...query.Query) query.Query {
	q := bleve.NewDisjunctionQuery(parts...)
	q.SetMin(1)
	return q
}

func term(field, value string, boost float64) query.Query {
	q := bleve.NewTermQuery(value)
	q.SetField(field)
	q.SetBoost(boost)
	return q
}

func begins(field, value string, boost float64) query.Query {
	q := bleve.NewPrefixQuery(value)
	q.SetField(field)
	q.SetBoost(boost)
	return q
}

// between matches numbers from low to high inclusive; nil is no limit.
func between(field string, low, high *float64) query.Query {
	yes := true
	q := bleve.NewNumericRangeInclusiveQuery(low, high, &yes, &yes)
	q.SetField(field)
	q.SetBoost(0)
	return q
}

// without matches documents that have none of the values in a field. Without values it
// returns no query.
func without[T ~string](field string, values []T) []query.Query {
	if len(values) == 0 {
		return nil
	}
	everything := bleve.NewMatchAllQuery()
	everything.SetBoost(0)
	q := bleve.NewBooleanQuery()
	q.AddMust(everything)
	for _, v := range values {
		q.AddMustNot(term(field, string(v), 0))
	}
	return []query.Query{q}
}
