package everyday

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// given are common given names, in lower case, of many countries; common practice, no source. What a
// catalogue calls by one of them is looked up first: "Rosemary" may be poured.
var given = vocabulary.Words(`aaron abby abdul adam adele adrian agnes ahmed aidan aisha alan alejandro alessandro alex alexandra alice alicia alison amanda amelia amir amy ana anders andre andrea andrew andy angela anita anna anne
	anthony antonio anya ayo barbara beatriz ben benjamin bernard beth bianca bill billy bob boris brenda brian bridget bruno callum camila carl carla carlos carmen carol caroline catherine cathy cesar charles charlotte chiara chloe chris
	christina christine claire clara claudia colin connor craig dan daniel daniela danny darren dave david dawn debbie deborah denise dennis derek diana diego dmitri dominic donna doris doug duncan ed eddie edward eileen elaine elena
	eli elias elizabeth ella ellen elliot emily emma enrique eric erik erin esther ethan eva evan eve fatima felipe felix fernando finn fiona florian frances francesca francesco frank fred freya gabriel gabriela gareth gary gavin
	gemma george georgia gerald giles gina giorgio giulia giuseppe gordon graham greg greta guillermo gustav hamish hana hannah hans harriet harry hassan heather hector helen helena henrik henry hiro holly hugo ian ibrahim ida igor
	ilse imogen ines ingrid irene iris isaac isabel isabella ismail ivan ivy jake jakob james jamie jan jane janet jason javier jay jean jeff jen jenna jenny jeremy jesse jessica jill jim jo joan joanna joao joe joel john johnny jon
	jonas jonathan jorge jose josef joseph josh joshua joy juan juanita judith judy julia julian julie jun kai karen karim karl kate katherine kathy katie kay keiko keith kelly ken kenji kerry kevin khalid kim kirsten klaus kurt kwame kyle
	lara lars laura lauren lea leah lee leila lena leo leon leonie liam lily linda lisa lou louis louise luca lucas lucia lucy luis luisa luke maddie magda malik manuel marc marco marcus margaret maria marie marina mario marisol marius mark
	marta martha martin mary mateo matt matthew max maya megan mei mel michael michel miguel mike mila milan milo mina miriam mo mohammed moira molly monica morgan nadia naomi natalie natasha nate neil nia nick nicola nicole nigel nils nina
	noah noor nora nuno oliver olivia omar oscar owen pablo paddy pam pat patricia patrick paul paula pedro peter petra phil philip pierre piotr priya rachel rafael rahul raj ralph ramon raul ravi ray rebecca renata ria ricardo richard rick
	rob robert roberta robin rodrigo roger roland ron rory rosa rose ross roy ruby rupert russell ruth ryan sabine sally sam samantha samir samuel sandra sanjay sara sarah scott sean sebastian sergio seth shane sharon sheila simon sofia
	sonia sophie stan stef stefan stella stephanie stephen steve steven stuart sue susan susie suzanne sven tamara tara tariq tess theo theresa thomas tim tina toby todd tom tomas tomek tommy toni tony tracy trevor ursula valerie vanessa
	vera vicky victor victoria viktor vincent vivian walter wanda wendy wes will william wojtek yan yara yasmin yuki yusuf yvonne zach zara zoe`)

// person reports whether a word is somebody's name: it has a capital, and is a given name, or what stands
// beside it is said of people.
func (s *search) person(toks []token.Token, i int) bool {
	first, _ := utf8.DecodeRuneInString(s.text[toks[i].Start:])
	if unicode.IsUpper(first) && given.Has(strings.TrimSuffix(toks[i].Text, "'s")) {
		return true
	}
	if len(toks) == 1 || !s.capital(toks, i) {
		return false
	}
	if i+1 < len(toks) && people.Has(toks[i+1].Text) {
		return true
	}
	before := i - 1
	for before > 0 && toks[before].Kind == token.Mark {
		before--
	}
	if before >= 0 && (credits.Has(toks[before].Text) && toks[before].Text != "with" || // "with Fernandina"
		i > leastTold && (toks[before].Text == "in" || toks[before].Text == "at")) {
		return true
	}
	return i+1 < len(toks) && (minds.Has(toks[i+1].Text) || said.Has(toks[i+1].Text))
}

// capital reports whether a word has a capital, and not all letters of the words are so.
func (s *search) capital(toks []token.Token, i int) bool {
	first, _ := utf8.DecodeRuneInString(s.text[toks[i].Start:])
	at := s.text[toks[i].Start:toks[i].End]
	return unicode.IsUpper(first) && (len(at) == 1 || strings.ToUpper(at) != at)
}

// said are verbs of people.
var said = vocabulary.Words(`called runs ordered booked hosts taught signed approved rated scored prefers complains complained called texted emailed owes asks ask insisted knows knew remembers wrote writes says said asks asked wrote made created invented came found showed taught told thinks reckons loves swears insists`)
