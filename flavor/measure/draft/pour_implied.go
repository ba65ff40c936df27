package draft

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
)

// pourVerbs begin a pour that goes on or into the glass, in the unit that goes
// without saying.
var pourVerbs = map[string]flavor.Unit{
	"top": flavor.Top, "topped": flavor.Top, "fill": flavor.Top, "lengthen": flavor.Top, "finish": flavor.Top, "lengthened": flavor.Top,
	"float": flavor.Float, "layer": flavor.Float, "drizzle": flavor.Float, "lace": flavor.Float, "auffüllen": flavor.Top, "aufgießen": flavor.Top,
	"rinse": flavor.Rinse, "coat": flavor.Rinse, "swirl": flavor.Rinse, "season": flavor.Rinse,
	"spritz": flavor.Spritz, "spray": flavor.Spritz, "mist": flavor.Spritz,
}

// pouredOn reads "top with soda", "float ½ oz cream", "rinse the glass with
// absinthe".
func (p *pour) pouredOn(r *reader, toks []token) bool {
	if len(toks) == 0 || toks[0].kind != word {
		return false
	}
	unit, ok := pourVerbs[toks[0].text]
	if !ok {
		return false
	}
	rest := skipObject(toks[1:])
	if len(rest) == 0 {
		return false
	}
	if s := readServing(rest); iceOnly(rest) || s.glass != "" && len(s.unknown) == 0 { // "layer in a shot glass"
		p.shape = shapeServing
		return true
	}
	p.After = true
	if after, ok := p.takeAmount(rest); ok {
		p.readAfterAmount(r, after)
		return true
	}
	name := p.takeTails(r, rest)
	if p.amountLast(r, name) {
		p.After = true
		return true
	}
	if stepLike(name) && unit != flavor.Top {
		*p = pour{of: p.of}
		return false
	}
	p.Unit = unit
	p.takeName(r, name)
	p.Amount, p.shape, p.UnitAt = 1, shapeImplied, Span{toks[0].start, toks[0].end}
	return true
}

// skipObject drops "up with", "the glass with", "of" and the like before what
// is poured.
func skipObject(toks []token) []token {
	with := slices.IndexFunc(toks, func(t token) bool { return t.kind == word && (t.text == "with" || t.text == "of") })
	if with >= 0 && with < 6 {
		s := readServing(toks[:with])
		if len(s.unknown) == 0 {
			toks = toks[with+1:]
		}
	}
	for len(toks) > 0 && (toks[0].kind == mark || objectWords[toks[0].text]) {
		if toks[0].is("(") || toks[0].is("~") {
			break
		}
		toks = toks[1:]
	}
	return toks
}

// objectWords stand between a verb and what is poured.
var objectWords = set(`up with mit off of on over a an the some little remaining rest more in`)

// fromFruit reads "juice of half a lime", "squeeze of lime", "white of one egg".
func (p *pour) fromFruit(r *reader, toks []token) bool {
	if len(toks) < 2 || toks[0].kind != word {
		return false
	}
	of := toks[1:]
	if of[0].text == "of" || of[0].text == "from" {
		of = of[1:]
	}
	if len(of) == 0 {
		return false
	}
	switch toks[0].text {
	case "juice":
		rest, ok := p.takeAmount(of)
		if !ok || len(rest) == 0 {
			return false
		}
		p.takeName(r, rest)
		p.squeezed, p.shape = true, shapePour
		return true
	case "squeeze", "squirt":
		if stepLike(of) {
			return false
		}
		rest, ok := p.takeAmount(of)
		if !ok {
			rest, p.noAmount, p.Amount = of, true, 1
		}
		rest = p.takeTrailingUnit(rest)
		p.takeName(r, rest)
		if p.Unit == "" {
			p.Unit = flavor.Wedge
		}
		p.shape = shapePour
		p.addNote("a squeeze is taken as a wedge")
		return true
	case "white", "yolk":
		rest, ok := p.takeAmount(of)
		if !ok || len(rest) != 1 || rest[0].text != "egg" && rest[0].text != "eggs" {
			*p = pour{of: p.of}
			return false
		}
		p.Name, p.NameAt, p.shape = "egg "+toks[0].text, Span{toks[0].start, rest[0].end}, shapePour
		p.Unit = flavor.Piece
		return true
	}
	return false
}

// juiced reads "lime (juice of 1)".
func (p *pour) juiced(r *reader, toks []token) bool {
	last := len(toks) - 1
	open := -1
	if last > 3 && toks[last].is(")") {
		open = opening(toks)
	}
	if open < 1 || last-open < 4 || toks[open+1].text != "juice" || toks[open+2].text != "of" {
		return false
	}
	rest, ok := p.takeAmount(toks[open+3 : last])
	if !ok || len(rest) > 0 {
		*p = pour{of: p.of}
		return false
	}
	p.takeNameOnly(r, toks[:open])
	p.squeezed, p.shape = true, shapePour
	return true
}

// lengtheners fill a glass up where no amount is written.
var lengtheners = map[string]bool{"soda": true, "soda water": true, "club soda": true, "sparkling water": true, "tonic": true, "tonic water": true, "ginger beer": true,
	"ginger ale": true, "cola": true, "lemonade": true, "grapefruit soda": true, "prosecco": true, "champagne": true, "sparkling wine": true, "cava": true, "bubbles": true}

// vessels are words for what a drink is served in.
var vessels = set(`glass goblet mug cup tumbler bowl chalice stem jar`)

// unlike reports whether words are no pour by their form: a glass that is not known,
// or what is left out, as in "no salt".
func unlike(toks []token) bool {
	if len(toks) == 0 {
		return false
	}
	first, last := toks[0].text, toks[len(toks)-1].text
	return len(toks) > 1 && len(toks) <= 4 && vessels[last] || strings.HasSuffix(last, "-glass") ||
		(first == "no" || first == "without") && len(toks) > 1 && len(toks) <= 3
}

// eggs are poured one at a time where no amount is written.
var eggs = set(`ew egg eggs white whites wht whts yolk yolks eggwhite egg-white`)

// readWithoutAmount reads tokens that state no amount.
func (p *pour) readWithoutAmount(r *reader, toks []token) {
	if p.garnishAsked() {
		p.shape = shapeGarnish
		return
	}
	if at := slices.IndexFunc(toks, func(t token) bool { return t.text == "soaked" }); at > 0 && at+1 < len(toks) {
		w := oneLine(r.text[toks[0].start:toks[len(toks)-1].end])
		p.shape = shapePour
		p.fault = invalid("amount", w, "%q states no amounts; write two pours, such as \"1 sugar cube\" and \"3 dashes aromatic bitters\"", w)
		return
	}
	if len(toks) > 2 && toks[0].text == "side" && toks[1].text == "of" || p.Unit == flavor.Top && len(toks) > 0 && garnishNouns[toks[len(toks)-1].text] && !p.muddled {
		p.shape = shapeGarnish // "side of prosecco", "nutmeg on top"
		return
	}
	if p.Unit != "" && len(toks) > 0 { // "absinthe rinse"
		p.Amount, p.noAmount, p.shape = 1, false, shapeImplied
		p.takeName(r, toks)
		return
	}
	if p.unitLast(r, toks) {
		return
	}
	whole := trimMarks(p.of)
	if n, _ := tailAt(whole); n > 0 && n == len(whole) {
		p.shape = shapeTail
		return
	}
	if p.impliedUnit(r, toks) || p.rinsedGlass(r, whole) {
		return
	}
	if unlike(toks) {
		p.shape = shapeServing
		return
	}
	if s := readServing(whole); s.begins && (len(s.unknown) == 0 || stepVerbs[whole[0].text] || s.method != "" || s.glass != "" || garnishAfter(whole) > 0) || len(s.unknown) == 0 && s.states() || iceOnly(whole) {
		p.shape = shapeServing
		return
	}
	if len(toks) == 0 {
		return
	}
	p.takeName(r, toks)
	if lengtheners[strings.ToLower(p.Name)] {
		p.Amount, p.Unit, p.After, p.noAmount, p.shape = 1, flavor.Top, true, true, shapeImplied
		return
	}
	p.shape = shapeName
	last := withoutRemark(toks)
	switch {
	case len(toks) <= 3 && eggs[last] && (!strings.HasPrefix(last, "wh") || len(toks) == 1 || strings.HasPrefix(toks[len(toks)-2].text, "egg")):
		p.Amount, p.Unit, p.noAmount, p.shape = 1, flavor.Piece, true, shapeImplied
	case last == "cube" && len(toks) > 1:
		p.Amount, p.noAmount, p.shape = 1, true, shapeImplied
		p.Name = oneLine(r.text[p.NameAt.Start:toks[len(toks)-2].end])
		p.Unit = flavor.Cube
	case (garnishNouns[last] || last == "oil" && laidFruit[toks[0].text] || garnishNouns[toks[0].text] && len(toks) > 2 && toks[1].text == "of") && !p.muddled:
		p.shape, p.byNoun = shapeGarnish, true
	}
}

// doneTo are words behind a garnish that say what is done to it.
var doneTo = set(`discard discarded expressed flamed grated spanked slapped torched burnt charred dehydrated optional over skewered speared`)

// unitLast reads a name with one unit behind it: "maraschino bsp", "orange bitters
// dash".
func (p *pour) unitLast(r *reader, toks []token) bool {
	last := len(toks) - 1
	if last < 1 || toks[last].kind != word || stepVerbs[toks[0].text] || unitWordsAt(toks) {
		return false
	}
	u, ok := measure.ParseUnit(toks[last].text)
	if !ok || !u.Spoon() && u != flavor.Dash && u != flavor.Drop && u != flavor.Splash && u != flavor.Pinch {
		return false
	}
	p.Unit, p.UnitAt = u, Span{toks[last].start, toks[last].end}
	p.takeName(r, toks[:last])
	p.Amount, p.shape = 1, shapeImplied
	return true
}

// withoutRemark returns the last word of a name but for what stands in brackets
// behind it, or says what is done to it: "lemon peel (discard)", "nutmeg grated".
func withoutRemark(toks []token) string {
	last := len(toks) - 1
	if toks[last].is(")") {
		if open := opening(toks); open > 0 {
			last = open - 1
		}
	}
	if at := slices.IndexFunc(toks[:last], func(t token) bool { return t.text == "with" || t.text == "w" }); at > 0 && !slices.ContainsFunc(toks[at:], func(t token) bool { return t.kind == numeral }) {
		last = at - 1 // "lemon slice with cloves"
	}
	for last > 0 && (doneTo[toks[last].text] || toks[last].kind == mark) {
		last--
	}
	return toks[last].text
}

// impliedUnit reads a pour whose amount goes without saying: "splash of water".
// What is laid on a drink, such as a slice, is garnish unless it is muddled.
func (p *pour) impliedUnit(r *reader, toks []token) bool {
	u, n := unitAt(toks)
	if n == 0 {
		return false
	}
	rest := toks[n:]
	for len(rest) > 0 && (rest[0].text == "of" || rest[0].is(":")) {
		rest = rest[1:]
	}
	p.Unit, p.Amount, p.UnitAt = u, 1, Span{toks[0].start, toks[n-1].end}
	p.takeName(r, rest)
	p.each = u == flavor.Pinch && len(partNames(rest)) > 1 // "pinch salt & pepper"
	switch {
	case u == flavor.Ounce || u == flavor.Millilitre || u == flavor.Centilitre || u == flavor.PartUnit || u == flavor.Gram:
		if p.Name == "" && n == len(toks) && toks[0].text == "g" {
			break
		}
		p.shape = shapeImplied
		if toks[0].text == "ounce" && p.Name != "" { // "ounce of vermouth"
			p.noAmount = true
			return true
		}
		w := oneLine(r.text[toks[0].start:toks[len(toks)-1].end])
		p.fault = invalid("amount", w, "%q does not say how many %s; write a number before it, such as \"2 %s\"", w, u, u)
		return true
	case p.Name == "":
	case (u == flavor.Slice || u == flavor.Wedge || u == flavor.Sprig || u == flavor.Leaf || u == flavor.Piece) && !p.muddled:
		p.shape, p.Name = shapeGarnish, ""
		return true
	default:
		p.shape = shapeImplied
		return true
	}
	p.Unit, p.Amount, p.UnitAt, p.NameAt = "", 0, Span{}, Span{}
	return false
}

// rinsedGlass reads "absinthe-rinsed coupe".
func (p *pour) rinsedGlass(r *reader, toks []token) bool {
	for i := range toks {
		name, ok := strings.CutSuffix(toks[i].text, "-rinsed")
		if !ok && toks[i].text == "rinsed" && i > 0 {
			name, ok = oneLine(r.text[toks[0].start:toks[i-1].end]), true
		}
		if !ok || i+1 == len(toks) {
			continue
		}
		s := readServing(toks[i+1:])
		if s.glass == "" || len(s.unknown) > 0 {
			continue
		}
		r.said.merge(&s, true)
		p.Name, p.Unit, p.Amount, p.After, p.shape = name, flavor.Rinse, 1, true, shapeImplied
		p.NameAt = Span{toks[0].start, toks[0].start + len(name)}
		p.UnitAt = Span{toks[i].end - len("rinsed"), toks[i].end}
		return true
	}
	return false
}

// pouredIn returns the first amount with its unit in words that are no pour, empty
// if they hold none: an amount is never passed over.
func pouredIn(toks []token) string {
	for i := range toks {
		if toks[i].kind != numeral || toks[i].wrong != "" {
			continue
		}
		if u, n := unitAt(toks[i+1:]); n > 0 && i+1+n < len(toks) && toks[i+1+n].kind == word && (u.Jigger() || u.Spoon() || u == flavor.Dash || u == flavor.PartUnit) {
			return toks[i].text + " " + toks[i+1].text + " " + toks[i+1+n].text
		}
	}
	return ""
}

// countedIn returns the first number before a word that is not known, empty if there
// is none.
func countedIn(toks []token, unknown []token) string {
	for i := range toks[1:] {
		if toks[i].kind == numeral && slices.ContainsFunc(unknown, func(t token) bool { return t.start == toks[i+1].start }) {
			return toks[i].text + " " + toks[i+1].text
		}
	}
	return ""
}

// rim reads what the rim of the glass is dressed with.
func (p *pour) rim(toks []token) bool {
	found := len(toks) == 2 && toks[0].text == "half" && (toks[1].text == "salt" || toks[1].text == "sugar") // "half salt"
	var kept []string
	if last := len(toks) - 1; last > 1 && toks[last-1].text == "with" && (toks[last].text == "salt" || toks[last].text == "sugar") {
		if s := readServing(toks[:last-1]); s.service != "" && len(s.unknown) == 0 { // "rocks with salt"
			p.shape, p.remark = shapeRim, toks[last].text
			return true
		}
	}
	for i := range toks {
		switch w := toks[i].text; {
		case w == "rim" || w == "rimmed" || w == "rimming" || strings.HasSuffix(w, "-rimmed"):
			found = true
			if name, ok := strings.CutSuffix(w, "-rimmed"); ok {
				kept = append(kept, name)
			}
		case toks[i].kind == mark || w == "with" || w == "the" || w == "glass" || w == "a" || w == "of":
		default:
			kept = append(kept, w)
		}
	}
	if found {
		p.shape, p.remark = shapeRim, strings.Join(kept, " ")
		if w := pouredIn(toks); w != "" {
			p.shape, p.fault = shapePour, invalid("amount", w, "%q stands in what is said of the rim; write it in a line of its own", w)
		}
	}
	return found
}

// garnish reads a garnish that says so first.
func (p *pour) garnish(toks []token) bool {
	if garnishVerbs[toks[0].text] {
		p.shape = shapeGarnish
		return true
	}
	return false
}
