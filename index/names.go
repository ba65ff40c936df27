package index

import (
	"maps"
	"slices"
	"strings"
	"sync"
	"unicode/utf8"

	"counterpour/flavor"
)

// spellings maps words with two spellings to one of them, and plurals that NormaliseName
// does not complete to their singular.
var spellings = map[string]string{
	"whisky": "whiskey", "licorice": "liquorice", "chili": "chilli", "chile": "chilli",
	"colour": "color", "coloured": "colored", "colourless": "colorless",
	"flavour": "flavor", "flavoured": "flavored", "yogurt": "yoghurt", "camomile": "chamomile",
	"grey": "gray", "sulphur": "sulfur",
	"peache": "peach", "tomatoe": "tomato", "mangoe": "mango", "cooky": "cookie", "radishe": "radish",
}

// letters maps letters that are no accented forms, so that NormaliseName keeps them, to
// plain ones.
var letters = strings.NewReplacer("ı", "i", "ø", "o", "ł", "l", "đ", "d", "ß", "ss", "æ", "ae", "œ", "oe")

// fold returns the key under which a name is looked up: normalised, in plain letters and
// in one spelling.
func fold(written string) string { return foldKey(flavor.NormaliseName(written)) }

// foldKey is fold for a normalised name, which most often is such a key.
func foldKey(key string) string {
	if strings.ContainsFunc(key, func(c rune) bool { return c >= utf8.RuneSelf }) {
		key = letters.Replace(key)
	}
	for w := range strings.FieldsSeq(key) {
		if _, ok := spellings[w]; ok {
			return respelt(key)
		}
	}
	return key
}

// respelt writes each word of a key in one spelling.
func respelt(key string) string {
	words := strings.Fields(key)
	for i, w := range words {
		if s, ok := spellings[w]; ok {
			words[i] = s
		}
	}
	return strings.Join(words, " ")
}

func foldAll(written []string) []string {
	out := make([]string, 0, len(written))
	for _, w := range written {
		if k := fold(w); k != "" {
			out = append(out, k)
		}
	}
	return out
}

// claim is the profile that a key belongs to. It is contested if two profiles have an
// equal right to it.
type claim struct {
	profile   *flavor.Profile
	exact     bool // by its own name or id
	contested bool
}

// how returns how a name is met that has the claim.
func (c claim) how() flavor.MatchHow {
	if c.exact {
		return flavor.MatchExact
	}
	return flavor.MatchAlias
}

// claims maps keys to profiles.
type claims map[string]claim

// put adds a claim. A profile's own name takes precedence over an alias; two of the same
// kind are contested.
func (c claims) put(key string, p *flavor.Profile, exact bool) {
	old, taken := c[key]
	switch {
	case key == "" || taken && old.profile == p && old.exact:
	case !taken || old.profile == p || !old.exact && exact:
		c[key] = claim{profile: p, exact: exact}
	case old.exact == exact:
		old.contested = true
		c[key] = old
	}
}

// spelling is a name of a profile.
type spelling struct {
	profile *flavor.Profile
	key     string // folded, with a space between words
	length  int32  // of key in letters, with spaces
	letters uint32 // of key
}

// pair is two words in alphabetical order.
type pair [2]string

func pairOf(a, b string) pair { return pair{min(a, b), max(a, b)} }

// initialled is a name, normalised, with the letters that its words begin with, and all of
// them, as bits.
type initialled struct {
	initials, letters uint32
	name              string
}

// lettersOf returns the letters of a word as bits, one for each from a to z and one for all
// others.
func lettersOf(word string) uint32 {
	bits := uint32(0)
	for i := range len(word) {
		bits |= letterBit(word[i])
	}
	return bits
}

// letterBit returns the bit of a letter.
func letterBit(c byte) uint32 {
	if c < 'a' || c > 'z' {
		return 1 << 26
	}
	return 1 << (c - 'a')
}

// initialsOf returns the letters that words parted by spaces begin with, as bits.
func initialsOf(name string) uint32 {
	bits := uint32(0)
	for i := range len(name) {
		if name[i] != ' ' && (i == 0 || name[i-1] == ' ') {
			bits |= letterBit(name[i])
		}
	}
	return bits
}

// names holds all names of ingredients.
type names struct {
	written claims // normalised
	folded  claims // folded
	sorted  claims // folded, words in alphabetical order
	closed  claims // folded, without spaces

	spellings  map[int][]spelling // by number of words
	known      map[string]bool    // every word of a name or material
	words      []string           // known, in alphabetical order
	letters    []uint32           // of each of words
	initialled []initialled       // every name, as they were added
	kin        map[pair]bool      // words that one profile carries as spellings of each other
	starts     func() []start     // worked out when something is completed
}

func newNames(profiles []*flavor.Profile) *names {
	all := 0
	for _, p := range profiles {
		all += len(p.Aliases) + 2
	}
	n := &names{written: make(claims, all), folded: make(claims, all), sorted: make(claims, all), closed: make(claims, all),
		spellings: map[int][]spelling{}, known: map[string]bool{}, kin: map[pair]bool{}}
	for _, p := range profiles {
		var words []string
		for i, name := range append([]string{p.Name, p.ID}, p.Aliases...) {
			words = append(words, n.add(name, p, i < 2)...)
		}
		n.addKin(words)
		for _, m := range p.Materials {
			for _, w := range strings.Fields(fold(m.Material)) {
				n.known[w] = true
			}
		}
	}
	n.words = slices.Sorted(maps.Keys(n.known))
	n.letters = make([]uint32, len(n.words))
	for i, w := range n.words {
		n.letters[i] = lettersOf(w)
	}
	n.starts = sync.OnceValue(func() []start { return startsOf(profiles) })
	return n
}

// add adds a name of p, its own if exact is true, and returns its words.
func (n *names) add(name string, p *flavor.Profile, exact bool) []string {
	written := flavor.NormaliseName(name)
	key := foldKey(written)
	words := strings.Fields(key)
	n.initialled = append(n.initialled, initialled{initialsOf(written), lettersOf(written), written})
	n.written.put(written, p, exact)
	n.folded.put(key, p, exact)
	n.sorted.put(sortWords(words), p, exact)
	n.closed.put(strings.Join(words, ""), p, exact)
	n.spellings[len(words)] = append(n.spellings[len(words)], spelling{p, key, int32(utf8.RuneCountInString(key)), lettersOf(key)})
	for _, w := range words {
		n.known[w] = true
	}
	return words
}

// addKin finds words of one profile that are spellings of each other, such as cardamom
// and cardamon.
func (n *names) addKin(words []string) {
	slices.Sort(words)
	words = slices.Compact(words)
	for i, a := range words {
		for _, b := range words[i+1:] {
			if a != b && wordSlip(a, b) > 0 {
				n.kin[pairOf(a, b)] = true
			}
		}
	}
}

func sortWords(words []string) string {
	s := slices.Clone(words)
	slices.Sort(s)
	return strings.Join(s, " ")
}
