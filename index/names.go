package index

import (
	"slices"
	"strings"
	"unicode"

	"counterpour/flavor"
)

// spellings maps words that are spelt in two ways onto one of them, and
// plurals that NormaliseName leaves half done onto their singular.
var spellings = map[string]string{
	"whisky": "whiskey", "licorice": "liquorice", "chili": "chilli", "chile": "chilli",
	"colour": "color", "coloured": "colored", "colourless": "colorless",
	"flavour": "flavor", "flavoured": "flavored", "yogurt": "yoghurt", "camomile": "chamomile",
	"grey": "gray", "sulphur": "sulfur",
	"peache": "peach", "tomatoe": "tomato", "mangoe": "mango", "cooky": "cookie", "radishe": "radish",
}

// letters that are no accented form of another and so outlive NormaliseName.
var letters = strings.NewReplacer("ı", "i", "ø", "o", "ł", "l", "đ", "d", "ß", "ss", "æ", "ae", "œ", "oe")

// fold returns the key that a written name is looked up under: normalised, in
// plain letters and in one spelling.
func fold(written string) string {
	words := strings.Fields(letters.Replace(flavor.NormaliseName(written)))
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

// claim is the profile that a key belongs to. It is contested if two profiles
// have the same right to it.
type claim struct {
	profile   *flavor.Profile
	how       flavor.MatchHow
	contested bool
}

// claims maps keys to profiles.
type claims map[string]claim

// put enters a claim. An own name beats an alias; two of a kind contest.
func (c claims) put(key string, p *flavor.Profile, how flavor.MatchHow) {
	old, taken := c[key]
	switch {
	case key == "" || taken && old.profile == p && old.how == flavor.MatchExact:
	case !taken || old.profile == p || old.how != how && how == flavor.MatchExact:
		c[key] = claim{profile: p, how: how}
	case old.how == how:
		old.contested = true
		c[key] = old
	}
}

// spelling is one name of a profile, cut into words.
type spelling struct {
	profile *flavor.Profile
	words   []string
	letters []rune // the name, spaces included
}

// pair is two words, the lesser first.
type pair [2]string

func pairOf(a, b string) pair { return pair{min(a, b), max(a, b)} }

// names is everything that ingredients are called.
type names struct {
	written claims // normalised
	folded  claims // folded
	sorted  claims // folded, words in alphabetical order
	closed  claims // folded, without spaces

	spellings map[int][]spelling // by number of words
	known     map[string]bool    // every word of a name or material
	kin       map[pair]bool      // words that one profile carries as spellings of each other
}

func newNames(profiles []*flavor.Profile) *names {
	n := &names{written: claims{}, folded: claims{}, sorted: claims{}, closed: claims{},
		spellings: map[int][]spelling{}, known: map[string]bool{}, kin: map[pair]bool{}}
	for _, p := range profiles {
		var words []string
		for i, name := range append([]string{p.Name, p.ID}, p.Aliases...) {
			how := flavor.MatchAlias
			if i < 2 {
				how = flavor.MatchExact
			}
			words = append(words, n.add(name, p, how)...)
		}
		n.addKin(words)
		for _, m := range p.Materials {
			for _, w := range strings.Fields(fold(m.Material)) {
				n.known[w] = true
			}
		}
	}
	return n
}

func (n *names) add(name string, p *flavor.Profile, how flavor.MatchHow) []string {
	key := fold(name)
	words := strings.Fields(key)
	n.written.put(flavor.NormaliseName(name), p, how)
	n.folded.put(key, p, how)
	n.sorted.put(sortWords(words), p, how)
	n.closed.put(strings.Join(words, ""), p, how)
	n.spellings[len(words)] = append(n.spellings[len(words)], spelling{p, words, []rune(key)})
	for _, w := range words {
		n.known[w] = true
	}
	return words
}

// addKin notes which words of one profile are spellings of each other, such
// as cardamom and cardamon.
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

// maxSlips is the most that slipsAllowed allows.
const maxSlips = 2

// slipsAllowed is how many letters may be wrong in a word or name of so many
// letters: none up to three, one up to seven, two from eight.
func slipsAllowed(letters int) int {
	switch {
	case letters < 4:
		return 0
	case letters < 8:
		return 1
	}
	return maxSlips
}

// wordSlip returns how many slips of the pen turn meant into written, 0 if
// they are the same, and -1 if it takes too many. Short words have many
// neighbours: they may differ by one letter, but not the first. Numbers may not
// differ at all.
func wordSlip(written, meant string) int {
	if written == meant {
		return 0
	}
	if hasDigit(written) || hasDigit(meant) {
		return -1
	}
	a, b := []rune(written), []rune(meant)
	limit := slipsAllowed(len(b))
	if n := min(len(a), len(b)); n < 4 {
		if n < 2 || a[0] != b[0] {
			return -1
		}
		limit = 1
	}
	if d := editDistance(a, b, limit); d <= limit {
		return d
	}
	return -1
}

func hasDigit(s string) bool { return strings.IndexFunc(s, unicode.IsDigit) >= 0 }

// slip returns the one profile of whose name the words are a slip of the pen.
// There is none if the nearest names belong to different profiles.
func (n *names) slip(words []string) (p *flavor.Profile, ok bool) {
	best := maxSlips + 1
	for _, s := range n.spellings[len(words)] {
		switch d := n.distance(words, s, best); {
		case d < 0:
		case d < best:
			best, p, ok = d, s.profile, true
		case p != s.profile:
			ok = false
		}
	}
	return p, ok && p != nil && (len(words) > 1 || n.clear(words[0], best, p))
}

// clear reports whether a lone word, so many slips from a name of p, is nearer
// to that name than to any other word: vermuth may be vermut or vermouth.
func (n *names) clear(written string, slips int, p *flavor.Profile) bool {
	for w := range n.known {
		if d := wordSlip(written, w); d >= 0 && d <= slips && n.folded[w].profile != p {
			return false
		}
	}
	return true
}

// distance returns how many slips turn meant into written, word by word, and
// -1 if there are more than limit, more than a name of its length allows, or
// a word was meant as it stands: one that is known is not a slip for another,
// or pear would be read as peach.
func (n *names) distance(written []string, meant spelling, limit int) int {
	limit = min(limit, slipsAllowed(len(meant.letters)-len(meant.words)+1))
	total := 0
	for i, w := range written {
		if w == meant.words[i] {
			continue
		}
		if n.known[w] && !n.kin[pairOf(w, meant.words[i])] {
			return -1
		}
		d := wordSlip(w, meant.words[i])
		if total += d; d < 0 || total > limit {
			return -1
		}
	}
	return total
}

// nearest returns the profiles whose names take the fewest changes of a
// letter, as a share of the longer name, at most n of them.
func (n *names) nearest(key string, limit int) []*flavor.Profile {
	type near struct {
		profile *flavor.Profile
		share   float64
	}
	written := []rune(key)
	best := map[*flavor.Profile]float64{}
	for _, list := range n.spellings {
		for _, s := range list {
			longer := max(len(written), len(s.letters))
			share := float64(editDistance(written, s.letters, longer)) / float64(max(longer, 1))
			if old, seen := best[s.profile]; !seen || share < old {
				best[s.profile] = share
			}
		}
	}
	list := make([]near, 0, len(best))
	for p, share := range best {
		list = append(list, near{p, share})
	}
	slices.SortFunc(list, func(a, b near) int { return byScore(-a.share, a.profile, -b.share, b.profile) })
	out := make([]*flavor.Profile, 0, limit)
	for _, l := range list[:min(limit, len(list))] {
		out = append(out, l.profile)
	}
	return out
}
