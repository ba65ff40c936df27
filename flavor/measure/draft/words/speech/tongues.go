package speech

import (
	"strings"

	"counterpour/flavor/measure/draft/words/token"
)

// Whole numbers in the words of other tongues, as a bartender says them: from thirteen, or from
// where a tongue has a word of its own that English has not, to ninety-nine. Below that they stand
// in [token.NumberWords], as far as they mean nothing else.

// counted is how a tongue builds its numbers.
type counted struct {
	ones  string // from one to nine, as they stand in longer numbers
	small string // words up to nineteen, each "word=value"
	tens  string // each "word=value"
	// join makes the number of a ten and a one: "fünfundvierzig", "cuarenta y cinco".
	join func(ten, one string) []string
}

// tensFirst joins a ten and a one by some words: "cuarenta y cinco".
func tensFirst(by ...string) func(ten, one string) []string {
	return func(ten, one string) []string {
		var out []string
		for _, b := range by {
			out = append(out, ten+b+one)
		}
		return out
	}
}

// onesFirst joins a one and a ten by a word, in one: "fünfundvierzig".
func onesFirst(by string) func(ten, one string) []string {
	return func(ten, one string) []string { return []string{one + by + ten} }
}

// elided drops the last vowel of a ten before a one that begins with one: "quarantuno".
func elided(ten, one string) []string {
	out := []string{ten + one}
	if strings.ContainsAny(one[:1], "ou") {
		out = append(out, ten[:len(ten)-1]+one)
	}
	return out
}

var tongues = []counted{
	{ // German
		ones:  "ein zwei drei vier fünf sechs sieben acht neun",
		small: "sieben=7 acht=8 neun=9 zehn=10 zwölf=12 dreizehn=13 vierzehn=14 fünfzehn=15 sechzehn=16 siebzehn=17 achtzehn=18 neunzehn=19",
		tens:  "zwanzig=20 dreißig=30 dreissig=30 vierzig=40 fünfzig=50 sechzig=60 siebzig=70 achtzig=80 neunzig=90",
		join:  onesFirst("und"),
	},
	{ // Dutch
		ones:  "een twee drie vier vijf zes zeven acht negen",
		small: "zeven=7 negen=9 tien=10 twaalf=12 dertien=13 veertien=14 vijftien=15 zestien=16 zeventien=17 achttien=18 negentien=19",
		tens:  "twintig=20 dertig=30 veertig=40 vijftig=50 zestig=60 zeventig=70 tachtig=80 negentig=90",
		join: func(ten, one string) []string {
			return []string{one + "en" + ten, one + "ën" + ten}
		},
	},
	{ // French, up to sixty-nine; what is built of sixty and eighty stands with the small
		ones: "un deux trois quatre cinq six sept huit neuf",
		small: "sept=7 huit=8 neuf=9 dix=10 onze=11 douze=12 treize=13 quatorze=14 quinze=15 seize=16 dix-sept=17 dix-huit=18 dix-neuf=19 soixante-dix=70 soixante-quinze=75 quatre-vingt=80 quatre-vingts=80 " +
			"quatre-vingt-dix=90 septante=70 nonante=90",
		tens: "vingt=20 trente=30 quarante=40 cinquante=50 soixante=60",
		join: tensFirst("-", " ", " et "),
	},
	{ // Italian
		ones:  "uno due tre quattro cinque sei sette otto nove",
		small: "sette=7 otto=8 nove=9 dieci=10 undici=11 dodici=12 tredici=13 quattordici=14 quindici=15 sedici=16 diciassette=17 diciotto=18 diciannove=19",
		tens:  "venti=20 trenta=30 quaranta=40 cinquanta=50 sessanta=60 settanta=70 ottanta=80 novanta=90",
		join:  elided,
	},
	{ // Spanish
		ones: "uno dos tres cuatro cinco seis siete ocho nueve",
		small: "siete=7 ocho=8 nueve=9 diez=10 doce=12 trece=13 catorce=14 quince=15 dieciséis=16 dieciseis=16 diecisiete=17 dieciocho=18 diecinueve=19 veintiuno=21 veintidós=22 veintidos=22 " +
			"veintitrés=23 veintitres=23 veinticuatro=24 veinticinco=25 veintiséis=26 veintisiete=27 veintiocho=28 veintinueve=29",
		tens: "veinte=20 treinta=30 cuarenta=40 cincuenta=50 sesenta=60 setenta=70 ochenta=80 noventa=90",
		join: tensFirst(" y "),
	},
	{ // Portuguese
		ones:  "um dois três quatro cinco seis sete oito nove",
		small: "sete=7 oito=8 dez=10 doze=12 treze=13 catorze=14 quatorze=14 quinze=15 dezesseis=16 dezasseis=16 dezessete=17 dezassete=17 dezoito=18 dezenove=19 dezanove=19",
		tens:  "vinte=20 trinta=30 quarenta=40 cinquenta=50 sessenta=60 setenta=70 oitenta=80 noventa=90",
		join:  tensFirst(" e "),
	},
	{ // Swedish
		ones:  "ett två tre fyra fem sex sju åtta nio",
		small: "sju=7 åtta=8 nio=9 tio=10 tolv=12 tretton=13 fjorton=14 femton=15 sexton=16 sjutton=17 arton=18 nitton=19",
		tens:  "tjugo=20 trettio=30 fyrtio=40 femtio=50 sextio=60 sjuttio=70 åttio=80 nittio=90",
		join:  tensFirst(""),
	},
	{ // Norwegian
		ones:  "en to tre fire fem seks sju åtte ni",
		small: "fire=4 seks=6 åtte=8 tretten=13 fjorten=14 femten=15 seksten=16 sytten=17 atten=18 nitten=19",
		tens:  "tjue=20 tretti=30 førti=40 femti=50 seksti=60 sytti=70 åtti=80 nitti=90",
		join:  tensFirst(""),
	},
	{ // Danish, the tens by scores
		ones:  "en to tre fire fem seks syv otte ni",
		small: "syv=7 otte=8",
		tens:  "tyve=20 tredive=30 fyrre=40 halvtreds=50 tres=60 halvfjerds=70 firs=80 halvfems=90",
		join:  onesFirst("og"),
	},
	{ // Polish
		ones:  "jeden dwa trzy cztery pięć sześć siedem osiem dziewięć",
		small: "siedem=7 osiem=8 dziewięć=9 dziesięć=10 jedenaście=11 dwanaście=12 trzynaście=13 czternaście=14 piętnaście=15 szesnaście=16 siedemnaście=17 osiemnaście=18 dziewiętnaście=19",
		tens:  "dwadzieścia=20 trzydzieści=30 czterdzieści=40 pięćdziesiąt=50 sześćdziesiąt=60 siedemdziesiąt=70 osiemdziesiąt=80 dziewięćdziesiąt=90",
		join:  tensFirst(" "),
	},
	{ // Hindi in Latin letters
		small: "paanch=5 panch=5 chhe=6 saat=7 aath=8 das=10 pandrah=15 bees=20 pachees=25 pachis=25 tees=30 pachas=50 pachaas=50 chalees=40 paintalis=45 saath=60",
	},
}

// figure is the number that a table has.
func figure(value string) float64 {
	n := 0.0
	for _, c := range value {
		n = 10*n + float64(c-'0')
	}
	return n
}

// otherwise are words of those tables that mean something else in a draft: a number is hardly
// written with them.
var otherwise = token.Words(`tres onze seize neuf elf das`)

// foreignNumbers are the numbers of those tongues by their words, with a space between them.
var foreignNumbers = func() map[string]float64 {
	out := map[string]float64{}
	put := func(words string, v float64) {
		if !otherwise[words] {
			out[words] = v
		}
	}
	for _, t := range tongues {
		for _, table := range []string{t.small, t.tens} {
			for pair := range strings.FieldsSeq(table) {
				word, value, _ := strings.Cut(pair, "=")
				put(word, figure(value))
			}
		}
		if t.join == nil {
			continue
		}
		for pair := range strings.FieldsSeq(t.tens) {
			ten, value, _ := strings.Cut(pair, "=")
			for i, one := range strings.Fields(t.ones) {
				for _, words := range t.join(ten, one) {
					put(words, figure(value)+float64(i+1))
				}
			}
		}
	}
	return out
}()

// unread are numbers in words of tongues that no rule reads, or that mean something else as well.
var unread = token.Words(`ni ti deset patnáct dvacet třicet čtyřicet padesát yirmi otuz kırk elli kymmenen kaksikymmentä δέκα είκοσι τριάντα σαράντα πενήντα десять двадцать тридцать сорок пятьдесят
hundred`)

// NumberWord reports whether a word may be a number, in English from thirteen up: also in a tongue in
// which no rule reads it, and where it may mean something else.
func NumberWord(word string) bool {
	return spokenLarge(word) || foreignNumbers[word] > 0 || otherwise[word] || unread[word]
}

// mostNumberWords is the most words of a number of those: "cuarenta y cinco".
const mostNumberWords = 3

// foreignAt reads a number in the words of another tongue and how many tokens it takes, 0 if none
// stands there.
func foreignAt(toks []token.Token) (value float64, n int) {
	words := ""
	for i := 0; i < min(mostNumberWords, len(toks)) && toks[i].Kind == token.Word; i++ {
		if i > 0 {
			words += " "
		}
		words += toks[i].Text
		if v := foreignNumbers[words]; v > 0 {
			value, n = v, i+1
		}
	}
	return value, n
}

// Foreign reports whether a text holds a number in the words of another tongue.
func Foreign(text string) bool {
	toks := token.Lex(nil, text, 0, len(text))
	for i := range toks {
		if v, _ := foreignAt(toks[i:]); v > 0 {
			return true
		}
	}
	return false
}
