// Package parting tells where one line of a draft holds several entries: by the signs
// between them, and by the words that end one and begin the next.
package parting

import (
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/gauge"
	"counterpour/flavor/measure/draft/words/token"
)

// What parts two entries, beside the signs between them.
const (
	// Soaked parts a sugar cube from the bitters that it is soaked in, of which nobody says
	// how much.
	Soaked = "soaked"
	// With parts words of mixing from what is counted into the shaker, which is not laid on the
	// drink.
	With = "with"
)

// Separator returns what parts entries at toks[i], where the entry before it starts at
// from, and how many tokens it takes; empty if nothing does. Nothing stands before the first
// token that it could part: i is above zero.
func Separator(toks []token.Token, i, from int) (string, int) {
	p := place{toks: toks, i: i, from: from, t: &toks[i], before: &toks[i-1], next: tokenAt(toks, i+1)}
	switch {
	case p.t.Kind == token.Mark:
		return p.atSign()
	case i > from && entry.Portioned(toks[from:]):
		return "", 0
	case p.t.Kind == token.Numeral:
		return p.atNumber()
	case i == from:
		return "", 0
	case p.t.Kind == token.Word:
		return p.atWord()
	case p.gapEndsPour():
		return ",", 0
	}
	return "", 0
}

// atNumber is Separator for an amount in figures. The first rule that holds decides.
func (p *place) atNumber() (string, int) {
	switch {
	case p.numbersItem():
		return ";", 2 // "1) 2 oz gin 2) 1 oz lemon"
	case p.i == p.from:
		return "", 0
	case p.numbersStep():
		return ";", 2 // "1. all in tin 2. shake hard"
	case p.gapEndsPour():
		return ",", 0 // "1 lemon   2 dashes bitters"
	case p.eggEnds():
		return ";", 0 // "ew 1 large cube"
	case p.beginsPour():
		return "and", 0 // "60 gin 30 lemon"
	}
	return "", 0
}

// atWord is Separator for a word behind another token of its entry. The first rule that holds
// decides: those that a rare word tells come first, and those that read far ahead come last.
func (p *place) atWord() (string, int) {
	switch {
	case gauge.Behind(p.toks[p.from : p.i+1]):
		return "", 0 // "stout 1 pint": no glass
	case p.weighsParts():
		return "and", 1 // "two parts gin to one part lime cordial"
	case p.beginsGarnish(), p.beginsEgg():
		return ";", 0 // "3/4 simple garnish mint", "3/4 simple egg white"
	case p.beginsTop():
		return "and", 0 // "3/4 simple top soda"
	case p.gapEndsPour(), p.gapEndsCell():
		return ",", 0 // "1 lemon   absinthe rinse", "NO EGG  BOURBON 2  LEMON 1"
	case p.fillsBehindService(), p.topsBehindOrders():
		return ";", 0 // "shake highball soda top", "shake collins top soda"
	case p.leavesOut():
		return ";", 0 // "3/4 simple no egg", "shake rocks no salt"
	case p.eggEnds(), p.pouredUncounted():
		return ";", 0 // "ew shake up", "20 lemon ew"
	case p.laidBehindTop(), p.behindBracket():
		return ";", 0 // "top soda lime wedge", "gin (50 ml) lemon (25 ml)"
	case p.soaksIn() && entry.StartsMeasure(p.toks[p.i+2:]):
		return ";", 2 // "sugar cube soaked with 3 dashes bitters"
	case p.mixesWith():
		return With, 1 // "shake with 4 thyme sprigs"
	case p.soaksIn() && p.toks[p.i+2].Kind == token.Word:
		return Soaked, 2 // "sugar cube soaked in bitters"
	case p.beginsFloat():
		return "and", 0 // "45 scotch top w/ ginger ale"
	case p.endsUnsigned():
		return ";", 0 // "gin 45 ml lemon 20 ml"
	case conjunctions.Has(p.t.Text) && !servedFrom(p.toks, p.i, p.from):
		return p.atConjunction()
	case p.addsMeasure():
		return "and", 1 // "2 oz rum with 3/4 oz lime"
	case p.measuredInWords():
		return "and", 0 // "two ounces of gin half an ounce of lemon"
	case servedFrom(p.toks, p.i, p.from), dosedFrom(p.toks, p.i, p.from):
		return ";", 0 // "3/4 oz simple shake up", "1/2 maraschino bsp violette"
	}
	return "", 0
}
