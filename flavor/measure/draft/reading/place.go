package reading

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
)

// Finder finds the ingredient behind a written name. An unknown name is an
// error that holds a *[flavor.Fault] of kind [flavor.ErrUnknown]; any other
// error is the finder's own failure and ends the reading.
type Finder interface {
	Resolve(written string) (*flavor.Profile, flavor.Match, error)
}

// Placer is a [Finder] that can look for what a place in a drink allows. A
// finder that cannot is asked for the name alone.
type Placer interface {
	Finder
	// Named returns the ingredient of exactly that name or alias.
	Named(written string) (*flavor.Profile, flavor.MatchHow, bool)
	// Slip returns the one ingredient, among those that the place allows, of
	// whose name the written one is a slip of the pen.
	Slip(written string, allows func(*flavor.Profile) bool) (*flavor.Profile, bool)
	// Suggest returns the names nearest to the written one, those that the place
	// allows first.
	Suggest(written string, allows func(*flavor.Profile) bool) []string
}

// place is where a name stands: what its unit is, and what is done to it.
type place struct {
	unit   flavor.Unit
	amount float64
	topped bool
}

// placeOf is the place of a pour; what rinses or scents a glass is no topping.
func placeOf(u flavor.Unit, amount float64, after bool) place {
	return place{unit: u, amount: amount, topped: after && u != flavor.Rinse && u != flavor.Spritz}
}

// allows reports whether an ingredient may stand there.
func (p place) allows(x *flavor.Profile) bool {
	if _, ok := measure.MLPerUnit(p.unit, x); !ok {
		return false
	}
	switch {
	case p.unit == flavor.Dash || p.unit == flavor.Drop || p.unit == flavor.Spritz:
		if _, own := x.Yield(p.unit); own {
			return true
		}
		part := x.Class.Part()
		return part == flavor.PartSeasoning && !x.Class.Solid() || part == flavor.PartModifier || part == flavor.PartSweetener ||
			part == flavor.PartTexture || x.Class == flavor.ClassAcid || x.Class == flavor.ClassSavoury
	case p.unit.Jigger() || p.unit == flavor.PartUnit || p.topped:
		return !x.Class.Solid() && x.Class != flavor.ClassCocktailBitters || x.Class == flavor.ClassSugar
	}
	return true
}

// volume reports whether the place is one of a jigger or the glass.
func (p place) volume() bool {
	return p.unit.Jigger() || p.unit == flavor.PartUnit || p.unit == flavor.Splash || p.unit == flavor.Top || p.unit == flavor.Float
}

// found is what a name led to.
type found struct {
	profile  *flavor.Profile
	how      flavor.MatchHow
	inferred bool   // by the place, or at full length
	as       string // the name that was looked up
	dropped  string // what of the name was passed over
	infusion string // what was put into the bottle, which is not counted
	fault    *flavor.Fault
}

func (f *found) firm() bool { return f.profile != nil && f.how != flavor.MatchFuzzy }

// book asks a finder and keeps its failure, so that a reading has one place
// where it ends.
type book struct {
	finder Finder
	placer Placer
	err    error
}

func newBook(f Finder) *book {
	b := &book{finder: f}
	b.placer, _ = f.(Placer)
	if b.placer != nil { // a finder that does not answer says so only here
		_, _, err := f.Resolve("")
		b.failed("", err)
	}
	return b
}

// named returns the ingredient of exactly that name.
func (b *book) named(name string) (*flavor.Profile, flavor.MatchHow, bool) {
	if b.placer != nil {
		return b.placer.Named(name)
	}
	p, m, err := b.finder.Resolve(name)
	if b.failed(name, err) || err != nil || p == nil || m.How == flavor.MatchFuzzy {
		return nil, "", false
	}
	return p, m.How, true
}

// failed keeps a failure of the finder, which is any error but a fault.
func (b *book) failed(name string, err error) bool {
	var fault *flavor.Fault
	if err == nil || errors.As(err, &fault) {
		return false
	}
	if b.err == nil {
		b.err = fmt.Errorf("draft: look up %q: %w", name, err)
	}
	return true
}

// slip returns the one ingredient, allowed in the place, of whose name the
// written one is a slip.
func (b *book) slip(name string, pl place) (*flavor.Profile, bool) {
	if b.placer != nil {
		return b.placer.Slip(name, pl.allows)
	}
	p, m, err := b.finder.Resolve(name)
	if err != nil || p == nil || m.How != flavor.MatchFuzzy || !pl.allows(p) {
		return nil, false
	}
	return p, true
}

func (b *book) suggest(name string, pl place) []string {
	if b.placer != nil {
		return b.placer.Suggest(name, pl.allows)
	}
	_, _, err := b.finder.Resolve(name)
	var fault *flavor.Fault
	if errors.As(err, &fault) && fault != nil {
		return fault.Suggest
	}
	return nil
}

// literal returns the ingredient whose own name or id is written, where the
// place allows it: fields name what a text would mean by its place.
func (b *book) literal(name string, pl place) (found, bool) {
	p, how, ok := b.named(name)
	if !ok || how != flavor.MatchExact || !pl.allows(p) {
		return found{}, false
	}
	return found{profile: p, how: how, as: name}, true
}

// find returns the ingredient that a name means in a place: what the place makes
// of the word, its own name or alias, the same without words such as "fresh",
// at full length, and last a slip of the pen. A name that means nothing, or
// more than one thing, is a fault at "ingredient".
func (b *book) find(name string, pl place) found {
	pinned, class := pin(name)
	if class != "" {
		if p, how, ok := b.named(pinned); ok && (p.Class == class || class == "plain") {
			return found{profile: p, how: how, as: pinned}
		}
	}
	if at := dashed.FindStringIndex(name); at != nil {
		return b.findParted(name[:at[0]]+", "+name[at[1]:], pl)
	}
	if at := strings.IndexByte(name, ','); at >= 0 {
		f := b.findParted(name, pl)
		if open := strings.IndexByte(name, '('); f.fault != nil && open >= 0 && open < at { // "tea (cold, strong)"
			if bare, ok := b.withoutBrackets(name, pl); ok {
				return bare
			}
		}
		return f
	}
	plain := strip(name)
	if strings.EqualFold(plain[len(plain)-1], "rosé") && pl.volume() { // without its accent it is the flower too
		name, plain = rose, []string{rose}
	}
	for _, n := range plain {
		if f, ok := b.inPlace(flavor.NormaliseName(n), pl, n != name); ok {
			return f
		}
		if p, how, ok := b.named(n); ok {
			if both := joinsTwo(p, n); both != nil {
				return found{fault: both}
			}
			return found{profile: p, how: how, as: n, inferred: how == flavor.MatchAlias && kinds[flavor.NormaliseName(n)]}
		}
	}
	for _, n := range plain {
		key := flavor.NormaliseName(n)
		if f, ok := b.short(key, pl, !strings.ContainsRune(n, '(')); ok {
			return f
		}
	}
	if f, ok := b.withoutBrackets(name, pl); ok {
		return f
	}
	if f, ok := b.withoutStrength(name, pl); ok {
		return f
	}
	if f, ok := b.withoutStyle(name, pl); ok {
		return f
	}
	if f, ok := b.pointed(name, pl); ok {
		return f
	}
	if f, ok := b.clipped(name, pl); ok {
		return f
	}
	if f, ok := b.infused(name, pl); ok {
		return f
	}
	if f, ok := b.slipOfWord(flavor.NormaliseName(name), pl); ok {
		return f
	}
	for _, n := range plain {
		if p, ok := b.slip(n, pl); ok {
			return found{profile: p, how: flavor.MatchFuzzy, as: n}
		}
	}
	return found{fault: b.unknown(name, pl)}
}

const rose = "rosé wine"

// pin reads a name that says its class in brackets, or that it is meant as it
// stands: "lime (fruit)", "honey (plain)".
func pin(name string) (string, flavor.Class) {
	inner, ok := strings.CutSuffix(name, ")")
	if !ok {
		return "", ""
	}
	at := strings.LastIndex(inner, " (")
	if at < 0 {
		return "", ""
	}
	class := flavor.Class(strings.ToLower(strings.TrimSpace(inner[at+2:])))
	if class != PlainMark && !class.Valid() {
		return "", ""
	}
	return inner[:at], class
}

// PlainMark says that a name is meant as it stands.
const PlainMark = "plain"

// inPlace returns what a word means by its place alone, if the place makes
// something of it.
func (b *book) inPlace(key string, pl place, stripped bool) (found, bool) {
	var means string
	var ask []string
	switch {
	case pl.unit == flavor.Drop && byDrop[key] != "":
		means = byDrop[key]
	case pl.unit == flavor.Dash || pl.unit == flavor.Drop:
		means, ask = byDash[key], askDash[key]
	case pl.unit == flavor.Pinch:
		means = spooned[key]
	case pl.unit.Spoon():
		if means = spooned[key]; means == "" {
			means, ask = byVolume[key], askVolume[key]
		}
	case pl.volume():
		means, ask = byVolume[key], askVolume[key]
		if long := askTop[key]; len(long) > 0 && !(pl.unit == flavor.Splash && key == "lemon") && (pl.topped || pl.unit == flavor.Top || pl.unit == flavor.Splash || key == "ginger" && pl.ml() > longFrom) {
			means, ask = "", long
		}
		if key == "demerara" && pl.ml() >= spiritFrom {
			means, ask = "", []string{"demerara rum", "demerara syrup"}
		}
	case pl.unit == flavor.Gram && (key == "lemon" || key == "lime"):
		means = byVolume[key]
	case pl.unit == flavor.Gram && strings.HasSuffix(byVolume[key], " juice"):
		ask = []string{byVolume[key], key}
	case pl.unit == flavor.Piece && (key == "white" || key == "whites"):
		means = "egg white"
	}
	if means != "" {
		if p, how, ok := b.named(means); ok {
			same := flavor.NormaliseName(p.Name) == key
			if how == flavor.MatchExact && !same {
				how = flavor.MatchAlias
			}
			return found{profile: p, how: how, as: means, inferred: !same && !aliasOf(p, key)}, true
		}
	}
	if f := b.asks(key, ask, pl); f != nil {
		return found{fault: f}, true
	}
	return found{}, false
}

// aliasOf reports whether a key is a name of p that is all its own.
func aliasOf(p *flavor.Profile, key string) bool {
	return slices.ContainsFunc(p.Aliases, func(a string) bool { return flavor.NormaliseName(a) == key })
}

const (
	longFrom   = 60.0 // mL from which ginger is no syrup; common practice
	spiritFrom = 29.0 // mL from which demerara may be the rum; common practice
)

// ml is the size of the pour, as far as a volume says.
func (p place) ml() float64 {
	per, ok := measure.MLPerUnit(p.unit, nil)
	if !ok {
		return 0
	}
	return per * p.amount
}

// asks returns the fault of a word that means more than one thing, if at least
// two of them are known; nil else.
func (b *book) asks(key string, means []string, pl place) *flavor.Fault {
	var known []string
	for _, m := range means {
		if p, _, ok := b.named(m); ok && !slices.Contains(known, p.Name) {
			known = append(known, p.Name)
		}
	}
	if len(known) == 0 {
		return nil
	}
	f := measure.Invalid("ingredient", key, "%q %s may be %s; write which", key, placeWords(pl.unit), flavor.JoinOr(known))
	f.Suggest = known
	return f
}

// short returns what a shortened name means; headless allows it to lack the last
// word of its name.
func (b *book) short(key string, pl place, headless bool) (found, bool) {
	tryKey := func(name string) (found, bool) {
		k := flavor.NormaliseName(name)
		if f, ok := b.inPlace(k, pl, true); ok {
			f.inferred = f.fault == nil
			return f, true
		}
		if p, _, ok := b.named(name); ok {
			return found{profile: p, how: flavor.MatchAlias, as: name, inferred: true}, true
		}
		return found{}, false
	}
	if full, ok := shorthand[key]; ok {
		if f, ok := tryKey(full); ok {
			return f, true
		}
	}
	if full, ok := tongues[key]; ok {
		if f, ok := tryKey(full); ok {
			return f, true
		}
	}
	if f := b.asks(key, askTongue[key], pl); f != nil {
		return found{fault: f}, true
	}
	if f, ok := b.inTongue(key, tryKey); ok {
		return f, true
	}
	full, changed := lengthen(key)
	if changed {
		if means, ok := shorthand[full]; ok {
			full = means
		}
		if f, ok := tryKey(full); ok {
			return f, true
		}
	}
	if words := strings.Fields(full); len(words) == 2 { // "amaro med"
		if f, ok := tryKey(words[1] + " " + words[0]); ok && f.fault == nil {
			return f, true
		}
	}
	if !headless {
		return found{}, false
	}
	return b.completed(full, key, pl)
}

// heads end the names of ingredients, and bars leave them out.
var heads = []string{"liqueur", "syrup", "juice", "bitters", "vermouth", "sherry", "rum", "whiskey", "gin", "tequila", "brandy", "amaro", "aperitif", "cordial", "puree", "port", "vodka", "sugar"}

// completed returns the one ingredient whose name is the written one and its head,
// as in "green herbal" for a liqueur. Several are asked for.
func (b *book) completed(name, key string, pl place) (found, bool) {
	if len(key) < shortestHeadless || slices.Contains(heads, key) || !pl.volume() && pl.unit != flavor.Dash && !pl.unit.Spoon() {
		return found{}, false
	}
	var hit found
	var means []string
	for _, h := range heads {
		p, _, ok := b.named(name + " " + h)
		if !ok || !pl.allows(p) || slices.Contains(means, p.Name) {
			continue
		}
		means = append(means, p.Name)
		hit = found{profile: p, how: flavor.MatchAlias, as: name + " " + h, inferred: true}
	}
	if len(means) > 1 {
		return found{fault: b.asks(key, means, pl)}, true
	}
	return hit, len(means) == 1
}

const shortestHeadless = 4 // letters of a name without its head

// slipOfWord returns what a word of the place means of which the written one is a slip
// of one letter, where it is the only one.
func (b *book) slipOfWord(key string, pl place) (found, bool) {
	if len(key) < leastSlipped || strings.Contains(key, " ") || !pl.volume() {
		return found{}, false
	}
	best := ""
	for _, w := range volumeWords {
		if len(w) < leastSlipped || !swapped(key, w) && !oneOff(key, w) {
			continue
		}
		if best != "" && byVolume[best] != byVolume[w] {
			return found{}, false
		}
		best = w
	}
	p, _, ok := b.named(byVolume[best])
	if best == "" || !ok {
		return found{}, false
	}
	return found{profile: p, how: flavor.MatchFuzzy, as: byVolume[best]}, true
}

const leastSlipped = 5 // letters of a word in which a slip is forgiven

// volumeWords are the single words of byVolume in order.
var volumeWords = func() []string {
	var out []string
	for w := range byVolume {
		if !strings.Contains(w, " ") {
			out = append(out, w)
		}
	}
	slices.Sort(out)
	return out
}()

// swapped reports whether two neighbouring letters of a are swapped in b, and nothing
// else differs.
func swapped(a, b string) bool {
	if len(a) != len(b) || a == b {
		return false
	}
	i := 0
	for a[i] == b[i] {
		i++
	}
	return i+1 < len(a) && a[i] == b[i+1] && a[i+1] == b[i] && a[i+2:] == b[i+2:]
}

// oneOff reports whether one letter amid b is missing in a, doubled or another.
func oneOff(a, b string) bool {
	i, j := 0, 0
	for i < len(a) && i < len(b) && a[i] == b[i] {
		i++
	}
	for j < len(a)-i && j < len(b)-i && a[len(a)-1-j] == b[len(b)-1-j] {
		j++
	}
	lost, over := len(a)-i-j, len(b)-i-j
	return i > 0 && j > 0 && lost <= 1 && over <= 1 && lost+over > 0
}

// unknown is the fault of a name that means nothing.
func (b *book) unknown(name string, pl place) *flavor.Fault {
	if f := b.either(name, pl); f != nil {
		return f
	}
	near := b.suggest(name, pl)
	said := "check the spelling, or write its category, such as \"London dry gin\""
	if len(near) > 0 {
		said = "nearest: " + strings.Join(near, ", ")
	}
	return flavor.Unknown("ingredient", name, near, "unknown ingredient %q; %s", name, said)
}
