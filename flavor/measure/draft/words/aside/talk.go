package aside

import (
	"slices"

	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// What colleagues say to one another around a drink: whom they speak to, of whom they speak,
// and what they think. No list of pours and no card holds such words; common practice.
var (
	// greetings begin or end what is said to somebody, as hails do.
	greetings = vocabulary.Words(`afternoon ty ta pls plz please nope yes yep yeah no ok okay right listen guys all team folks
		everyone everybody chef boss mate quick ps fyi btw update heads reminder note bye later laters xx xo`)
	// speakers are who speaks, is spoken to or is spoken of, and what they do. Whose something is,
	// and words such as "too", may stand beside a pour: "my shrub too".
	speakers = vocabulary.Words(`i i'm im i'll ill i've we we're we'll we've you you're u they they're he she i'd who who's everyone everybody someone somebody nobody anybody anyone
		guy guys girl lad lads team folks boss manager owner guest guests customer customers staff bartender regulars
		is isn't isnt was wasn't wasnt were weren't are aren't arent been being has hasn't have had does doesn't doesnt did didn't didnt don't dont can't cant could won't wont would should shouldn't must might gonna wanna let's lets
		keep keeps keeping forget forgets forgot ask asks asked asking tell tells told know knows knew remember remembers think thinks thought reckon guess wants wanted likes liked loves loved hates hope hopes says said
		gets got getting goes went gone changed wrong correct never yesterday today tonight tomorrow tmrw tmr asap
		lol haha hah lmao omg tbh imo fyi btw obvs obviously because cos cuz ditch spec specs recipe recipes version menu`)
	// leadIns end what leads up to the first pour.
	leadIns = vocabulary.Words(`is it's its that's thats this that are gets get got goes go do does doing take takes taking make makes making pour pours use using with have has want wants need needs like spec specs recipe at as now be to it is: so ok okay of the a an my our your one
		serve serving try says said sell run running making mixing mix put me us them you called`)
	// forbids begin what is not to be done, and lapses what is all the same not to be left out.
	forbids = vocabulary.Words(`nobody don't dont never no not stop without`)
	lapses  = vocabulary.Words(`forget skip miss omit leave lose forgets forgetting skipping`)
)

// hails are greetings behind which somebody's name stands: the one list of them.
var hails = vocabulary.Words(`hey hi hiya hello heya yo oi morning evening thanks thx cheers dear sorry ciao hola`)

// Hail reports whether a word is a greeting behind which somebody's name stands.
func Hail(w string) bool { return hails.Has(w) }

// Hails reports whether words are a greeting and whom it is for.
func Hails(toks []token.Token) bool {
	return len(toks) > 0 && len(toks) <= 2 && hails.Has(toks[0].Text)
}

// messages are words for what is written to somebody, one of which a kitchen uses for a salt.
var messages = vocabulary.Words(`msg msgs txt dm`)

// WithoutMessages returns tokens without those that speak of the message itself.
func WithoutMessages(toks []token.Token) []token.Token {
	return slices.DeleteFunc(slices.Clone(toks), func(t token.Token) bool { return messages.Has(t.Text) })
}

// Greets reports whether words are a greeting, or begin with one and say no more than to whom.
func Greets(toks []token.Token) bool {
	return len(toks) > 0 && len(toks) <= mostGreeting && (greetings.Has(toks[0].Text) || hails.Has(toks[0].Text))
}

// mostGreeting is the most words of a greeting.
const mostGreeting = 4

// Talks reports whether a stretch holds a word that only who speaks of people or of what
// happened uses, among others.
func Talks(toks []token.Token) bool {
	words, said := 0, false
	for i := range toks {
		if toks[i].Kind == token.Word {
			words++
			said = said || speakers.Has(toks[i].Text)
			if changes.Has(toks[i].Text) || toks[i].Text == "in" && i > 0 && goes.Has(toks[i-1].Text) { // "umeboshi goes in last"
				return false
			}
		}
	}
	return said && words >= leastTalked
}

// changes are words that say of a pour that there is to be another amount of it.
var changes = vocabulary.Words(`less fewer easy heavy heavier lighter`)

// goes stand before "in" of what is poured.
var goes = vocabulary.Words(`go goes going went`)

// leastTalked is the fewest words that say something of somebody.
const leastTalked = 2

// LeadsIn reports whether what stands before the first pour leads up to it, as a sentence does:
// "marta its", "tonight we do".
func LeadsIn(toks []token.Token) bool {
	last := &toks[len(toks)-1]
	return leadIns.Has(last.Text) && (Talks(toks) || len(toks) == 1) || Greets(toks) && len(toks) == 1
}

// Forbids reports whether a stretch says what is not to be done, so that what it names is not
// poured; "don't forget the egg white" does the contrary.
func Forbids(toks []token.Token) bool {
	worded := !slices.ContainsFunc(toks, func(t token.Token) bool { return t.Kind != token.Word && t.Kind != token.Mark })
	return len(toks) > 1 && worded && forbids.Has(toks[0].Text) && !lapses.Has(toks[1].Text)
}

// Reminds reports whether words say not to leave something out: "don't forget the egg white".
func Reminds(toks []token.Token) bool {
	for i := 0; i+1 < len(toks); i++ {
		if forbids.Has(toks[i].Text) && lapses.Has(toks[i+1].Text) {
			return true
		}
	}
	return false
}
