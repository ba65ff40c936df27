package naming

import (
	"errors"
	"fmt"
	"iter"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/names/jargon"
	"counterpour/flavor/measure/draft/names/tongue"
)

// Finder finds the ingredient behind a written name. An unknown name is an
// error that holds a *[flavor.DataFault] of kind [flavor.ErrUnknown]; any other
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

// Lister is a [Placer] that lists names. It spares a search for what is nearest.
type Lister interface {
	Placer
	// Initialled yields at least every name and alias, normalised, that has all letters
	// of some words, and for each of them a word with the same first letter.
	Initialled(words []string) iter.Seq[string]
}

// Found is what a name led to.
type Found struct {
	Profile  *flavor.Profile
	How      flavor.MatchHow
	Inferred bool   // by the place, or at full length
	As       string // the name that was looked up
	Dropped  string // what of the name was passed over
	Infusion string // what was put into the bottle, which is not counted
	Unstated bool   // nobody has stated what the infusion may carry
	Fault    *flavor.DataFault
}

// Firm reports whether a name led to an ingredient without a slip of the pen.
func (f *Found) Firm() bool { return f.Profile != nil && f.How != flavor.MatchFuzzy }

// Resolver asks a finder and keeps its failure, so that a reading has one place
// where it ends.
type Resolver struct {
	finder Finder
	placer Placer
	memory *memory // nil: nothing is kept
	err    error
}

// NewResolver returns a resolver over a finder.
func NewResolver(f Finder) *Resolver {
	b := &Resolver{}
	if m, ok := f.(*memory); ok {
		b.memory, f = m, m.Finder
	}
	b.finder = f
	b.placer, _ = f.(Placer)
	if b.placer != nil && !(b.memory != nil && b.memory.answers) { // a finder that does not answer says so only here
		_, _, err := f.Resolve("")
		failed := b.failed("", err)
		if b.memory != nil {
			b.memory.answers = !failed
		}
	}
	return b
}

// LongestName is the most words that a step is searched for a name with.
const LongestName = 4

// Named returns the ingredient of exactly that name.
func (b *Resolver) Named(name string) (*flavor.Profile, flavor.MatchHow, bool) {
	if b.placer != nil {
		return b.placer.Named(name)
	}
	p, m, err := b.finder.Resolve(name)
	if b.failed(name, err) || err != nil || p == nil || m.How == flavor.MatchFuzzy {
		return nil, "", false
	}
	return p, m.How, true
}

// Has reports whether an ingredient has exactly that name.
func (b *Resolver) Has(name string) bool {
	_, _, ok := b.Named(name)
	return ok
}

// Err is the failure of the finder, nil if it answers.
func (b *Resolver) Err() error { return b.err }

// failed keeps a failure of the finder, which is any error but a fault.
func (b *Resolver) failed(name string, err error) bool {
	var fault *flavor.DataFault
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
func (b *Resolver) slip(name string, pl Place) (*flavor.Profile, bool) {
	if b.placer != nil {
		return b.placer.Slip(name, pl.allows)
	}
	p, m, err := b.finder.Resolve(name)
	if err != nil || p == nil || m.How != flavor.MatchFuzzy || !pl.allows(p) {
		return nil, false
	}
	return p, true
}

func (b *Resolver) suggest(name string, pl Place) []string {
	if b.placer != nil {
		return b.placer.Suggest(name, pl.allows)
	}
	_, _, err := b.finder.Resolve(name)
	var fault *flavor.DataFault
	if errors.As(err, &fault) && fault != nil {
		return fault.Suggest
	}
	return nil
}

// Literal returns the ingredient whose own name or id is written, where the
// place allows it: fields name what a text would mean by its place.
func (b *Resolver) Literal(name string, pl Place) (Found, bool) {
	p, how, ok := b.Named(name)
	if !ok || how != flavor.MatchExact || !pl.allows(p) {
		return Found{}, false
	}
	return Found{Profile: p, How: how, As: name}, true
}

// Find returns the ingredient that a name means in a place: what the place makes
// of the word, its own name or alias, the same without words such as "fresh",
// at full length, and last a slip of the pen. A name that means nothing, or
// more than one thing, is a fault at "ingredient"; who changes it makes a copy
// first ([Resolver.Copied]).
func (b *Resolver) Find(name string, pl Place) Found {
	if b.memory == nil {
		return b.find(name, pl)
	}
	q := asking(name, pl)
	f, known := b.memory.found[q]
	if known {
		return f
	}
	if f, known = b.memory.kept.get(q, b.memory); !known {
		if f = b.find(name, pl); b.err != nil {
			return f
		}
		b.memory.kept.put(q, f, b.memory)
	}
	b.memory.found[q] = f
	return f
}

// find is [Resolver.Find] of what is asked for the first time. No word is passed over that names what may
// harm a guest.
func (b *Resolver) find(name string, pl Place) Found {
	f := b.lookUp(name, pl)
	if f.Profile == nil || f.Fault != nil {
		return f
	}
	if without(name, f.Profile) {
		return Found{Fault: b.unknown(name, pl)}
	}
	if lost := lostBeside(name, &f); lost != "" {
		return Found{Fault: flavor.Unknown("ingredient", name, nil, "%q says that it holds %s, and %s is not known to carry that; name the bottle in your stock, or write what brings it on a line of its own", name, lost, f.Profile.Name)}
	}
	return f
}

// lookUp finds what a name means, whatever is passed over.
func (b *Resolver) lookUp(name string, pl Place) Found {
	pinned, class := pin(name)
	if class != "" && !b.Has(pinned+" "+string(class)) {
		if p, how, ok := b.Named(pinned); ok && (p.Class == class || class == "plain") {
			return Found{Profile: p, How: how, As: pinned}
		}
	}
	if f, ok := b.withoutDenial(name, pl); ok {
		return f
	}
	if f, ok := b.bracketed(name, pl); ok {
		return f
	}
	if at := dashed.FindStringIndex(name); at != nil {
		return b.findParted(name[:at[0]]+", "+name[at[1]:], pl)
	}
	if at := strings.IndexByte(name, ','); at >= 0 {
		f := b.findParted(name, pl)
		if open := strings.IndexByte(name, '('); f.Fault != nil && open >= 0 && open < at { // "tea (cold, strong)"
			if bare, ok := b.withoutBrackets(name, pl); ok {
				return bare
			}
		}
		return f
	}
	return b.findWhole(name, pl)
}

// findWhole is [Resolver.Find] of a name without commas, dashes and a class in brackets.
func (b *Resolver) findWhole(name string, pl Place) Found {
	plain := jargon.Strip(name)
	if as := spelt[strings.ToLower(plain[len(plain)-1])]; as != "" && pl.Volume() {
		name, plain = as, []string{as}
	}
	if f, ok := b.asWritten(name, plain, pl); ok {
		return f
	}
	if f, ok := b.free(name, pl); ok {
		return f
	}
	if jargon.Vague(name) {
		return Found{Fault: b.unknown(name, pl)}
	}
	for _, n := range plain {
		key := flavor.NormaliseName(n)
		if f, ok := b.Short(key, pl, !strings.ContainsRune(n, '(')); ok {
			return f
		}
	}
	for _, found := range []func(string, Place) (Found, bool){b.withoutBrackets, b.withoutStrength, b.withoutTail, b.withoutStyle, b.withoutAlike, b.pointed, b.ofOrigin, b.ofOriginBehind, b.ofVariety, b.withoutEpithets, b.fruitBrandy, b.consonantal, b.initialled, b.clipped, b.infused, b.mendedKind} {
		if f, ok := found(name, pl); ok {
			return f
		}
	}
	if full, changed := jargon.Lengthen(flavor.NormaliseName(name)); changed {
		if f, ok := b.infused(full, pl); ok { // "jal tequila"
			return f
		}
	}
	if speltRight(name) {
		return Found{Fault: b.unknown(name, pl)}
	}
	if f, ok := b.slipOfWord(flavor.NormaliseName(name), pl); ok {
		return f
	}
	f, ok := b.mistyped(name, plain, pl)
	if !ok {
		if near, ok := b.skeletal(name, pl); ok {
			return near
		}
		f = Found{Fault: b.unknown(name, pl)}
	}
	return f
}

// asWritten is the ingredient that a name means in a place as it stands, or without adjectives.
func (b *Resolver) asWritten(name string, plain []string, pl Place) (Found, bool) {
	for i, n := range plain {
		if f, ok := b.InPlace(flavor.NormaliseName(n), pl, n != name); ok {
			return f, true
		}
		p, how, ok := b.Named(n)
		if !ok || i+1 < len(plain) && b.fits(plain[i+1:], p, pl) {
			continue
		}
		if both := joinsTwo(p, n); both != nil {
			return Found{Fault: both}, true
		}
		if f, ok := b.pressedForm(n, p, pl); ok {
			return f, true
		}
		return Found{Profile: p, How: how, As: n, Inferred: jargon.Kind(flavor.NormaliseName(n)) && flavor.NormaliseName(p.Name) != flavor.NormaliseName(n)}, true
	}
	return Found{}, false
}

// mistyped is the ingredient of whose name another is a slip of the pen.
func (b *Resolver) mistyped(name string, plain []string, pl Place) (Found, bool) {
	if english, foreign := tongue.English(flavor.NormaliseName(name)); foreign { // a word of another tongue is no slip of an English one
		if !strings.Contains(strings.TrimSpace(name), " ") {
			plain = nil
		}
		plain = append([]string{english}, plain...)
	}
	if full, short := jargon.Lengthen(flavor.NormaliseName(name)); short { // "lemmon juce"
		plain = append(plain, full)
	}
	for _, n := range plain {
		if p, ok := b.slip(n, pl); ok && begunAlike(n, p) {
			return Found{Profile: p, How: flavor.MatchFuzzy, As: n}, true
		}
	}
	return Found{}, false
}

// fits reports whether the place has no room for p, and has for what a name means with
// fewer adjectives: two fresh limes are no juice.
func (b *Resolver) fits(fewer []string, p *flavor.Profile, pl Place) bool {
	return !pl.allows(p) && slices.ContainsFunc(fewer, func(n string) bool {
		q, _, ok := b.Named(n)
		return ok && pl.allows(q)
	})
}

// spelt are words that mean another thing by volume than their keys: without its accent
// rosé is the flower too, one white is a wine, and thé is an article.
var spelt = map[string]string{"rosé": "rosé wine", "thé": "black tea", "whites": "egg white"}

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

// InPlace returns what a word means by its place alone, if the place makes
// something of it.
func (b *Resolver) InPlace(key string, pl Place, stripped bool) (Found, bool) {
	means, ask := meantAt(key, pl)
	if ask == nil {
		ask = meantByVolumeAlone(key, pl)
	}
	if means != "" {
		if p, how, ok := b.Named(means); ok {
			same := flavor.NormaliseName(p.Name) == key
			if how == flavor.MatchExact && !same {
				how = flavor.MatchAlias
			}
			return Found{Profile: p, How: how, As: means, Inferred: !same && !aliasOf(p, key)}, true
		}
	}
	if f := b.Asks(key, ask, pl); f != nil {
		return Found{Fault: f}, true
	}
	return Found{}, false
}

// meantAt is what the trade means by a word in a place, or what it may mean there and is to be asked.
func meantAt(key string, pl Place) (means string, ask []string) {
	switch {
	case pl.Unit == flavor.Drop && jargon.ByDrop(key) != "":
		return jargon.ByDrop(key), nil
	case pl.Unit == flavor.Dash || pl.Unit == flavor.Drop:
		return jargon.ByDash(key), jargon.AskDash(key)
	case pl.Unit == flavor.Pinch || pl.Unit.Spoon() && jargon.BySpoon(key) != "":
		return jargon.BySpoon(key), nil
	case pl.Unit.Spoon():
		return jargon.ByVolume(key), jargon.AskVolume(key)
	case pl.Volume():
		return meantByVolume(key, pl)
	case pl.Unit == flavor.Gram && (key == "lemon" || key == "lime"):
		return jargon.ByVolume(key), nil
	case pl.Unit == flavor.Gram && strings.HasSuffix(jargon.ByVolume(key), " juice"):
		return "", []string{jargon.ByVolume(key), key}
	case pl.Unit == flavor.Piece && (key == "white" || key == "whites"):
		return "egg white", nil
	}
	return "", nil
}

// meantByVolumeAlone lists what a word may mean that is dashed or dropped and means several things by
// volume alone: a unit makes no name certain, "2 dashes herbal liqueur".
func meantByVolumeAlone(key string, pl Place) []string {
	if asks := jargon.AskVolume(key); len(asks) > 1 && (pl.Unit == flavor.Dash || pl.Unit == flavor.Drop) && jargon.ByDash(key) == "" && jargon.AskDash(key) == nil {
		return asks
	}
	return nil
}

// meantByVolume is meantAt of what is poured by volume, where how much of it there is may tell.
func meantByVolume(key string, pl Place) (means string, ask []string) {
	long := jargon.AskTop(key)
	squeezed := pl.Unit == flavor.Splash && key == "lemon" // and no lemonade
	tops := pl.Topped || pl.Unit == flavor.Top || pl.Unit == flavor.Splash || key == "ginger" && pl.ML() > longFrom
	switch {
	case key == "pamplemousse" && pl.ML() > mostLiqueur:
		return "", []string{"pamplemousse liqueur", "grapefruit juice"}
	case key == "allspice" && pl.Unit.Jigger() && pl.ML() <= mostDram:
		return "allspice dram", jargon.AskVolume(key)
	case key == "demerara" && pl.ML() >= spiritFrom:
		return "", []string{"demerara rum", "demerara syrup"}
	case key == "blanc" && pl.Unit.Jigger() && pl.ML() <= mostBlanc:
		return "blanc vermouth", nil
	case len(long) > 0 && !squeezed && tops:
		return "", long
	}
	return jargon.ByVolume(key), jargon.AskVolume(key)
}

// aliasOf reports whether a key is a name of p that is all its own.
func aliasOf(p *flavor.Profile, key string) bool {
	return slices.ContainsFunc(p.Aliases, func(a string) bool { return flavor.NormaliseName(a) == key })
}

const (
	longFrom    = 60.0 // mL from which ginger is no syrup; common practice
	spiritFrom  = 29.0 // mL from which demerara may be the rum; common practice
	mostLiqueur = 31.0 // mL up to which a fruit by its French name is its liqueur; common practice
	mostBlanc   = 61.0 // mL up to which what is only called white in French is vermouth, no wine; common practice
	mostDram    = 8.0  // mL up to which allspice is the dram, a quarter of an ounce; common practice
)

// Asks returns the fault of a word that means more than one thing, if at least
// two of them are known; nil else.
func (b *Resolver) Asks(key string, means []string, pl Place) *flavor.DataFault {
	var known []string
	for _, m := range means {
		if p, _, ok := b.Named(m); ok && !slices.Contains(known, p.Name) {
			known = append(known, p.Name)
		}
	}
	if len(known) == 0 {
		return nil
	}
	f := measure.Invalid("ingredient", key, "%q %s may be %s; write which", key, PlaceWords(pl.Unit), flavor.JoinOr(known))
	f.Suggest = known
	return f
}

// unknown is the fault of a name that means nothing.
func (b *Resolver) unknown(name string, pl Place) *flavor.DataFault {
	if f := b.either(name, pl); f != nil {
		return f
	}
	if b.memory != nil {
		f := flavor.Unknown("ingredient", name, nil, "%s", saysUnknown(name, nil))
		b.memory.left[f] = asking(name, pl)
		return f
	}
	near := b.near(name, pl)
	return flavor.Unknown("ingredient", name, near, "%s", saysUnknown(name, near))
}

// near lists the names worth suggesting for one that means nothing.
func (b *Resolver) near(name string, pl Place) []string {
	return b.keeping(name, slices.DeleteFunc(b.suggest(name, pl), func(n string) bool { return !b.alike(name, n) }))
}

// saysUnknown says that a name means nothing, and what is nearest to it.
func saysUnknown(name string, near []string) string {
	said := "check the spelling, or write its category, such as \"London dry gin\""
	if len(near) > 0 {
		said = "nearest: " + strings.Join(near, ", ")
	}
	return fmt.Sprintf("unknown ingredient %q; %s", name, said)
}
