package entry

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/laid"
	"counterpour/flavor/measure/draft/words/pouring"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// restWords say that what fills a glass up is all the rest of it: "Rest Tonic".
var restWords = vocabulary.Words(`rest reste resto remainder`)

// verbUnit is the unit in which a pour goes in that begins with such a verb, or with words for all
// the rest of it, "rest tonic"; false if toks begin with none.
func verbUnit(toks []token.Token) (flavor.Unit, bool) {
	if len(toks) == 0 || toks[0].Kind != token.Word {
		return "", false
	}
	if unit, ok := pouring.Verbs[toks[0].Text]; ok {
		return unit, true
	}
	return flavor.Top, restWords.Has(toks[0].Text) && len(toks) > 1 && Lengtheners[toks[1].Text]
}

// pouredOn reads "top with soda", "float ½ oz cream", "rinse the glass with
// absinthe".
func (p *Written) pouredOn(text string, toks []token.Token) bool {
	unit, ok := verbUnit(toks)
	if !ok {
		return false
	}
	rest := skipObject(toks[1:])
	if unit == flavor.Rinse && len(rest) > 1 && isGlass(rest[:1]) { // "rinse glass absinthe"
		rest = skipObject(rest[1:])
	}
	if len(rest) == 0 {
		return false
	}
	if onlyWhen(rest) { // "float last"
		p.Shape = ShapeServing
		return true
	}
	if p.laidOn(unit, toks, rest) {
		return true
	}
	rest = p.beforeGlass(unit, rest)
	if s := serving.Read(rest); serving.IceOnly(rest) || isGlass(rest) || s.Service == flavor.Crushed && len(s.Unknown) == 0 { // "layer in a shot glass", "top up the glass"
		p.Shape = ShapeServing
		return true
	}
	p.After = true
	if after, ok := p.takeAmount(rest); ok {
		p.readAfterAmount(text, after)
		return true
	}
	if q := (Written{Of: p.Of}); q.unitOn(text, rest) { // "top w/ splash soda"
		*p = q
		return true
	}
	if last := len(rest) - 1; unit == flavor.Float && last > 0 && pouring.Over(rest[last].Text) {
		rest = rest[:last]
	}
	name := p.takeTails(text, rest)
	if p.amountLast(text, name) {
		p.After = true
		return true
	}
	if stepLike(name) && unit != flavor.Top {
		*p = Written{Of: p.Of}
		return false
	}
	p.Unit = unit
	p.takeName(text, name)
	p.Amount, p.Shape, p.UnitAt = 1, ShapeImplied, Span{toks[0].Start, toks[0].End}
	return true
}

// when are words that say when something goes in.
var when = vocabulary.Words(`last first at the very end finally`)

// onlyWhen reports whether words say when something goes in, and not what.
func onlyWhen(toks []token.Token) bool {
	return !slices.ContainsFunc(toks, func(t token.Token) bool { return t.Kind != token.Word || !when.Has(t.Text) })
}

// isGlass reports whether words name a glass and nothing else.
func isGlass(toks []token.Token) bool {
	if len(toks) == 1 && vessels.Has(toks[0].Text) {
		return true
	}
	s := serving.Read(toks)
	return s.Glass != "" && len(s.Unknown) == 0
}

// laidOn reads what a verb of pouring lays on the drink: "finish with a ribbon of cucumber", "top with
// slices of lime".
func (p *Written) laidOn(unit flavor.Unit, toks, rest []token.Token) bool {
	verb := toks[0].Text
	switch {
	case laysPiece(unit, toks, rest):
		p.Shape, p.ByNoun = ShapeGarnish, true
	case len(rest) < 3:
		return false
	case unit == flavor.Top && laid.Cut(rest[0].Text) && rest[1].Text == "of":
		p.Shape = ShapeGarnish
	case strings.HasPrefix(verb, "finish") && laid.Word(rest[0].Text) && laid.Of(rest[1].Text):
		p.Shape, p.ByNoun = ShapeGarnish, true
	default:
		return false
	}
	return true
}

// waters are parts of plants that are poured as a water by their own name: "orange blossom".
var waters = vocabulary.Words(`blossom blossoms bloom flower flowers`)

// laysPiece reports whether a verb that fills the glass up, or floats something on it, has for its object a
// piece of a fruit or of a plant: "top with a mint crown", "float a star anise on the foam".
func laysPiece(unit flavor.Unit, toks, rest []token.Token) bool {
	if unit != flavor.Top && unit != flavor.Float {
		return false
	}
	one := len(rest) < len(toks) && slices.ContainsFunc(toks[:len(toks)-len(rest)], func(t token.Token) bool { return t.Text == "a" || t.Text == "an" })
	for len(rest) > 1 && (rest[0].Text == "a" || rest[0].Text == "an" || rest[0].Text == "single" || rest[0].Text == "one") {
		one, rest = true, rest[1:]
	}
	if n, t := pouring.TailAt(rest); n > 0 && n < len(rest) && t.After {
		rest = rest[:len(rest)-n]
	}
	rest = TrimMarks(rest)
	if len(rest) == 0 || slices.ContainsFunc(rest, func(t token.Token) bool { return t.Kind != token.Word }) || AmountAt(rest) > 0 {
		return false
	}
	last := rest[len(rest)-1].Text
	return laid.Cut(last) && !waters.Has(last) && (one || len(rest) > 1) || one && (laid.Ends(rest) || laid.Nut(last))
}

// beforeGlass takes the glass behind one word for what fills it, "top champagne flute", and returns
// that word.
func (p *Written) beforeGlass(unit flavor.Unit, rest []token.Token) []token.Token {
	if unit != flavor.Top || len(rest) < 2 || !Lengtheners[rest[0].Text] {
		return rest
	}
	s := serving.Read(rest[1:])
	if len(s.Unknown) > 0 || !s.States() || s.Method != "" {
		return rest
	}
	p.Beside.Merge(&s, true)
	return rest[:1]
}

// unitOn reads a unit without a number behind a verb of pouring, and what it is of.
func (p *Written) unitOn(text string, toks []token.Token) bool {
	_, n := UnitAt(toks)
	if n == 0 || n == len(toks) || toks[n].Is("-") || !p.impliedUnit(text, toks) || p.Shape != ShapeImplied || p.Fault != nil {
		return false
	}
	p.After = true
	return true
}

// skipObject drops "up with", "the glass with", "of" and the like before what
// is poured.
func skipObject(toks []token.Token) []token.Token {
	with := slices.IndexFunc(toks, func(t token.Token) bool { return t.Kind == token.Word && (t.Text == "with" || t.Text == "of") })
	if with >= 0 && with < 6 {
		s := serving.Read(toks[:with])
		if len(s.Unknown) == 0 {
			toks = toks[with+1:]
		}
	}
	for len(toks) > 0 && (toks[0].Kind == token.Mark || objectWords.Has(toks[0].Text)) {
		if toks[0].Is("(") || toks[0].Is("~") {
			break
		}
		toks = toks[1:]
	}
	return toks
}

// objectWords stand between a verb and what is poured.
var objectWords = vocabulary.Words(`до верха με til do pełna szklankę полностью με z ze со с com opp på up with mit off of on over a an the some little remaining rest more in avec con med met de di upp op au à`)

// fromFruit reads "juice of half a lime", "squeeze of lime", "white of one egg".
func (p *Written) fromFruit(text string, toks []token.Token) bool {
	if len(toks) < 2 || toks[0].Kind != token.Word {
		return false
	}
	if len(toks) > 3 && placeVerbs.Has(toks[0].Text) && toks[1].Text == "the" && fruitParts.Has(toks[2].Text) { // "take the juice of half a lemon"
		toks = toks[1:]
	}
	if foreignArticles.Has(toks[0].Text) && foreignJuices.Has(toks[1].Text) || toks[0].Text == "the" && fruitParts.Has(toks[1].Text) { // "le jus d'un demi citron vert", "the juice of one lime"
		toks = toks[1:]
	}
	of := toks[1:]
	if len(of) > 0 && (of[0].Text == "of" || of[0].Text == "from" || of[0].Text == "in") { // "squeeze in half a lime"
		of = of[1:]
	}
	if len(of) == 0 {
		return false
	}
	if foreignJuices.Has(toks[0].Text) && len(of) > 1 && foreignOf.Has(of[0].Text) {
		return p.juiceOf(text, of[1:])
	}
	switch toks[0].Text {
	case "juice":
		rest, ok := p.takeAmount(of)
		if !ok || len(rest) == 0 {
			return false
		}
		p.takeName(text, rest)
		p.Squeezed, p.Shape = true, ShapePour
		return true
	case "squeeze", "squirt":
		if stepLike(of) {
			return false
		}
		rest, ok := p.takeAmount(of)
		if !ok {
			rest, p.NoAmount, p.Amount = of, true, 1
		}
		rest = p.takeTrailingUnit(rest)
		if last := len(rest) - 1; !ok && last > 0 && rest[last].Text == "juice" { // "squeeze of lime juice"
			rest = rest[:last]
		}
		p.takeName(text, rest)
		p.Squeezed, p.Shape = true, ShapePour
		if p.Unit == "" && (!ok || of[0].Text == "a") { // "squeeze half a lime" squeezes all of the half
			p.Unit = flavor.Wedge
			p.AddNote("a squeeze is taken as a wedge")
		}
		return true
	case "white", "yolk":
		rest, ok := p.takeAmount(of)
		if !ok || len(rest) != 1 || rest[0].Text != "egg" && rest[0].Text != "eggs" {
			*p = Written{Of: p.Of}
			return false
		}
		p.Name, p.NameAt, p.Shape = "egg "+toks[0].Text, Span{toks[0].Start, rest[0].End}, ShapePour
		p.Unit = flavor.Piece
		return true
	}
	return false
}

// juiced reads "lime (juice of 1)".
func (p *Written) juiced(text string, toks []token.Token) bool {
	last := len(toks) - 1
	open := -1
	if last > 3 && toks[last].Is(")") {
		open = token.Opening(toks)
	}
	if open < 1 || last-open < 4 || toks[open+1].Text != "juice" || toks[open+2].Text != "of" {
		return false
	}
	rest, ok := p.takeAmount(toks[open+3 : last])
	if !ok || len(rest) > 0 {
		*p = Written{Of: p.Of}
		return false
	}
	p.TakeNameOnly(text, toks[:open])
	p.Squeezed, p.Shape = true, ShapePour
	return true
}

// Lengtheners fill a glass up where no amount is written.
var Lengtheners = map[string]bool{"soda": true, "soda water": true, "club soda": true, "sparkling water": true, "tonic": true, "tonic water": true, "ginger beer": true,
	"ginger ale": true, "cola": true, "lemonade": true, "grapefruit soda": true, "prosecco": true, "champagne": true, "sparkling wine": true, "cava": true, "bubbles": true, "diet cola": true, "cremant": true, "crémant": true, "sekt": true, "tónica": true, "tonica": true, "agua tónica": true, "acqua tonica": true, "club": true, "champers": true, "champs": true, "sparkling": true, "limonade": true, "lemon-lime soda": true, "sparkling lemonade": true, "siphon": true, "syphon": true, "soda siphon": true,
	"sifón": true, "agua con gas": true, "agua mineral": true, "seltz": true, "acqua frizzante": true, "acqua gassata": true, "eau gazeuse": true, "eau de seltz": true, "eau pétillante": true, "sprudel": true, "sodawasser": true, "mineralwasser": true, "bruiswater": true, "spuitwater": true, "sodavatten": true, "danskvand": true,
	"água com gás": true, "agua com gas": true, "tonique": true, "água tónica": true, "água tônica": true, "agua tonica": true, "cerveza de jengibre": true, "birra di zenzero": true, "ingwerbier": true, "gemberbier": true, "gaseosa": true, "gazzosa": true, "gassosa": true, "aranciata": true, "limonata": true, "refresco de toronja": true, "refresco de cola": true,
	"espumoso": true, "espumante": true, "spumante": true, "mousseux": true, "schaumwein": true, "bubbels": true, "bollicine": true, "champán": true, "champagner": true, "champanhe": true, "chinotto": true, "kombucha": true,
	"bitter lemon": true, "lemon lime soda": true, "lemon soda": true, "orange soda": true}

// vessels are words for what a drink is served in.
var vessels = vocabulary.Words(`glass goblet mug cup tumbler bowl chalice stem jar`)

// NamesVessel reports whether words begin with what a drink is served in and go on about it:
// "glass with a handle".
func NamesVessel(toks []token.Token) bool {
	return len(toks) > 1 && vessels.Has(toks[0].Text) && token.Joins[toks[1].Text]
}

// unlike reports whether words are no pour by their form: a glass that is not known,
// or what is left out, as in "no salt".
func unlike(toks []token.Token) bool {
	if len(toks) == 0 {
		return false
	}
	first, last := toks[0].Text, toks[len(toks)-1].Text
	return len(toks) > 1 && len(toks) <= 4 && vessels.Has(last) || strings.HasSuffix(last, "-glass") ||
		LeavesOut(first) && len(toks) > 1
}

// LeavesOut reports whether a word says that what follows it is not poured.
func LeavesOut(w string) bool { return w == "no" || w == "without" || w == "minus" || w == "skip" }

// unitLast reads a name with one unit behind it: "maraschino bsp", "orange bitters
// dash".
func (p *Written) unitLast(text string, toks []token.Token) bool {
	last := len(toks) - 1
	if last < 1 || toks[last].Kind != token.Word || serving.StepVerbs[toks[0].Text] || UnitWordsAt(toks) || last == 1 && token.BiasWords[toks[0].Text] {
		return false
	}
	u, ok := measure.ParseUnit(toks[last].Text)
	part := laidUnit(u) && u != flavor.Piece
	if !ok || !dropped(u) && u != flavor.Splash && u != flavor.Pinch && !(part && p.Muddled) {
		return false
	}
	p.Unit, p.UnitAt = u, Span{toks[last].Start, toks[last].End}
	p.takeName(text, toks[:last])
	p.Amount, p.Shape = 1, ShapeImplied
	return true
}

// impliedUnit reads a pour whose amount goes without saying: "splash of water".
// What is laid on a drink, such as a slice, is garnish unless it is muddled.
func (p *Written) impliedUnit(text string, toks []token.Token) bool {
	for len(toks) > 1 && token.BiasWords[toks[0].Text] && UnitWordsAt(toks[1:]) { // "tiny pinch of salt"
		p.AddNote("“" + toks[0].Text + "” is no measure; the amount is taken as written")
		toks = toks[1:]
	}
	u, n := UnitAt(toks)
	if n == 0 {
		return p.measureAlone(text, toks)
	}
	rest := toks[n:]
	for len(rest) > 0 && (rest[0].Text == "of" || (rest[0].Text == "de" || rest[0].Text == "di") && len(rest) > 1 || rest[0].Is(":")) {
		rest = rest[1:]
	}
	p.Unit, p.Amount, p.UnitAt = u, 1, Span{toks[0].Start, toks[n-1].End}
	p.takeName(text, rest)
	p.Each = u == flavor.Pinch && len(PartNames(rest)) > 1 // "pinch salt & pepper"
	bare := p.Name == "" && n == len(toks)
	switch {
	case numbered(u) && !(bare && toks[0].Text == "g"):
		p.numberless(text, toks)
	case numbered(u) || p.Name == "" && !(bare && (dropped(u) || u == flavor.Splash || u == flavor.Pinch)):
		p.Unit, p.Amount, p.UnitAt, p.NameAt = "", 0, Span{}, Span{}
		return false
	case bare: // "soda, small splash"
		p.Shape = ShapeAmount
	case laidUnit(u) && !p.Muddled:
		p.Shape, p.Name = ShapeGarnish, ""
	default:
		p.Shape = ShapeImplied
	}
	return true
}

// numbered reports whether a unit needs a number before it: "oz gin" says nothing of how much.
func numbered(u flavor.Unit) bool {
	return u == flavor.Ounce || u == flavor.Millilitre || u == flavor.Centilitre || u == flavor.PartUnit || u == flavor.Gram
}

// dropped reports whether a unit is dashed, dropped or spooned.
func dropped(u flavor.Unit) bool { return u == flavor.Dash || u == flavor.Drop || u.Spoon() }

// laidUnit reports whether a unit is one of what is laid on a drink, unless it is muddled.
func laidUnit(u flavor.Unit) bool {
	return u == flavor.Slice || u == flavor.Wedge || u == flavor.Sprig || u == flavor.Leaf || u == flavor.Piece
}

// numberless takes a pour whose unit lacks its number: "ounce of vermouth" is one, any other is asked
// for.
func (p *Written) numberless(text string, toks []token.Token) {
	p.Shape = ShapeImplied
	if toks[0].Text == "ounce" && p.Name != "" {
		p.NoAmount = true
		return
	}
	w := token.OneLine(text[toks[0].Start:toks[len(toks)-1].End])
	p.Fault = measure.Invalid("amount", w, "%q does not say how many %s; write a number before it, such as \"2 %s\"", w, p.Unit, p.Unit)
}

// rinsedGlass reads "absinthe-rinsed coupe" and "coupe rinsed with absinthe".
func (p *Written) rinsedGlass(text string, toks []token.Token) bool {
	for i := range toks {
		if p.rinsedWith(text, toks, i) {
			return true
		}
		name, ok := strings.CutSuffix(toks[i].Text, "-rinsed")
		if !ok && toks[i].Text == "rinsed" && i > 0 {
			name, ok = token.OneLine(text[toks[0].Start:toks[i-1].End]), true
		}
		if !ok || i+1 == len(toks) {
			continue
		}
		s := serving.Read(toks[i+1:])
		if s.Glass == "" || len(s.Unknown) > 0 {
			continue
		}
		p.Beside.Merge(&s, true)
		p.Name, p.Unit, p.Amount, p.After, p.Shape = name, flavor.Rinse, 1, true, ShapeImplied
		p.NameAt = Span{toks[0].Start, toks[0].Start + len(name)}
		p.UnitAt = Span{toks[i].End - len("rinsed"), toks[i].End}
		return true
	}
	return false
}

// rinsedWith reads "coupe rinsed with absinthe" where the token at i is "rinsed".
func (p *Written) rinsedWith(text string, toks []token.Token, i int) bool {
	if i+2 >= len(toks) || toks[i].Text != "rinsed" || toks[i+1].Text != "with" && toks[i+1].Text != "in" {
		return false
	}
	s := serving.Read(toks[:i])
	if i > 0 && s.Glass == "" && !isGlass(toks[:i]) || len(s.Unknown) > 0 {
		return false
	}
	q := Written{Of: p.Of}
	name := toks[i+2:]
	if after, ok := q.takeAmount(name); ok {
		name = q.takeUnit(after)
	} else {
		q.Amount, q.Unit, q.UnitAt = 1, flavor.Rinse, Span{toks[i].Start, toks[i].End}
	}
	if name = TrimMarks(name); len(name) == 0 {
		return false
	}
	q.takeName(text, name)
	q.Beside.Merge(&s, true)
	q.After, q.Shape = true, ShapeImplied
	*p = q
	return true
}

// garnish reads a garnish that says so first.
func (p *Written) garnish(toks []token.Token) bool {
	if last := len(toks) - 1; last == 2 && toks[1].Text == "half" && (toks[last].Text == "wheel" || toks[last].Text == "moon" || toks[last].Text == "slice") && laid.Fruit(toks[0].Text) { // "orange half wheel"
		p.Shape = ShapeGarnish
		return true
	}
	if laid.Verb(toks[0].Text) {
		p.Shape = ShapeGarnish
		return true
	}
	return false
}
