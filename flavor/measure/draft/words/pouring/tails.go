package pouring

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// Tail is what the words after a name say.
type Tail struct {
	Unit     flavor.Unit // of a pour without an amount
	After    bool
	Muddled  bool
	Squeezed bool
	Garnish  bool
	Each     bool
	Remark   string // kept as a note
	Refuse   bool   // states no amount: "to taste"
	Beside   bool   // is served beside the drink, and kept as its garnish
}

// tails are the words that may follow a name, the longest first.
var tails = []struct {
	words []string
	means Tail
}{
	{[]string{"to", "top", "up"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"to", "top", "off"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"to", "fill", "up"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"to", "top", "with"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"for", "the", "rinse"}, Tail{Unit: flavor.Rinse, After: true}}, {[]string{"as", "a", "float"}, Tail{Unit: flavor.Float, After: true}},
	{[]string{"to", "top"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"top", "up"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"top-up"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"top", "off"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"to", "fill"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"fill", "up"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"full", "up"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"filled", "up"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"on", "top"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"en", "top"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"as", "top"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"as", "a", "top"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"on", "foam"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"on", "the", "foam"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"auffüllen"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"aufgießen"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"for", "topping"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"to", "lengthen"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"to", "finish"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"to", "float"}, Tail{Unit: flavor.Float, After: true}}, {[]string{"floated", "on", "top"}, Tail{Unit: flavor.Float, After: true}},
	{[]string{"to", "rinse"}, Tail{Unit: flavor.Rinse, After: true}}, {[]string{"for", "rinse"}, Tail{Unit: flavor.Rinse, After: true}},
	{[]string{"to", "spritz"}, Tail{Unit: flavor.Spritz, After: true}}, {[]string{"to", "mist"}, Tail{Unit: flavor.Spritz, After: true}},
	{[]string{"to", "taste"}, Tail{Refuse: true}}, {[]string{"as", "needed"}, Tail{Refuse: true}}, {[]string{"if", "needed"}, Tail{Refuse: true}},
	{[]string{"for", "muddling"}, Tail{Muddled: true}}, {[]string{"to", "muddle"}, Tail{Muddled: true}},
	{[]string{"to", "garnish"}, Tail{Garnish: true}}, {[]string{"for", "garnish"}, Tail{Garnish: true}}, {[]string{"as", "garnish"}, Tail{Garnish: true}},
	{[]string{"as", "a", "garnish"}, Tail{Garnish: true}}, {[]string{"for", "the", "garnish"}, Tail{Garnish: true}}, {[]string{"garnish"}, Tail{Garnish: true}},
	{[]string{"top"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"topper"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"topped"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"auff"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"auffüllend"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"aufgefüllt"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"zum", "auffüllen"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"zum", "aufgießen"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"a", "colmare"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"per", "colmare"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"colmare"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"pour", "allonger"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"pour", "compléter"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"à", "compléter"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"compléter"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"para", "completar"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"a", "completar"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"para", "rellenar"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"om", "aan", "te", "vullen"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"om", "af", "te", "toppen"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"aftoppen"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"til", "topp"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"fyll", "opp"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"topped", "up"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"float"}, Tail{Unit: flavor.Float, After: true}}, {[]string{"floated"}, Tail{Unit: flavor.Float, After: true}}, {[]string{"flt"}, Tail{Unit: flavor.Float, After: true}}, {[]string{"floater"}, Tail{Unit: flavor.Float, After: true}},
	{[]string{"rinse"}, Tail{Unit: flavor.Rinse, After: true}}, {[]string{"rinsed"}, Tail{Unit: flavor.Rinse, After: true}}, {[]string{"wash"}, Tail{Unit: flavor.Rinse, After: true}},
	{[]string{"spritz"}, Tail{Unit: flavor.Spritz, After: true}}, {[]string{"spray"}, Tail{Unit: flavor.Spritz, After: true}}, {[]string{"mist"}, Tail{Unit: flavor.Spritz, After: true}},
	{[]string{"muddled"}, Tail{Muddled: true}}, {[]string{"mudd"}, Tail{Muddled: true}}, {[]string{"muddle"}, Tail{Muddled: true}}, {[]string{"muddeln"}, Tail{Muddled: true}}, {[]string{"anmuddeln"}, Tail{Muddled: true}}, {[]string{"gemuddled"}, Tail{Muddled: true}},
	{[]string{"squeezed"}, Tail{Squeezed: true}}, {[]string{"juiced"}, Tail{Squeezed: true}}, {[]string{"exprimido"}, Tail{Squeezed: true}}, {[]string{"exprimida"}, Tail{Squeezed: true}}, {[]string{"espremido"}, Tail{Squeezed: true}}, {[]string{"espremida"}, Tail{Squeezed: true}}, {[]string{"pressée"}, Tail{Squeezed: true}}, {[]string{"spremuta"}, Tail{Squeezed: true}}, {[]string{"pressé"}, Tail{Squeezed: true}}, {[]string{"spremuto"}, Tail{Squeezed: true}}, {[]string{"ausgepresst"}, Tail{Squeezed: true}},
	{[]string{"machacado"}, Tail{Muddled: true}}, {[]string{"machacada"}, Tail{Muddled: true}}, {[]string{"machacados"}, Tail{Muddled: true}}, {[]string{"machacadas"}, Tail{Muddled: true}}, {[]string{"gemuddelt"}, Tail{Muddled: true}}, {[]string{"pestato"}, Tail{Muddled: true}}, {[]string{"pestata"}, Tail{Muddled: true}}, {[]string{"pestati"}, Tail{Muddled: true}}, {[]string{"pestate"}, Tail{Muddled: true}}, {[]string{"pilé"}, Tail{Muddled: true}}, {[]string{"pilée"}, Tail{Muddled: true}}, {[]string{"pilées"}, Tail{Muddled: true}}, {[]string{"macerado"}, Tail{Muddled: true}}, {[]string{"macerada"}, Tail{Muddled: true}}, {[]string{"gekneusd"}, Tail{Muddled: true}}, {[]string{"squeezed", "in"}, Tail{Squeezed: true}},
	{[]string{"on", "the", "side"}, Tail{Garnish: true, Beside: true}}, {[]string{"on", "side"}, Tail{Garnish: true, Beside: true}}, {[]string{"a", "parte"}, Tail{Garnish: true, Beside: true}}, {[]string{"aparte"}, Tail{Garnish: true, Beside: true}}, {[]string{"à", "part"}, Tail{Garnish: true, Beside: true}}, {[]string{"separat"}, Tail{Garnish: true, Beside: true}},
	{[]string{"squeeze"}, Tail{Unit: flavor.Wedge, Remark: "a squeeze is taken as a wedge"}},
	{[]string{"sunk"}, Tail{After: true}}, {[]string{"sink"}, Tail{Unit: flavor.Float, After: true}}, {[]string{"sinker"}, Tail{Unit: flavor.Float, After: true}}, {[]string{"to", "sink"}, Tail{After: true}}, {[]string{"fill"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"drizzled"}, Tail{Unit: flavor.Float, After: true}}, {[]string{"drizzle"}, Tail{Unit: flavor.Float, After: true}}, {[]string{"drizzle", "on", "top"}, Tail{Unit: flavor.Float, After: true}}, {[]string{"drizzle", "over"}, Tail{Unit: flavor.Float, After: true}}, {[]string{"drizzled", "over"}, Tail{Unit: flavor.Float, After: true}},
	{[]string{"poured", "over"}, Tail{Unit: flavor.Float, After: true}}, {[]string{"layered"}, Tail{Unit: flavor.Float, After: true}},
	{[]string{"over", "the", "top"}, Tail{Unit: flavor.Float, After: true}}, {[]string{"over", "top"}, Tail{Unit: flavor.Float, After: true}},
	{[]string{"layered", "on", "top"}, Tail{Unit: flavor.Float, After: true}}, {[]string{"drizzled", "on", "top"}, Tail{Unit: flavor.Float, After: true}},
	{[]string{"muddled", "lightly"}, Tail{Muddled: true}}, {[]string{"muddled", "gently"}, Tail{Muddled: true}}, {[]string{"muddled", "softly"}, Tail{Muddled: true}}, {[]string{"muddled", "hard"}, Tail{Muddled: true}}, {[]string{"muddled", "well"}, Tail{Muddled: true}},
	{[]string{"lightly", "muddled"}, Tail{Muddled: true}}, {[]string{"gently", "muddled"}, Tail{Muddled: true}}, {[]string{"softly", "muddled"}, Tail{Muddled: true}},
	{[]string{"splash"}, Tail{Unit: flavor.Splash}}, {[]string{"splsh"}, Tail{Unit: flavor.Splash}},
	{[]string{"to", "curdle"}, Tail{}}, {[]string{"to", "clarify"}, Tail{}}, {[]string{"to", "dilute"}, Tail{}}, {[]string{"to", "balance"}, Tail{}}, {[]string{"to", "sweeten"}, Tail{}}, {[]string{"to", "loosen"}, Tail{}}, {[]string{"to", "lift"}, Tail{}},
	{[]string{"floated", "at", "the", "end"}, Tail{Unit: flavor.Float, After: true}}, {[]string{"at", "the", "end"}, Tail{After: true}}, {[]string{"across", "the", "top"}, Tail{Unit: flavor.Float, After: true}},
	{[]string{"last"}, Tail{After: true}}, {[]string{"from", "freezer"}, Tail{}}, {[]string{"from", "the", "freezer"}, Tail{}}, {[]string{"fr", "freezer"}, Tail{}}, {[]string{"ex", "freezer"}, Tail{}},
	{[]string{"from", "fridge"}, Tail{}}, {[]string{"from", "the", "fridge"}, Tail{}}, {[]string{"from", "siphon"}, Tail{}}, {[]string{"from", "the", "siphon"}, Tail{}}, {[]string{"from", "the", "gun"}, Tail{}}, {[]string{"from", "gun"}, Tail{}},
	{[]string{"v", "cold"}, Tail{}}, {[]string{"very", "cold"}, Tail{}}, {[]string{"ice", "cold"}, Tail{}}, {[]string{"to", "start"}, Tail{}},
	{[]string{"give", "or", "take"}, Tail{}}, {[]string{"more", "or", "less"}, Tail{}}, {[]string{"or", "so"}, Tail{}}, {[]string{"or", "thereabouts"}, Tail{}},
	{[]string{"slow"}, Tail{}}, {[]string{"slowly"}, Tail{}}, {[]string{"dropped", "in"}, Tail{}}, {[]string{"drop", "in"}, Tail{}},
	{[]string{"in", "shaker"}, Tail{}}, {[]string{"in", "the", "shaker"}, Tail{}}, {[]string{"in", "tin"}, Tail{}}, {[]string{"in", "the", "tin"}, Tail{}},
	{[]string{"in", "glass"}, Tail{}}, {[]string{"in", "the", "glass"}, Tail{}},
	{[]string{"freshly", "squeezed"}, Tail{Squeezed: true}}, {[]string{"fresh", "squeezed"}, Tail{Squeezed: true}},
	{[]string{"to", "the", "brim"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"to", "brim"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"to", "the", "top"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"to", "the", "rim"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"fino", "al", "bordo"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"hasta", "el", "borde"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"à", "ras", "bord"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"tot", "de", "rand"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"bis", "zum", "rand"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"till", "kanten"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"hasta", "arriba"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"al", "tope"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"a", "tope"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"hasta", "el", "tope"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"al", "colmo"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"fino", "al", "colmo"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"para", "encher"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"para", "topear"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"para", "terminar"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"per", "completare"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"à", "volonté"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"ad", "libitum"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"obendrauf"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"drauf"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"por", "encima"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"encima"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"sopra"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"par", "dessus"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"till", "toppen"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"tot", "boven"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"om", "te", "vullen"}, Tail{Unit: flavor.Top, After: true}}, {[]string{"om", "af", "te", "vullen"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"do", "pełna"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"do", "góry"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"do", "plna"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"do", "dopełnienia"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"do", "uzupełnienia"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"na", "dopełnienie"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"na", "dolití"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"k", "dolití"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"do", "verchu"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"до", "верха"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"до", "краев"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"до", "краёв"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"для", "топа"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"топ"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"μέχρι", "πάνω"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"ως", "επάνω"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"μέχρι", "επάνω"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"για", "γέμισμα"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"til", "toppen"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"til", "kanten"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"oppe", "på"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"på", "toppen"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"ovenpå"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"fyld", "op"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"適量"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"フルアップ"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"bharo"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"se", "bharo"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"bhar", "do"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"se", "bhar", "do"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"upar", "se"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"top", "karo"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"se", "top", "karo"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"se", "top"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"적당량"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"풀업"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"필업"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"채우기"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"가득"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"으로", "채우기"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"로", "채우기"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"채움"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"até", "encher"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"até", "completar"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"até", "o", "topo"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"até", "cima"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"a", "completare"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"a", "riempire"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"fino", "a", "colmare"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"jusqu'en", "haut"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"jusqu'au", "bord"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"bis", "oben"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"nach", "oben", "auffüllen"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"til", "kanten"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"til", "glasset", "er", "fullt"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"aż", "do", "pełna"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"do", "wypełnienia"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"arriba", "de", "todo"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"で満たす"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"を満たす"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"zum", "toppen"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"als", "topping"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"als", "top"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"erop"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"bovenop"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"na", "wierzch"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"na", "górze"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"navrch"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"сверху"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"από", "πάνω"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"ovanpå"}, Tail{Unit: flavor.Top, After: true}},
	{[]string{"do", "smaku"}, Tail{Refuse: true}},
	{[]string{"podle", "chuti"}, Tail{Refuse: true}},
	{[]string{"по", "вкусу"}, Tail{Refuse: true}},
	{[]string{"κατά", "βούληση"}, Tail{Refuse: true}},
	{[]string{"efter", "smag"}, Tail{Refuse: true}},
	{[]string{"efter", "smak"}, Tail{Refuse: true}},
	{[]string{"etter", "smak"}, Tail{Refuse: true}},
	{[]string{"à", "goût"}, Tail{Refuse: true}},
	{[]string{"q", "s"}, Tail{Refuse: true}},
	{[]string{"rozgnieciona"}, Tail{Muddled: true}},
	{[]string{"rozgniecione"}, Tail{Muddled: true}},
	{[]string{"rozgniecionych"}, Tail{Muddled: true}},
	{[]string{"utłuczone"}, Tail{Muddled: true}},
	{[]string{"muddlowane"}, Tail{Muddled: true}},
	{[]string{"muddlowana"}, Tail{Muddled: true}},
	{[]string{"rozmačkané"}, Tail{Muddled: true}},
	{[]string{"rozmačkaná"}, Tail{Muddled: true}},
	{[]string{"мадл"}, Tail{Muddled: true}},
	{[]string{"размять"}, Tail{Muddled: true}},
	{[]string{"размятый"}, Tail{Muddled: true}},
	{[]string{"размятой"}, Tail{Muddled: true}},
	{[]string{"stødt"}, Tail{Muddled: true}},
	{[]string{"muddlet"}, Tail{Muddled: true}},
	{[]string{"muddlad"}, Tail{Muddled: true}},
	{[]string{"krossad"}, Tail{Muddled: true}},
	{[]string{"muddlade"}, Tail{Muddled: true}},
	{[]string{"qb"}, Tail{Refuse: true}}, {[]string{"al", "gusto"}, Tail{Refuse: true}}, {[]string{"nach", "belieben"}, Tail{Refuse: true}}, {[]string{"a", "gusto"}, Tail{Refuse: true}}, {[]string{"naar", "smaak"}, Tail{Refuse: true}}, {[]string{"selon", "goût"}, Tail{Refuse: true}},
	{[]string{"eq", "parts"}, Tail{Unit: flavor.PartUnit, Each: true}}, {[]string{"equal", "parts"}, Tail{Unit: flavor.PartUnit, Each: true}},
	{[]string{"optional"}, Tail{Remark: "is optional, and counted"}}, {[]string{"each"}, Tail{Each: true}}, {[]string{"ea"}, Tail{Each: true}},
}

// tailsByLast finds the tails that end in a word.
var tailsByLast = func() map[string][]int {
	m := map[string][]int{}
	for i := range tails {
		w := tails[i].words
		m[w[len(w)-1]] = append(m[w[len(w)-1]], i)
	}
	return m
}()

// without are words behind which "the float" is what another line pours.
var without = vocabulary.Words(`without w/o before except but then with`)

// lastly are words that tell of what stands before them that it goes in once the rest is mixed: "drizzle
// after".
var lastly = vocabulary.Words(`after afterwards afterward later`)

// TailAt returns the longest tail at the end of toks, with the word behind it that says when.
func TailAt(toks []token.Token) (int, Tail) {
	if n := len(toks) - 1; n > 0 && toks[n].Kind == token.Word && lastly.Has(toks[n].Text) {
		before, t := longestTail(toks[:n])
		t.After = true
		return before + 1, t
	}
	n, t := longestTail(toks)
	if n > 0 && n < len(toks) && (t.Unit == flavor.Top || t.Unit == flavor.Float) { // "absinthe mist over the top"
		if more, what := longestTail(toks[:len(toks)-n]); what.Unit == flavor.Spritz {
			return n + more, what
		}
	}
	return n, t
}

// longestTail returns the longest tail at the end of toks.
func longestTail(toks []token.Token) (int, Tail) {
	best, found := 0, Tail{}
	if n := len(toks); n > 2 && toks[n-2].Text == "the" && without.Has(toks[n-3].Text) && Verbs[toks[n-1].Text] != "" { // "shake without the float"
		return 0, Tail{}
	}
	if len(toks) == 0 {
		return 0, Tail{}
	}
	for _, i := range tailsByLast[toks[len(toks)-1].Text] {
		w := tails[i].words
		if len(w) <= best || len(w) > len(toks) {
			continue
		}
		if slices.EqualFunc(w, toks[len(toks)-len(w):], func(a string, t token.Token) bool { return t.Kind == token.Word && t.Text == a }) {
			best, found = len(w), tails[i].means
		}
	}
	return best, found
}

// TailsOf returns what words say that are nothing but tails, as "float on top" is; nil if
// they say more.
func TailsOf(toks []token.Token) []Tail {
	var out []Tail
	for len(toks) > 0 {
		n, t := TailAt(toks)
		if n == 0 {
			return nil
		}
		out, toks = append(out, t), toks[:len(toks)-n]
	}
	return out
}
