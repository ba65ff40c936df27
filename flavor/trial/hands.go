package trial

import (
	"fmt"
	"math/rand/v2"
	"strconv"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
)

// Words that bars write for an ingredient by its id, beside its own name; common
// practice, no source. They hold where it is poured by volume.
var shortNames = map[string][]string{
	"london-dry-gin": {"gin", "dry gin"}, "rye-whiskey": {"rye"}, "blended-scotch": {"scotch"}, "blanco-tequila": {"tequila", "blanco"}, "reposado-tequila": {"reposado", "repo"},
	"lemon-juice": {"lemon", "fresh lemon", "lemon jc"}, "lime-juice": {"lime", "fresh lime juice", "lime jc"}, "orange-juice": {"orange", "oj"},
	"grapefruit-juice": {"grapefruit", "grapefruit jc"}, "pineapple-juice": {"pineapple", "pine"}, "cranberry-juice": {"cranberry", "cran"},
	"simple-syrup": {"simple", "simple syrup", "sugar syrup"}, "rich-simple-syrup": {"rich simple", "2:1 simple"}, "demerara-syrup": {"demerara syrup", "dem syrup"},
	"honey-syrup": {"honey", "honey syrup"}, "agave-syrup": {"agave"}, "ginger-syrup": {"ginger syrup"}, "cinnamon-syrup": {"cinnamon syrup", "cinn syrup"},
	"sweet-vermouth": {"sweet vermouth", "sweet verm", "rosso vermouth"}, "dry-vermouth": {"dry vermouth", "dry verm"},
	"aromatic-bitters": {"ango", "aromatic", "bitters"}, "orange-bitters": {"orange bitters", "ob"}, "egg-white": {"egg white", "ew"},
	"maraschino-liqueur": {"maraschino"}, "orange-curacao": {"curacao", "orange curacao"}, "apricot-liqueur": {"apricot liqueur", "apricot liq"},
	"soda-water": {"soda", "club soda"}, "heavy-cream": {"cream", "heavy cream"}, "absinthe": {"absinthe"}, "grenadine": {"grenadine", "gren"},
	"red-bitter-aperitif": {"red bitter", "red bitter aperitif"},
}

// Words for methods and services; common practice, no source.
var (
	methodHands = map[flavor.Method][]string{
		flavor.Shake: {"shake", "shaken", "hard shake"}, flavor.DryShake: {"dry shake", "dry shake, shake"}, flavor.Stir: {"stir", "stirred"},
		flavor.Build: {"build", "build in glass"}, flavor.Blend: {"blend"}, flavor.Throw: {"throw"}, flavor.Swizzle: {"swizzle"},
	}
	serviceHands = map[flavor.Service][]string{
		flavor.Up: {"up", "coupe", "served up"}, flavor.Rocks: {"rocks", "on the rocks", "over ice"}, flavor.Crushed: {"crushed", "crushed ice", "pebble ice"},
		flavor.Long: {"long", "highball", "tall"}, flavor.Hot: {"hot"}, flavor.Neat: {"neat"},
	}
)

// hand is a way of writing: one choice for a whole draft, as one person has.
type hand struct {
	metric, bare, short, last, upper bool
	number                           int    // form of fractions
	between                          string // entries
	rng                              *rand.Rand
}

func newHand(rng *rand.Rand) hand {
	h := hand{rng: rng, number: rng.IntN(4), between: []string{"\n", "\n", "\n", ", ", " / ", "; "}[rng.IntN(6)]}
	h.metric, h.bare, h.short = rng.IntN(3) == 0, rng.IntN(3) == 0, rng.IntN(3) > 0
	h.last, h.upper = rng.IntN(5) == 0 && h.between == "\n", rng.IntN(8) == 0
	return h
}

// Scribble writes a spec without its name in a hand that the source picks, the same
// for the same source, and says what it pours: within 5 % or 0.5 mL, the larger.
func Scribble(s *flavor.Spec, rng *rand.Rand) Typed {
	h := newHand(rng)
	if h.bare && !h.plain(s) {
		h.bare = false
	}
	out := Typed{Hand: "proven drinks, in many hands"}
	var entries []string
	for i := range s.Pours {
		p := &s.Pours[i]
		entries = append(entries, h.pour(p))
		out.Pours = append(out.Pours, Poured{ID: p.Profile.ID, ML: p.ML, Tolerance: max(0.05*p.ML, 0.5)})
	}
	said := []string{h.one(methodHands[s.Method]), h.one(serviceHands[s.Service])}
	if h.between == "\n" {
		said = []string{strings.Join(said, []string{", ", " / ", " "}[rng.IntN(3)])}
	}
	out.Text = strings.Join(append(entries, said...), h.between)
	if h.upper {
		out.Text = strings.ToUpper(out.Text)
	}
	return out
}

func (h *hand) one(of []string) string { return of[h.rng.IntN(len(of))] }

// plain reports whether a draft of bare numbers is clear: three pours or more in
// jiggers, and none so large that it is another unit.
func (h *hand) plain(s *flavor.Spec) bool {
	n := 0
	for i := range s.Pours {
		if p := &s.Pours[i]; p.Unit == flavor.Ounce {
			n++
			if p.Amount > 4 || h.metric && p.Amount < 1.0/3 {
				return false
			}
		}
	}
	return n >= 3
}

func (h *hand) pour(p *flavor.Pour) string {
	name := strings.ToLower(p.Profile.Name)
	if of := shortNames[p.Profile.ID]; h.short && len(of) > 0 && (p.Unit == flavor.Ounce || p.Unit == flavor.Dash || p.Profile.ID == "egg-white" || p.Unit == flavor.Top) && !(p.Unit == flavor.Dash && p.Profile.Class != flavor.ClassCocktailBitters) {
		name = h.one(of)
	}
	switch {
	case p.Unit.After() && p.Amount == 1:
		return string(p.Unit) + " " + name
	case p.Unit == flavor.Piece:
		return measure.ExactNumber(p.Amount, p.Unit) + " " + name
	}
	amount := h.amount(p)
	if p.After && !p.Unit.After() {
		return "top " + amount + " " + name
	}
	if h.last && p.Unit == flavor.Ounce {
		return name + " " + amount
	}
	return amount + " " + name
}

func (h *hand) amount(p *flavor.Pour) string {
	unit, amount := p.Unit, p.Amount
	if unit == flavor.Ounce && h.metric {
		unit, amount = flavor.Millilitre, amount*30
		if h.number == 3 && !h.bare {
			unit, amount = flavor.Centilitre, amount/10
		}
	}
	text := h.figure(amount, unit)
	if h.bare && p.Unit == flavor.Ounce {
		return text
	}
	word := measure.UnitWord(amount, unit)
	if unit == flavor.Millilitre && h.number == 2 {
		return text + word // "45ml"
	}
	return text + " " + word
}

// figure writes a number: as a fraction, a decimal with or without its nought, or a
// vulgar fraction.
func (h *hand) figure(v float64, u flavor.Unit) string {
	decimal := strconv.FormatFloat(float64(int(v*1000+0.5))/1000, 'f', -1, 64)
	if u == flavor.Millilitre || u == flavor.Centilitre {
		return decimal
	}
	whole := int(v)
	vulgar := map[string]string{"0.25": "¼", "0.5": "½", "0.75": "¾"}[strconv.FormatFloat(v-float64(whole), 'f', -1, 64)]
	switch {
	case h.number == 0:
		return decimal
	case h.number == 1:
		return strings.TrimPrefix(decimal, "0")
	case h.number == 2 && vulgar != "" && whole == 0:
		return vulgar
	case h.number == 2 && vulgar != "":
		return fmt.Sprint(whole) + vulgar
	}
	return measure.ExactNumber(v, u)
}
