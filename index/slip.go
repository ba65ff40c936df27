package index

import (
	"cmp"
	"math/bits"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor"
)

// maxNear is how many words are considered for one misspelt word.
const maxNear = 12

// maxCompared is how many letters of an unknown name are compared with names.
const maxCompared = 48

// maxSlips is the largest result of slipsAllowed.
const maxSlips = 2

// slipsAllowed returns how many letters may be wrong in a word of this length: none up to
// three letters, one up to seven, two from eight.
func slipsAllowed(letters int) int {
	switch {
	case letters < 4:
		return 0
	case letters < 8:
		return 1
	}
	return maxSlips
}

// wordSlip returns the number of edits that turn meant into written: 0 if they are equal,
// -1 if there are too many. Short words have many neighbours, so they may differ by one
// letter, but not the first. Words with digits may not differ.
func wordSlip(written, meant string) int {
	if written == meant {
		return 0
	}
	if n := utf8.RuneCountInString(written) - utf8.RuneCountInString(meant); n > maxSlips || n < -maxSlips {
		return -1
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

// leastSlipped is the least length of a word, as written and as meant, in which a
// misspelling is accepted. Shorter words have too many neighbours.
const leastSlipped = 5

// forgiven is wordSlip for a name that goes into a drink: -1 also for words shorter than
// leastSlipped.
func forgiven(written, meant string) int {
	if written != meant && (len([]rune(written)) < leastSlipped || len([]rune(meant)) < leastSlipped) {
		return -1
	}
	return wordSlip(written, meant)
}

// slip returns the one profile of whose name the words are a misspelling. It is nil if the
// nearest names belong to different profiles.
func (n *names) slip(words []string) (p *flavor.Profile) {
	best, ok := maxSlips+1, false
	written := n.wording(words)
	list := n.spellings[len(words)]
	for i := range list {
		s := &list[i]
		switch d := n.distance(&written, s, best); {
		case d < 0:
		case d < best:
			best, p, ok = d, s.profile, true
		case p != s.profile:
			ok = false
		}
	}
	if !ok || len(words) == 1 && !n.clear(words[0], best, p) {
		return nil
	}
	return p
}

// clear reports whether a single word is nearer to a name of p, which is slips edits
// away, than to any other known word: vermuth may be vermut or vermouth.
func (n *names) clear(written string, slips int, p *flavor.Profile) bool {
	letters := lettersOf(written)
	for i, w := range n.words {
		if d := n.slipOf(written, letters, i); d >= 0 && d <= slips && n.folded[w].profile != p {
			return false
		}
	}
	return true
}

// wording is a written name, split into words.
type wording struct {
	words   []string
	known   []bool // the word is a known one
	letters int    // without spaces
}

func (n *names) wording(words []string) wording {
	out := wording{words: words, known: make([]bool, len(words))}
	for i, w := range words {
		out.known[i] = n.known[w]
		out.letters += utf8.RuneCountInString(w)
	}
	return out
}

// distance returns the number of edits that turn meant, of as many words, into written,
// word by word. It returns -1 if there are more than limit or than allowed for that length. It also
// returns -1 if a word that differs is a known word: that was meant as written, or pear
// would be read as peach.
func (n *names) distance(written *wording, meant *spelling, limit int) int {
	letters := int(meant.length) - len(written.words) + 1
	limit = min(limit, slipsAllowed(letters))
	if over := written.letters - letters; over > limit || over < -limit { // each edit adds or drops one at most
		return -1
	}
	total, rest := 0, meant.key
	for i, w := range written.words {
		var is string
		is, rest, _ = strings.Cut(rest, " ")
		if w == is {
			continue
		}
		if written.known[i] && !n.kin[pairOf(w, is)] {
			return -1
		}
		d := forgiven(w, is)
		if total += d; d < 0 || total > limit {
			return -1
		}
	}
	return total
}

// nearWord is a known word of which another may be a misspelling, whole or as a misspelt
// prefix.
type nearWord struct {
	word  string
	slips int
	begun bool
}

// near returns up to maxNear known words of which written may be a misspelling, the
// nearest first.
func (n *names) near(written string) []nearWord {
	var out []nearWord
	letters := lettersOf(written)
	for i, w := range n.words {
		if d := n.slipOf(written, letters, i); d > 0 {
			out = append(out, nearWord{w, d, false})
		} else if d := begunSlip(written, w); d > 0 {
			out = append(out, nearWord{w, d, true})
		}
	}
	slices.SortStableFunc(out, func(a, b nearWord) int { return cmp.Compare(a.rank(), b.rank()) })
	return out[:min(maxNear, len(out))]
}

// slipOf is wordSlip for the known word in a place, and the letters of the written one.
func (n *names) slipOf(written string, letters uint32, place int) int {
	if apart(letters, n.letters[place]) > maxSlips {
		return -1
	}
	return wordSlip(written, n.words[place])
}

// apart returns how many edits two words are apart at least, by their letters: an edit brings
// one letter that the other word lacks at most, and takes one away.
func apart(a, b uint32) int {
	return max(bits.OnesCount32(a&^b), bits.OnesCount32(b&^a))
}

// rank puts whole words before prefixes, then fewer edits before more.
func (w nearWord) rank() int {
	if w.begun {
		return w.slips + maxSlips
	}
	return w.slips
}

// begunSlip is wordSlip for the prefix of a word: a good part of it, with the right first
// letter.
func begunSlip(written, meant string) int {
	if written == "" || meant == "" || written[0] != meant[0] || hasDigit(written) || hasDigit(meant) {
		return -1
	}
	a, b := []rune(written), []rune(meant)
	limit := slipsAllowed(len(a))
	best := limit + 1
	for n := max(1, len(a)-limit); n <= min(len(a)+limit, len(b)); n++ {
		best = min(best, editDistance(a, b[:n], limit))
	}
	if limit == 0 || best > limit {
		return -1
	}
	return best
}

// nearest returns up to limit profiles whose names need the fewest edits, relative to the
// length of the longer name.
func (n *names) nearest(key string, limit int) []*flavor.Profile {
	written := []rune(key)
	written = written[:min(len(written), maxCompared)]
	found := shortlist{limit: limit}
	letters := lettersOf(string(written))
	var meant []rune
	for _, list := range n.spellings {
		for i := range list {
			s := &list[i]
			longer := max(len(written), int(s.length), 1)
			most := longer
			if found.full() {
				most = int(found.worst()*float64(longer) + roundingSlips)
			}
			if apart(letters, s.letters) > most {
				continue
			}
			meant = append(meant[:0], []rune(s.key)...)
			if d := editDistance(written, meant, most); d <= most {
				found.add(s.profile, float64(d)/float64(longer))
			}
		}
	}
	out := make([]*flavor.Profile, len(found.list))
	for i, c := range found.list {
		out[i] = c.profile
	}
	return out
}

// roundingSlips keeps a name that is just as near as the last of a shortlist.
const roundingSlips = 1e-9

// shortlist is the profiles that are nearest to a written name, each once, the nearest
// first.
type shortlist struct {
	limit int
	list  []compared
}

// compared is a profile and the least share of the letters of one of its names that differ.
type compared struct {
	profile *flavor.Profile
	share   float64
}

func (l *shortlist) full() bool { return len(l.list) == l.limit }

// worst is the share of the last of a list that is full.
func (l *shortlist) worst() float64 { return l.list[len(l.list)-1].share }

// add puts a profile in its place, unless the list is full of nearer ones.
func (l *shortlist) add(p *flavor.Profile, share float64) {
	at := slices.IndexFunc(l.list, func(c compared) bool { return c.profile == p })
	switch {
	case at < 0:
		l.list = append(l.list, compared{p, share})
	case share < l.list[at].share:
		l.list[at].share = share
	default:
		return
	}
	slices.SortFunc(l.list, func(a, b compared) int { return byScore(-a.share, a.profile, -b.share, b.profile) })
	l.list = l.list[:min(len(l.list), l.limit)]
}
