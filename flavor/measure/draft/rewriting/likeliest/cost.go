package likeliest

// What a stretch costs: 1 is a pour as everybody writes it. The sizes are common practice, no
// source; what counts is their order. Whatever bars write every day costs least, a slip of the
// pen more than a word left out, and a stretch that says nothing known more than both.
const (
	costPour    = 1.0
	costImplied = 1.5 // a pour whose amount goes without saying
	costMaking  = 0.5
	costLabel   = 0.5
	costJoin    = 0.3 // "and", "then"
	costLaid    = 1.2
	costUnlaid  = 1.0 // more, before anybody said how the drink is served
	costNone    = 0.8 // "no salt"
	costTurn    = 2.0 // amounts before the names and behind them in one text
	costWithout = 0.4 // a number without a unit, where others have one

	costShort  = 0.2 // a name that is shortened or known by its place
	costParted = 1.0 // a word that is two: "gingerbeer"
	costSlip   = 2.5 // a slip of the pen in a name
	costWorded = 1.5 // a word of making amid a name
	costUnsure = 0.5 // a name that may mean several things, which is asked
	costMended = 0.6 // a word of making that is shortened or has a slip

	costOwnLine    = 2.0 // the name of the drink on a line of its own
	costBeforeSign = 3.0 // before a sign that parts it from the pours
	costLed        = 4.0 // before pours, without a sign
	costTitleWord  = 0.3
	costIngredient = 4.0 // the name is that of an ingredient
	costHeading    = 2.0
	costSpeaker    = 1.0 // "Sam:"
	costTalk       = 1.5
	costTalkWord   = 0.2
	costBack       = 1.5 // words that take a pour back, or replace it
)

// margin is how much more than the cheapest way to part a text the next costs at least that
// pours something else: less than that and the text may mean either.
const margin = 1.0

// most of what is searched.
const (
	mostText   = 1000 // bytes: a longer text is no note of one drink
	mostKept   = 4    // ways to part the text up to a token, in one state
	mostName   = 5    // words of an ingredient
	mostTitle  = 7    // words of the name of a drink
	mostMaking = 9    // tokens of one stretch of making
	mostLaid   = 5    // words of what is laid on a drink
	mostTalk   = 30   // tokens of one remark
	leastPours = 2

	mostLookups = 800 // names that are looked up: of a text of which nothing is known the rest is not
)
