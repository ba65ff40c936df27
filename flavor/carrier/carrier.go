// Package carrier holds one table of words: which name something that carries an allergen,
// comes from an animal or holds alcohol. Whatever a bartender writes beside what is known,
// on a drink, in brackets or on a bottle, is held against it.
package carrier

import (
	"slices"
	"strings"
	"sync"
	"unicode"

	"counterpour/flavor"
)

// Carried is what words say that there is.
type Carried struct {
	Marks   []flavor.AllergenMark // in the order of the law
	Animal  []string              // in the order of [flavor.Animals]
	Alcohol bool
	Words   []string // those that say so, as they are in the table
	// Grain says that every allergen is a cereal by its bare name, which distilling takes
	// away: Regulation (EU) No 1169/2011, Annex II, point 1.
	Grain bool
}

// None reports whether the words name none of it.
func (c *Carried) None() bool { return len(c.Marks) == 0 && len(c.Animal) == 0 && !c.Alcohol }

// Mark returns c with an allergen, with the surer of two certainties.
func (c *Carried) mark(m flavor.AllergenMark) {
	for i := range c.Marks {
		if c.Marks[i].Allergen == m.Allergen {
			if m.Certainty == flavor.Contains {
				c.Marks[i].Certainty = m.Certainty
			}
			return
		}
	}
	c.Marks = append(c.Marks, m)
}

// add joins what other words bring.
func (c *Carried) add(o *Carried) {
	first := len(c.Marks) == 0
	for _, m := range o.Marks {
		c.mark(m)
	}
	for _, a := range o.Animal {
		if !slices.Contains(c.Animal, a) {
			c.Animal = append(c.Animal, a)
		}
	}
	c.Alcohol = c.Alcohol || o.Alcohol
	if len(o.Marks) > 0 {
		c.Grain = o.Grain && (first || c.Grain)
	}
}

// longest is the most words of an entry.
const longest = 4

// spelt writes the signs in words as the table does.
var spelt = strings.NewReplacer("’", "'", "&", " and ")

// Words parts a text into words in lower case, without signs; a hyphen parts, an apostrophe
// does not.
func Words(text string) []string {
	text = spelt.Replace(strings.ToLower(text))
	return strings.FieldsFunc(text, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '\'' })
}

// At returns what the words from the first on name, and how many words that takes: 0 if the
// table has none of them. Words that only look like others bring nothing and take some.
func At(words []string) (Carried, int) {
	if len(words) == 0 {
		return Carried{}, 0
	}
	t := parsed()
	longest := min(longest, len(words))
	if !t.mayBegin(words[0]) {
		longest = 0
	}
	for n := longest; n > 0; n-- {
		for _, last := range singulars(words[n-1]) {
			key := strings.Join(append(slices.Clone(words[:n-1]), last), " ")
			if c, ok := t.entries[key]; ok {
				return c, n
			}
			if all := singularAll(words[:n]); all != key {
				if c, ok := t.entries[all]; ok {
					return c, n
				}
			}
		}
	}
	for _, stem := range stems {
		if strings.Contains(words[0], stem) {
			return t.entries[stem], 1
		}
	}
	return Carried{}, 0
}

// stems are words of the table that count within another word too: "haselnusssirup", "almondy",
// "fındıklı". The first that a word holds counts, so that the longer of two stands before the other.
var stems = strings.Fields(`jordnöt jordnød jordnøtt peanøtt maapähkinä földimogyoró foldimogyoro arašíd arasid pinda
	hasselnöt hasselnöd hasselnød hasselnøtt valnöt valnød valnøtt pistasj manteli pähkinä hazelnoot walnoot cashewnoot
	mandula mogyoró mogyoro pisztácia mandle mandlov mandľ ořech orech pistácie migdał migdal orzech orzesz
	badem fındık fındığ findik findig ceviz fıstık fıstığ fistik fistig almond amande hazelnut walnut peanut pistache pistachio pistazie macadamia cashew pecan praline haselnuss walnuss erdnuss mandel noisette cacahuete sesame sellerie prosciutto`)

// Of returns what a text names: all that any of its words does.
func Of(text string) Carried {
	words := Words(text)
	var out Carried
	for i := 0; i < len(words); {
		c, n := At(words[i:])
		if n == 0 {
			i++
			continue
		}
		if !c.None() {
			out.add(&c)
			out.Words = append(out.Words, strings.Join(words[i:i+n], " "))
		}
		i += n
	}
	out.sort()
	return out
}

// Join adds what another names, sorted.
func (c *Carried) Join(o *Carried) {
	c.add(o)
	c.Words = append(c.Words, o.Words...)
	c.sort()
}

func (c *Carried) sort() {
	order, animals := flavor.Allergens(), flavor.Animals()
	slices.SortFunc(c.Marks, func(a, b flavor.AllergenMark) int {
		return slices.Index(order, a.Allergen) - slices.Index(order, b.Allergen)
	})
	slices.SortFunc(c.Animal, func(a, b string) int { return slices.Index(animals, a) - slices.Index(animals, b) })
}

// Beyond returns what of it the record of an ingredient does not carry, alcohol aside: what
// whoever pours that instead would lose. A bare cereal beside a spirit is what it was distilled
// from, and nothing beyond it.
func (c *Carried) Beyond(p *flavor.Profile) (marks []flavor.AllergenMark, animal []string) {
	for _, m := range c.Marks {
		marked := slices.ContainsFunc(p.AllergenMarks, func(o flavor.AllergenMark) bool { return o.Allergen == m.Allergen })
		if marked || c.Grain && m.Allergen == flavor.Gluten && p.Base() {
			continue
		}
		marks = append(marks, m)
	}
	for _, a := range c.Animal {
		if !slices.Contains(p.Animal, a) {
			animal = append(animal, a)
		}
	}
	return marks, animal
}

// Lost returns what a name says that there is and the record of an ingredient does not carry. Words
// that stand in the names of the record are left to the record: no amaretto is asked about.
func Lost(name string, p *flavor.Profile) (marks []flavor.AllergenMark, animal []string) {
	words := Words(name)
	var all Carried
	for i := 0; i < len(words); {
		c, n := At(words[i:])
		if n > 0 && !c.None() && !Named(strings.Join(words[i:i+n], " "), p) {
			all.add(&c)
		}
		i += max(1, n)
	}
	all.sort()
	return all.Beyond(p)
}

// Named reports whether words stand in a name of an ingredient.
func Named(words string, p *flavor.Profile) bool {
	return slices.ContainsFunc(append([]string{p.Name}, p.Aliases...), func(n string) bool {
		return strings.Contains(" "+strings.Join(Words(n), " ")+" ", " "+words+" ")
	})
}

// Brings says in words what marks and animals there are: "tree nuts or milk"; empty for none.
func Brings(marks []flavor.AllergenMark, animal []string) string {
	var names []string
	for _, m := range marks {
		names = append(names, string(m.Allergen))
	}
	for _, a := range animal {
		if a != "egg" && a != "milk" && a != "fish" || len(marks) == 0 {
			names = append(names, a)
		}
	}
	return flavor.JoinOr(names)
}

// singulars are the forms in which the last word of an entry may be looked up.
func singulars(w string) []string {
	out := []string{w}
	if s, ok := strings.CutSuffix(w, "ies"); ok {
		out = append(out, s+"y", s+"ie")
	}
	if s, ok := strings.CutSuffix(w, "es"); ok {
		out = append(out, s)
	}
	if s, ok := strings.CutSuffix(w, "s"); ok && len(s) > 2 {
		out = append(out, s)
	}
	return out
}

// singularAll is a key of which every word is singular: "brandied cherries in syrups".
func singularAll(words []string) string {
	out := slices.Clone(words)
	for i, w := range out {
		if s, ok := strings.CutSuffix(w, "s"); ok && len(s) > 2 {
			out[i] = s
		}
	}
	return strings.Join(out, " ")
}

// parsedTable is the table by its words.
type parsedTable struct {
	entries map[string]Carried
	firsts  map[string]bool // the first word of each
}

// mayBegin reports whether an entry may begin with a word, in whatever number it is.
func (t *parsedTable) mayBegin(word string) bool {
	if t.firsts[word] {
		return true
	}
	return strings.HasSuffix(word, "s") && slices.ContainsFunc(singulars(word), func(w string) bool { return t.firsts[w] })
}

var parsed = sync.OnceValue(func() *parsedTable {
	out := map[string]Carried{}
	for line := range strings.Lines(table) {
		line = strings.TrimSpace(line)
		if line == "" {
			continue
		}
		brings, words, _ := strings.Cut(line, ":")
		c := bringsOf(brings)
		for w := range strings.SplitSeq(words, ",") {
			if key := strings.Join(Words(w), " "); key != "" {
				if had, ok := out[key]; ok {
					had.add(&c)
					had.sort()
					out[key] = had
					continue
				}
				out[key] = c
			}
		}
	}
	t := &parsedTable{out, map[string]bool{}}
	for key := range out {
		first, _, _ := strings.Cut(key, " ")
		t.firsts[first] = true
	}
	return t
})

// bringsOf reads what a line of the table brings.
func bringsOf(text string) Carried {
	var c Carried
	allergens, rest, _ := strings.Cut(text, "|")
	for w := range strings.SplitSeq(allergens, ",") {
		w = strings.TrimSpace(w)
		if w == "" {
			continue
		}
		m := flavor.AllergenMark{Allergen: flavor.Allergen(w), Certainty: flavor.Contains}
		if bare, ok := strings.CutPrefix(w, "may "); ok {
			m = flavor.AllergenMark{Allergen: flavor.Allergen(bare), Certainty: flavor.MayContain}
		}
		c.mark(m)
	}
	for w := range strings.SplitSeq(rest, ",") {
		switch w = strings.TrimSpace(w); w {
		case "":
		case "alcohol":
			c.Alcohol = true
		case "@grain":
			c.Grain = true
		default:
			c.Animal = append(c.Animal, w)
		}
	}
	c.sort()
	return c
}
