package drinks

import (
	_ "embed"
	"maps"
	"slices"
	"strings"
	"sync"
	"unicode/utf8"

	"counterpour/flavor"
)

// Names is the list as it is kept, a drink a line, in order: its name in lower case, its method,
// its service and what it pours, parted by tabs. A method or a service is empty where the proven
// drinks of that name differ in it or one does not state it; what it pours is what all of them do.
//
//go:embed names.txt
var Names string

// MostWords is the most words of a name that is looked for.
const MostWords = 6

const (
	leastOfKind  = 2 // names that end in a word make it a kind of drink: "sour", "fizz"
	leastClipped = 4 // letters of a name that is cut short: "marg", "caipi"
)

// served is how a drink is made and served, each empty where that is not the same everywhere, and
// the names of what is poured everywhere, parted by semicolons, and those of what its ratios measure.
type served struct {
	method  flavor.Method
	service flavor.Service
	pours   string
	ratios  string
}

// known is the list, by normalised name, and the kinds in which several names end.
type known struct {
	whole   map[string]served
	kinds   map[string]bool
	clipped map[string]bool   // beginnings of names of one word
	parted  [][][]string      // by how many words they have, the names in words
	telling map[string]string // words of one name of several words alone
}

var list = sync.OnceValue(func() known {
	k := known{whole: map[string]served{}, kinds: map[string]bool{}, clipped: map[string]bool{}, telling: map[string]string{}}
	ends := map[string]int{}
	for line := range strings.Lines(Names) {
		name, how, _ := strings.Cut(strings.TrimRight(line, "\n"), "\t")
		key := flavor.NormaliseName(name)
		if key == "" {
			continue
		}
		words := strings.Fields(key)
		for len(k.parted) <= len(words) {
			k.parted = append(k.parted, nil)
		}
		if _, twice := k.whole[key]; !twice {
			k.parted[len(words)] = append(k.parted[len(words)], words)
		}
		method, rest, _ := strings.Cut(how, "\t")
		service, rest, _ := strings.Cut(rest, "\t")
		pours, ratios, _ := strings.Cut(rest, "\t")
		k.whole[key] = served{flavor.Method(method), flavor.Service(service), pours, ratios}
		for _, w := range words {
			if was, twice := k.telling[w]; twice && was != key || utf8.RuneCountInString(w) < leastTelling {
				k.telling[w] = ""
			} else {
				k.telling[w] = key
			}
		}
		if len(words) > 1 {
			ends[words[len(words)-1]]++
			continue
		}
		for n := range key {
			if utf8.RuneCountInString(key[:n]) >= leastClipped && key[:n] != rinsing {
				k.clipped[key[:n]] = true
			}
		}
	}
	for w, n := range ends {
		if n >= leastOfKind {
			k.kinds[w] = true
		}
	}
	return k
})

// rinsing is what is done to a glass, and no clipping of a drink's name.
const rinsing = "wash"

// Known reports whether a name is that of a drink, however it is written.
func Known(name string) bool {
	_, ok := find(name)
	return ok
}

// Served returns how the drink of a name is made and served everywhere, each empty where bars
// differ or the name is that of no drink.
func Served(name string) (flavor.Method, flavor.Service) {
	how, _ := find(name)
	return how.method, how.service
}

// Pours returns the names of what a drink of a name pours everywhere, and that name. Other words may
// stand around it, as in "house Jungle Bird": the longest name in it is meant, and of two the last.
func Pours(name string) (pours []string, called string) {
	words := strings.Fields(flavor.NormaliseName(name))
	if len(words) > 2*MostWords {
		return nil, ""
	}
	for n := min(len(words), MostWords); n > 0; n-- {
		for from := len(words) - n; from >= 0; from-- {
			called = strings.Join(words[from:from+n], " ")
			if how, ok := find(called); ok && how.pours != "" {
				return strings.Split(how.pours, "; "), called
			}
		}
	}
	for i := len(words) - 1; i >= 0; i-- {
		if called = list().telling[words[i]]; called != "" {
			return strings.Split(list().whole[called].pours, "; "), called
		}
	}
	return nil, ""
}

// Among calls a function with each drink that has a list of what is poured into it, in the order of names.
func Among(each func(name string, pours []string)) {
	for _, name := range slices.Sorted(maps.Keys(list().whole)) {
		if pours := list().whole[name].pours; pours != "" {
			each(name, strings.Split(pours, "; "))
		}
	}
}

// leastTelling is the fewest letters of a word that stands for the one name that has it: "sbagliato".
const leastTelling = 6

// find looks up a name, however it is written.
func find(name string) (served, bool) {
	key := flavor.NormaliseName(name)
	if how, ok := list().whole[key]; ok {
		return how, true
	}
	how, ok := list().whole[inWords(key)]
	return how, ok
}

// figures are those that a name may be written with in place of a word: "ward 8".
var figures = map[string]string{"2": "two", "3": "three", "4": "four", "5": "five", "6": "six", "7": "seven", "8": "eight", "9": "nine", "10": "ten"}

// inWords is a name with its figures in words.
func inWords(key string) string {
	if !strings.ContainsAny(key, "0123456789") {
		return key
	}
	words := strings.Fields(key)
	for i, w := range words {
		if word := figures[w]; word != "" {
			words[i] = word
		}
	}
	return strings.Join(words, " ")
}

// leastShort is the fewest letters of the first word of a name whose words are all cut short.
const leastShort = 3

// Short reports whether a name of several words is that of a drink with its words cut short: "esp
// mart", "tom c".
func Short(name string) bool {
	words := strings.Fields(flavor.NormaliseName(name))
	if len(words) < 2 || utf8.RuneCountInString(words[0]) < leastShort {
		return false
	}
	parted := list().parted
	return len(words) < len(parted) && slices.ContainsFunc(parted[len(words)], func(of []string) bool { return begin(of, words) })
}

// begin reports whether words begin with others, one by one.
func begin(words, with []string) bool {
	for i, w := range with {
		if !strings.HasPrefix(words[i], w) {
			return false
		}
	}
	return true
}

// Called reports whether a name is that of a drink, is one cut short, or ends in a drink or a kind
// of drink: "Manhattan", "frozen marg", "garden spritz". Whoever asks has to know that the last
// word is nothing to pour: "gin and tonic" ends in tonic.
func Called(name string) bool {
	words := strings.Fields(flavor.NormaliseName(name))
	if len(words) == 0 || len(words) > MostWords {
		return false
	}
	k := list()
	for i := range words {
		if _, ok := k.whole[strings.Join(words[i:], " ")]; ok {
			return true
		}
	}
	last := words[len(words)-1]
	return k.clipped[last] || len(words) > 1 && k.kinds[last]
}
