package numeral

import (
	"slices"
	"strconv"
	"strings"

	"counterpour/flavor/measure/pattern"
)

// mostInAPack is the largest number that is taken for that of bottles in a pack: common practice,
// no source.
const mostInAPack = 240

// packWords are what a pack of bottles is called in stock lists and on invoices, in English,
// German, French, Spanish and Italian: common practice, no source.
var packWords = []string{"pack", "packs", "packsize", "package", "multipack", "case", "cases", "casesize", "carton", "cartons", "crate", "crates", "outer",
	"ve", "vpe", "gebinde", "gebindegröße", "gebindegrösse", "karton", "kartons", "kiste", "kisten", "kasten", "packung", "packungsgröße", "packungsgrösse", "verpackungseinheit", "kolli", "colli", "collo",
	"colis", "caisse", "caisses", "conditionnement", "caja", "cajas", "cartón", "cartone", "cartoni", "cassa", "casse", "confezione"}

// PackWord reports whether a word, in lower case, is a name for a pack of bottles.
func PackWord(word string) bool { return slices.Contains(packWords, word) }

var (
	// packAlone matches a cell of one whole number, perhaps with words: 6, 6er, Karton 6.
	packAlone = pattern.Of(`^[\p{L} ./:(-]*?([0-9]{1,3})\s*([\p{L}×]*)[ .)]*$`)
	// packOfSizes matches a number of bottles before the size of one: 6x70cl.
	packOfSizes = pattern.Of(`(?i)(?:^|[\s,;(])([0-9]{1,3})\s*[x×]\s*[0-9]+(?:[.,][0-9]+)?\s*(?:ml|cl|dl|l|ltr|lit(?:re|er)s?|oz|g|kg)(?:$|[^\p{L}])`)
	// wordThenCount matches a word, perhaps one for a pack, and a count behind it: Karton 6x, case of 6.
	wordThenCount = pattern.Of(`(?i)(\p{L}+)\.?\s*(?:(?:of|à|a|mit|zu|von|de|da|di)\s+|[:=/-]\s*)?([0-9]{1,3})\s*([x×]|er\b|[\p{L}%]+|[.,][0-9])?`)
	// countThenWord matches a count joined to a word, perhaps one for a pack: 6er Karton, 6-pack, 6 bottles per case.
	countThenWord = pattern.Of(`(?i)(?:^|[\s,;(])([0-9]{1,3})(?:\s*[x×-]\s*|\s*er[\s-]+|\s*/\s*|\s+(?:\p{L}+\.?\s+)?(?:per|pro|je|par|por|in|im|à)\s+(?:(?:a|the|der|einem|einer)\s+)?)(\p{L}+)`)
)

// PackCell reads a cell under a title for packs: how many bottles are in one; 0 if it does not
// say, or says a size.
func PackCell(cell string) int {
	m := packAlone.FindStringSubmatch(strings.TrimSpace(cell))
	if m == nil || LooksLikeSize(m[1]+" "+m[2]) {
		return 0
	}
	return inAPack(m[1])
}

// PackIn finds in a text how many bottles are in a pack, and the words that say so; 0 if none do.
func PackIn(text string) (n int, said string) {
	if m := packOfSizes.FindStringSubmatch(text); m != nil && inAPack(m[1]) > 0 {
		return inAPack(m[1]), strings.TrimSpace(m[0])
	}
	for _, m := range wordThenCount.FindAllStringSubmatch(text, -1) {
		behind := strings.ToLower(m[3])
		counts := behind == "" || behind == "x" || behind == "×" || behind == "er" || !strings.ContainsAny(behind, ".,") && !LooksLikeSize("100 "+behind)
		if n := inAPack(m[2]); n > 0 && counts && PackWord(strings.ToLower(m[1])) {
			return n, strings.TrimSpace(m[0])
		}
	}
	for _, m := range countThenWord.FindAllStringSubmatch(text, -1) {
		if n := inAPack(m[1]); n > 0 && PackWord(strings.ToLower(m[2])) {
			return n, strings.TrimSpace(m[0])
		}
	}
	return 0, ""
}

// inAPack reads a count of bottles that a pack may hold; 0 if it is none.
func inAPack(written string) int {
	n, err := strconv.Atoi(written)
	if err != nil || n < 2 || n > mostInAPack {
		return 0
	}
	return n
}
