package likeliest

import (
	"strings"

	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// Plain words are those of everyday speech that name nothing to pour and change nothing about
// what is poured: no measure, no colour, no food, no more or less, no choice, no denial. What
// consists of them alone can be passed over, whatever it says.

// plainWords are plain words that may stand anywhere in what is said; common practice.
var plainWords = vocabulary.Words(`a an the this that these those here there it its it's itself i i'm im i'd i'll i've me my mine myself you you'd you'll you're you've your yours yourself
he he's she she's him his her hers we we'd we'll we're we've us our ours they they'd they'll they're they've them their theirs who who's whose whoever what what's whatever which whichever when whenever where wherever why how
is are am be been being has have having had do does did doing done can could will would shall should may might must let lets let's gonna wanna gotta going go goes went gone
and but so because cos cuz since while until till as than then thus though although yet still just even ever always usually often sometimes now soon later early late already right away
in on at to for from by with of off over under into onto through across around about before after against during within upon up down out toward towards via near
get gets got getting give gives gave given giving come comes came coming say says said saying tell tells told telling ask asks asked asking know knows knew known think thinks thought thinking reckon guess suppose believe feel feels felt
see sees saw seen look looks looked looking watch hear hears heard find finds found want wants wanted like likes liked love loves loved need needs needed hope hopes wish try tries tried trying
work works worked working help helps helped start starts started begin begins began finish finishes finished end ends call calls called named bring brings brought show shows showed learn learns learned teach teaches taught
write writes wrote written read reads send sends sent buy buys bought sell sells sold order orders ordered drink drinks drank drunk drinking sip sips sipping taste tastes tasted tasting smell smells eat eats
remember remembers promise swear trust mind care cares matter matters happen happens happened turn turns turned become becomes became seem seems seemed
stand stands stood sit sits sat sitting lie lies laid fall falls fell run runs ran walk walks complain complains scream screams ache aches hurt hurts numb freeze freezes frosty frosted
use uses used using make makes made making serve serves served serving enjoy enjoys enjoyed share shares thank thanks cheers welcome please pls plz
hey hi hiya hello yo oi bye ok okay okey yes yeah yep yup ye yea aye sure well oh ah aha hm hmm hmmm um umm uh uhm er erm ermm err lol haha hah lmao omg tbh imo imho fyi btw ps asap xx xo wow whoa yay ugh meh boo phew
honestly frankly basically literally really truly quite very pretty rather too also perhaps probably definitely certainly surely obviously clearly simply exactly roughly nearly almost quickly slowly gently gentle properly carefully firmly briskly hard softly thoroughly vigorously once first third last finally
good great nice fine lovely perfect beautiful gorgeous delicious tasty yummy brilliant excellent amazing awesome best better worse bad awful terrible horrible ugly quick classic favourite favorite famous popular usual normal regular ordinary typical proper real true fake new old young modern fancy posh cheap expensive busy quiet loud slow fast early
happy sad glad proud tired hungry thirsty drunk sober crazy mad silly stupid clever smart wild weird strange odd funny serious sexy
today tonight tomorrow yesterday morning afternoon evening night nights day days week weeks weekend month months year years time times hour hours minute minutes seconds moment while monday tuesday wednesday thursday friday saturday sunday mon tue tues wed thu thur thurs fri sat sun spring winter autumn january february march april june july august september october november december xmas christmas easter holiday holidays season seasonal
people person folk folks guy guys girl girls lad lads man men woman women lady ladies friend friends family mum mom dad nan nana gran grandma grandpa aunt auntie uncle brother sister kid kids boy boys mate mates pal dude bro boss chef manager owner barman barmaid bartender bartenders barback barbacks staff team crew shift shifts guest guests customer customers regular regulars punter punters table tables seat seats party parties wedding birthday anniversary
bar bars pub club lounge terrace patio veranda pool beach garden kitchen house home hotel cellar door room window street town city country world place counter shelf fridge freezer rail station till book card cards page note notes list menu menus spec specs recipe recipes name names label labels photo picture video voice message transcript memo sheet column columns
thing things stuff way ways kind kinds sort sorts type idea question answer story reason problem secret rule rules tip tips word words job fun luck joke deal favour favor surprise
hand hands arm arms shoulder finger fingers tongue lips mouth nose eye eyes head heart wrist
ready one foam surface bottom middle edge serves serving makes one's someone somebody everyone everybody anyone anybody something anything everything`)

// turns are plain words that lead on behind a pour on the same line: what follows them is no part
// of its name, "cherry liqueur which guests love".
var turns = vocabulary.Words(`and so but then which that who because cos cuz since while until till when where it it's its i i'm we we'll you you'll they he she this is are was please pls thanks cheers lol haha for on as right yes yeah ok okay just`)

// leads are verbs of making that lead up to an amount: "pour in 60 ml gin", "followed by 20 ml".
var leads = vocabulary.Words(`pour pours poured add adds added adding put measure measured combine combined place tip throw toss mix mixed mixing take followed follow goes go bring using start including contains holds`)

// leadsWith may stand behind them.
var leadsWith = vocabulary.Words(`in into to with the a your it shaker tin tins glass mixing boston jug together all of up by on top same and then together ingredients following vessel large small`)

// bounded reports whether a line begins at i, or a sign stands before it.
func (s *script) bounded(i int) bool { return s.starts(i) || s.sign(i-1, partingSigns) }

// plainly reports whether a token is a plain word.
func (s *script) plainly(i int) bool {
	return s.word(i) && plainWords.Has(strings.ReplaceAll(s.toks[i].Text, "’", "'")) && !s.halfOfName(i)
}

// halfOfName reports whether a plain word and the next are a name: "old tom", "green tea".
func (s *script) halfOfName(i int) bool {
	return s.word(i+1) && !s.toks[i+1].Glued && !plainWords.Has(s.toks[i+1].Text) && s.resolver.Has(s.written(i, i+2))
}

// mostPlain is the most words of one plain remark.
const mostPlain = 30

// plainRemarks are stretches of plain words, and of names that are poured elsewhere among at
// least as many plain words between two signs.
func (s *script) plainRemarks(i int) []stretch {
	bounded := s.bounded(i)
	if !s.word(i) || !bounded && !turns.Has(s.toks[i].Text) {
		return nil
	}
	var out []stretch
	plain, other := 0, 0
	for k := i; k < len(s.toks) && k-i < mostPlain; k++ {
		switch {
		case s.sign(k, "'’\"“”!?") && k > i:
			continue
		case s.toks[k].Kind == token.Numeral && s.explained(k):
			plain++
		case s.plainly(k), s.word(k) && leads.Has(s.toks[k].Text) && s.word(k+1) && leadsWith.Has(s.toks[k+1].Text):
			plain++
		case s.word(k) && bounded && s.remarkable(k):
			other++
		default:
			return out
		}
		closed := s.ends(k+1) || s.sign(k+1, partingSigns+"?")
		if other > 0 && (!closed || plain < 2*other) {
			continue
		}
		out = append(out, stretch{kind: aRemark, from: i, to: k + 1, cost: costTalk + costTalkWord*float64(k-i) + costName*float64(other), open: !closed})
	}
	return out
}

// costName is what a name costs in what is said: it has to be poured, too.
const costName = 1.0

// generic are words for what was poured, by its kind.
var generic = vocabulary.Words(`juice juices cordial syrup syrups spirit spirits liqueur liqueurs bitters ingredients wine beer fizz booze liquor liquid`)

// remarkable reports whether a word may stand among plain words: it names something, which
// is looked for among the pours, and tells neither how to make a drink nor to change it.
func (s *script) remarkable(k int) bool {
	w := s.toks[k].Text
	if generic.Has(w) {
		return true
	}
	return !thoughts.Has(w) && !serving.Known(w) && !entry.TellsToPour(s.toks[k:k+1]) && s.resolver.Mentions(w)
}

// ledIn are words of making that lead up to an amount: "pour in", "add to a shaker".
func (s *script) ledIn(i int) []stretch {
	if !s.word(i) || !leads.Has(s.toks[i].Text) || !s.bounded(i) && !s.word(i-1, "and", "then") {
		return nil
	}
	k := i + 1
	for s.word(k) && (leadsWith.Has(s.toks[k].Text) || plainWords.Has(s.toks[k].Text)) && k-i < mostMaking {
		k++
	}
	if s.sign(k, ":") {
		k++
	}
	if a, ok := s.amountAt(min(k, len(s.toks)-1)); k >= len(s.toks) || !ok || a.article {
		return nil
	}
	return []stretch{{kind: aRemark, from: i, to: k, cost: costLabel}}
}

// numbered is the number of a step at i, "3.", where those before it are numbered too.
func (s *script) numbered(i int) []stretch {
	if !s.step(i, 0) {
		return nil
	}
	n := s.toks[i].Value
	for k := i - 1; k >= 0 && n > 1; k-- {
		if s.step(k, n-1) {
			n--
		}
	}
	if n > 1 {
		return nil
	}
	return []stretch{{kind: aSign, from: i, to: i + 2, cost: costJoin}}
}

// step reports whether a line begins at i with a number as steps have it, with that number if
// one is given.
func (s *script) step(i int, value float64) bool {
	t := &s.toks[i]
	return s.starts(i) && t.Kind == token.Numeral && s.sign(i+1, ".)") && s.toks[i+1].Glued && (value == 0 || t.Value == value)
}
