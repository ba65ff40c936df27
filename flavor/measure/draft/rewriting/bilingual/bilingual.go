package bilingual

import (
	"slices"
	"strings"
	"unicode"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/names/tongue"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
)

// mostText is the bytes of a text that is looked at: who writes in two tongues writes a card.
const mostText = 2500

// Once returns a text in which what is named twice is named once, and what was changed, in
// sentences; it is false if nothing is.
func Once(text string, b *naming.Resolver) (out string, changes []string, ok bool) {
	if len(text) > mostText {
		return "", nil, false
	}
	w := writer{resolver: b}
	var parts strings.Builder
	for from := 0; from < len(text); {
		end, next := len(text), len(text)
		if at := breaks.FindStringIndex(text[from:]); at != nil {
			end, next = from+at[0], from+at[1]
		}
		parts.WriteString(w.once(text[from:end]))
		parts.WriteString(text[end:next])
		from = next
	}
	return parts.String(), w.changes, len(w.changes) > 0 && b.Err() == nil
}

// breaks part what is said of one pour from what is said of the next.
var breaks = pattern.Of(`[\n;|•]+|[,.] `)

// writer names once what a text names twice.
type writer struct {
	resolver *naming.Resolver
	changes  []string
}

// once returns a stretch that speaks of one thing with one name for it.
func (w *writer) once(part string) string {
	for _, way := range []func(string) (string, string){w.sided, w.bracketed, w.inScripts} {
		if out, said := way(part); said != "" {
			w.changes = append(w.changes, said)
			return out
		}
	}
	return part
}

// readAs says what is taken for what is written.
func readAs(written, taken string) string {
	return "“" + token.OneLine(written) + "” is read as “" + token.OneLine(taken) + "”"
}

// sides are what stands between two names of one thing.
var sides = pattern.Of(`\s*[/=／]\s*|\s+[-–—]\s+`)

// sided names once what stands on both sides of a stroke: "Ginebra / Gin 4 cl". The side with
// the amount is kept.
func (w *writer) sided(part string) (out, said string) {
	for _, at := range sides.FindAllStringIndex(part, -1) {
		left, right := part[:at[0]], part[at[1]:]
		one, other := pieceOf(left), pieceOf(right)
		if one.name == "" || other.name == "" {
			continue
		}
		switch {
		case !one.measured && !other.measured && sameServing(left, right):
			return blankBefore(left) + right, readAs(part, right)
		case one.measured == other.measured:
		case !w.same(one.name, other.name, placeOf(&one, &other)):
		case one.measured:
			return left, readAs(part, left)
		default:
			return blankBefore(left) + right, readAs(part, right)
		}
	}
	return part, ""
}

// blankBefore is what a stretch begins with before its first word, such as a bullet.
func blankBefore(part string) string {
	return part[:len(part)-len(strings.TrimLeftFunc(part, func(c rune) bool { return !unicode.IsLetter(c) && !unicode.IsDigit(c) }))]
}

// piece is a name and the amount beside it, if there is one.
type piece struct {
	name     string
	measured bool
	amount   float64
	unit     flavor.Unit
}

// pieceOf reads a side: an amount may stand before its name or behind it.
func pieceOf(side string) piece {
	toks := token.Lex(nil, side, 0, len(side))
	var p piece
	var words []token.Token
	for i := 0; i < len(toks); i++ {
		t := &toks[i]
		unit, isUnit := measure.ParseUnit(t.Text)
		switch {
		case t.Kind == token.Numeral:
			p.measured, p.amount = true, t.Value
		case isUnit && p.unit == "" && (i > 0 && toks[i-1].Kind == token.Numeral):
			p.unit = unit
		case t.Kind == token.Word:
			words = append(words, *t)
		case len(words) > 0 && !hyphen(t):
			return piece{}
		}
	}
	if len(words) == 0 || len(words) > naming.LongestName+1 {
		return piece{}
	}
	p.name = side[words[0].Start:words[len(words)-1].End]
	return p
}

// hyphen reports whether a sign stands within names.
func hyphen(t *token.Token) bool { return t.Is("-") || t.Is("'") || t.Is("’") || t.Is("&") }

// placeOf is where the name of two sides stands: in the unit of the one that has an amount,
// by the jigger where it has none.
func placeOf(one, other *piece) naming.Place {
	p := one
	if other.measured {
		p = other
	}
	switch {
	case p.unit != "":
		return naming.Place{Unit: p.unit, Amount: p.amount}
	case p.measured && p.amount == 1:
		return naming.Place{Unit: flavor.Piece, Amount: 1}
	}
	return naming.Place{Unit: flavor.Millilitre, Amount: usualML}
}

// usualML stands for an amount that is not told; common practice.
const usualML = 20

// same reports whether two names mean one ingredient in a place.
func (w *writer) same(one, other string, pl naming.Place) bool {
	x, y := w.resolver.Find(one, pl), w.resolver.Find(other, pl)
	if !x.Firm() || !y.Firm() || x.Dropped != "" || y.Dropped != "" || x.Infusion != "" || y.Infusion != "" {
		return false
	}
	return x.Profile == y.Profile || saysLess(one, other, x.Profile, y.Profile) || saysLess(other, one, y.Profile, x.Profile)
}

// saysLess reports whether the words of one name are among those of another in English, and both
// mean things of one kind: "honey" beside "honey syrup 3:1".
func saysLess(less, more string, x, y *flavor.Profile) bool {
	few, many := strings.Fields(inEnglish(less)), strings.Fields(inEnglish(more))
	return x.Class == y.Class && len(few) < len(many) && !slices.ContainsFunc(few, func(w string) bool { return !slices.Contains(many, w) })
}

// inEnglish is the key of a name in English.
func inEnglish(name string) string {
	key := flavor.NormaliseName(name)
	if whole := tongue.Name(key); whole != "" {
		return flavor.NormaliseName(whole)
	}
	if english, ok := tongue.English(key); ok {
		return flavor.NormaliseName(english)
	}
	return key
}

// sameServing reports whether two sides say the same of how a drink is made and served: "Agitar /
// Shake".
func sameServing(left, right string) bool {
	one, other := serving.Read(token.Lex(nil, left, 0, len(left))), serving.Read(token.Lex(nil, right, 0, len(right)))
	sound := func(s *serving.Said) bool { return s.States() && s.Conflict == nil && len(s.Unknown) == 0 }
	return sound(&one) && sound(&other) && one.Method == other.Method && one.Service == other.Service
}

// inBrackets is a name with another one behind it.
var inBrackets = pattern.Of(`^(.*?)\s*[(（]([^()（）]+)[)）](.*)$`)

// bracketed names once what a bracket names again, "lemon (citron)", or names in place of the word
// before it, "pigwa (quince) syrup".
func (w *writer) bracketed(part string) (out, said string) {
	m := inBrackets.FindStringSubmatch(part)
	if m == nil {
		return part, ""
	}
	before, inside, behind := m[1], m[2], m[3]
	whole := pieceOf(before + " " + behind)
	if whole.name == "" || pieceOf(inside).name == "" || pieceOf(inside).measured {
		return part, ""
	}
	pl := placeOf(&whole, &whole)
	if w.same(whole.name, inside, pl) {
		return before + behind, readAs(part, before+behind)
	}
	at := strings.LastIndexByte(before, ' ') + 1
	word := before[at:]
	full := strings.TrimSpace(inside + " " + pieceOf(behind).name)
	if word == "" || w.resolver.Mentions(word) || serving.Starts(token.Lex(nil, word, 0, len(word))) || !foreign(word) && pieceOf(behind).name == "" {
		return part, ""
	}
	if f := w.resolver.Find(full, pl); f.Firm() && f.Dropped == "" && f.Infusion == "" && !w.resolver.Has(word) {
		out = before[:at] + inside + behind
		return out, readAs(part, out)
	}
	return part, ""
}

// foreign reports whether a word is written in another script than English is.
func foreign(word string) bool {
	return strings.ContainsFunc(word, func(c rune) bool { return unicode.IsLetter(c) && !unicode.Is(unicode.Latin, c) })
}

// latin reports whether a word is written in letters of the West.
func latin(word string) bool {
	return strings.ContainsFunc(word, func(c rune) bool { return unicode.Is(unicode.Latin, c) })
}

// denying are what words of other scripts that leave something out are made of: alcohol-free,
// without sugar. What they stand beside is not what it is called.
var denying = []string{"ノン", "無", "抜き", "なし", "ゼロ", "무", "없", "제로", "без", "не", "χωρίς", "बिना", "ไม่"}

// carrying are what words of other scripts that carry an allergen are made of: nuts, peanuts,
// sesame, milk, cream, egg, soy, shellfish. "아몬드 gin" is no gin like another. From memory.
var carrying = []string{
	"ピーナッツ", "落花生", "アーモンド", "ナッツ", "クルミ", "くるみ", "胡桃", "ピスタチオ", "カシュー", "ゴマ", "ごま", "胡麻", "ミルク", "クリーム", "牛乳", "卵", "たまご", "玉子", "豆", "えび", "エビ", "かに", "カニ",
	"땅콩", "아몬드", "호두", "견과", "캐슈", "잣", "참깨", "깨", "우유", "밀크", "크림", "계란", "달걀", "두유", "콩", "새우", "게",
	"花生", "杏仁", "核桃", "坚果", "堅果", "榛", "开心果", "開心果", "腰果", "芝麻", "奶", "蛋", "虾", "蝦", "蟹",
	"арахис", "миндал", "орех", "фисташ", "кешью", "кунжут", "молок", "молоч", "сливк", "яйц", "яич", "соев",
	"φιστίκι", "φυστίκι", "αμύγδαλ", "αμυγδάλ", "καρύδι", "φουντούκι", "σουσάμι", "γάλα", "κρέμα", "αυγό", "σόγια",
	"बादाम", "मूंगफली", "काजू", "अखरोट", "पिस्ता", "तिल", "दूध", "मलाई", "अंडा", "ถั่ว", "อัลมอนด์", "งา", "นม", "ครีม", "ไข่", "กุ้ง", "ปู",
	"لوز", "فستق", "جوز", "بندق", "كاجو", "سمسم", "حليب", "كريم", "بيض", "صويا", "שקד", "בוטנ", "אגוז", "שומשום", "חלב", "שמנת", "ביצ", "סויה",
}

// inScripts names once what is named in two scripts side by side: "ジン Gin 50ml", "gin ジン 45".
func (w *writer) inScripts(part string) (out, said string) {
	toks := token.Lex(nil, part, 0, len(part))
	var strange, plain []token.Token
	for _, t := range toks {
		_, unit := measure.ParseUnit(t.Text)
		switch {
		case t.Kind != token.Word || unit || serving.Starts([]token.Token{t}):
		case foreign(t.Text) && !latin(t.Text):
			strange = append(strange, t)
		default:
			plain = append(plain, t)
		}
	}
	if len(strange) == 0 || len(plain) == 0 || !together(strange, plain) || !together(plain, strange) {
		return part, ""
	}
	in := func(ts []token.Token) string { return part[ts[0].Start:ts[len(ts)-1].End] }
	local, known := in(strange), in(plain)
	whole := pieceOf(part)
	pl := placeOf(&whole, &whole)
	if f := w.resolver.Find(known, pl); whole.name == "" || !f.Firm() || f.Dropped != "" || f.Infusion != "" || !w.same(local, known, pl) && !w.unknown(local, pl) {
		return part, ""
	}
	out = token.OneLine(part[:strange[0].Start] + part[strange[len(strange)-1].End:])
	if w.unknown(local, pl) {
		return out, readAs(part, out) + "; “" + local + "” is not known here"
	}
	return out, readAs(part, out)
}

// together reports whether no word of the others stands amid some words.
func together(words, others []token.Token) bool {
	first, last := words[0].Start, words[len(words)-1].End
	return !slices.ContainsFunc(others, func(t token.Token) bool { return first < t.Start && t.End < last })
}

// unknown reports whether words of another script mean nothing here, as a whole and in part, and
// neither leave something out nor carry an allergen.
func (w *writer) unknown(words string, pl naming.Place) bool {
	words = strings.ToLower(words)
	holds := func(part string) bool { return strings.Contains(words, part) }
	if slices.ContainsFunc(denying, holds) || slices.ContainsFunc(carrying, holds) {
		return false
	}
	_, changed := tongue.English(flavor.NormaliseName(words))
	f := w.resolver.Find(words, pl)
	return !changed && f.Profile == nil && f.Fault != nil && f.Fault.Kind == flavor.ErrUnknown && !w.resolver.Mentions(words)
}
