package phrasing

import (
	"strings"

	"counterpour/flavor/measure/draft/words/speech"
	"counterpour/flavor/measure/pattern"
)

// turn is a turn of phrase and the plain words for it, $1 standing for what its first group matches.
type turn struct {
	of   *pattern.Pattern
	by   string
	told bool // what it drops, beside what its groups keep, tells more than the plain words do
}

// clauseEnds is what may end a clause.
const clauseEnds = `[ \t]*(?:[,;/|)\n]|\.(?:[ \t\n]|$)|$)`

// lengthens are what fills a drink up.
const lengthens = `soda(?:[ \t]water)?|sparkling[ \t]water|seltzer|tonic(?:[ \t]water)?|cola|ginger[ \t](?:beer|ale)|lemonade|prosecco|cava|champagne|crémant|sparkling[ \t]wine`

// turns are in the order in which they are written out. Common practice, no source.
var turns = []turn{
	{of: pattern.Of(`(?m)^[ \t]*(?:[-*•][ \t]*)?\[[ xX✓✗]?\][ \t]*`)}, // a box that is ticked off
	{of: pattern.Of(`(?i),?[ \t]*\b(?:heated|warmed|warm|hot)(?:[ \t]+up)?[ \t]+to[ \t]+\d{2,3}[ \t]*(?:°[ \t]?)?(?:c|f|degrees|celsius)\b`), by: " heated"},
	{of: pattern.Of(`(?i)\b151(?:[ -]?proof)?[ \t]+rum\b`), by: "overproof demerara rum"},
	{of: pattern.Of(`\b(\d+)[ \t]*(?:SL|SLC|SLCS|slc|slcs)\b`), by: "$1 slices"},
	{of: pattern.Of(`(?i)\b(?:a[ \t]+)?(?:big[ \t]+|large[ \t]+|small[ \t]+|good[ \t]+)?bunch(?:[ \t]+of)?[ \t]+(?:fresh[ \t]+)?(basil|mint|coriander|cilantro|sage|dill|tarragon|shiso)\b`), by: "handful of $1"},
	{of: pattern.Of(`(?i)\b(?:an?|one)[ \t]+(?:thin[ \t]+)?(?:strip|slip|bit|curl)[ \t]+of[ \t]+(lemon|orange|lime|grapefruit)[ \t]+(?:rind|peel)\b`), by: "$1 peel"},
	{of: pattern.Of(`(?i)\b(lemon|orange|lime|grapefruit)[ \t]+rinds?\b`), by: "$1 peel"},
	{of: pattern.Of(`(?i)\btop(?:ped)?[ \t]+(?:each|every)(?:[ \t]+(?:glass|one|drink|serve|cup))?(?:[ \t]+(?:up|off))?[ \t]+(?:w/?|with)[ \t]+`), by: "top with "},
	{of: pattern.Of(`(?i)(^|[,;./+\n])[ \t]*(` + lengthens + `)[ \t]+(?:at[ \t]+(?:the[ \t]+)?table|at[ \t]+(?:the[ \t]+)?pass|at[ \t]+service|to[ \t]+(?:lengthen|crown|lift)|lift|crown|finish)(` + clauseEnds + `)`), by: "$1 top with $2$3"},
	{of: pattern.Of(`(?i)\b(top(?:ped)?|fill(?:ed)?)(?:[ \t]+up)?[ \t]+(?:slowly|gently|carefully|gradually|generously)[ \t]+(with\b)`), by: "$1 $2"},
	{of: pattern.Of(`(?i)[ \t]+(?:slowly|gently|carefully|gradually|softly)([ \t]+(?:on|to|at|over)[ \t]+(?:the[ \t]+)?top\b)`), by: "$1"},
	{of: pattern.Of(`(?i)(\d[\d./]*[ \t]?(?:oz|ml|cl)?)[ \t]*(?:/|per)[ \t]*(?:pour|serve|srv|drink|glass|cocktail|portion|head|pax)\b(?:[ \t]*\([ \t]*[\d.,]+[ \t]*(?:oz|ml|cl|l|g)?[ \t]*\))?`), by: "$1"},
	{of: pattern.Of(`(?i)\.[ \t]+(no[ \t]+garnish)\b`), by: "\n$1"},
	{of: pattern.Of(`(?i)(` + speech.Amount + `)[ \t]+(?:apiece|a[ \t]piece|per[ \t]piece)\b`), by: "$1 each"},
	{of: pattern.Of(`(?i)(?:\beq(?:ual)?\.?|(?:^|[ \t])=)[ \t]+(?:pts?|parts)\b\.?(?:[ \t]+of)?`), by: " equal parts"},
	{of: pattern.Of(`(?i)\bequal[ \t]+(?:quantities|measures|amounts|portions|proportions)(?:[ \t]+of)?[ \t]+`), by: "equal parts "},
	{of: pattern.Of(`(?i)([.;\n][ \t]*)in[ \t]+another(?:[ \t]+glass)?,?[ \t]+(dissolve|muddle|put|mix|stir)\b`), by: "$1$2"},
	{of: pattern.Of(`(?i)\ban[ \t]+ounce[ \t]+(?:apiece|each)[ \t]+(?:of[ \t]+)?`), by: "1 oz each "},
	{of: pattern.Of(`(?i)(\d[ \t]?(?:ml|oz|cl))[ \t]*\([^()\n]*?\d{2,3}[ \t]*(?:°[ \t]?)?[cf][ \t]*\)`), by: "$1", told: true}, // how hot it is
	{of: pattern.Of(`(?i)\b(over|onto|on|into|with|w/)[ \t]+(?:1|one)[ \t]+((?:\pL+[ \t]+){0,2}?(?:rock|cube|block|sphere)\b)`), by: "$1 a $2"},
	{of: pattern.Of(`(?i)(^|[,;:.+&/\n])[ \t]*double[ \t]+(espresso|ristretto)\b`), by: "$1 2 shots $2"},
	{of: pattern.Of(`(?i)\b(?:an?[ \t]+)?(?:(?:little|wee|tiny)[ \t]+)?bit[ \t]+of[ \t]+(salt|pepper|nutmeg|cinnamon|cayenne)\b`), by: "pinch of $1"},
	{of: pattern.Of(`(?i)\begg[ \t]+(?:wh|wht|wte)\b\.?`), by: "egg white"},
	{of: pattern.Of(`(?i)\bswizzle[ \t]+up\b`), by: "swizzle"},
	{of: pattern.Of(`(?i)(^|[,;/|\n])[ \t]*(?:half|1/2|½)[ \t]+(salt|sugar)(?:ed)?(` + clauseEnds + `)`), by: "$1 $2 rim$3"},
	{of: pattern.Of(`(?i)(\brim(?:med)?[ \t]*:?[ \t]*\pL+(?:[ \t]+\pL+)?),?[ \t]+(?:half|1/2|½)(` + clauseEnds + `)`), by: "$1$2", told: true},
	{of: pattern.Of(`(?i)(\b(?:espresso|ristretto|coffee)\b[^\n,;()]*\d[^\n,;()]*?)[ \t]*\([ \t]*(?:\d|an?|one|two|single|double)[ \t]*shots?[ \t]*\)`), by: "$1", told: true},
	{of: pattern.Of(`(?i)(` + speech.Amount + `)[ \t]+(?:fat|scant|heavy|generous|short)(` + clauseEnds + `)`), by: "$1$2", told: true},
	{of: pattern.Of(`(?i)(\bcubes?)[ \t]*,[ \t]*((?:soaked|doused|drenched)[ \t]+(?:in|with)\b)`), by: "$1 $2"},
	{of: pattern.Of(`(?i)\b(\pL+(?:[ \t]\pL+)?)-(?:soaked|doused|drenched)[ \t]+((?:\pL+[ \t]+){0,2}cube)\b`), by: "$2 soaked in $1"},
	{of: pattern.Of(`(?i)\b(glass|coupe|flute|tumbler|goblet)[ \t]+(?:washed|coated|swirled|seasoned|slicked)[ \t]+(?:with|in|w/)[ \t]*(\pL)`), by: "$1 rinsed with $2"},
	{of: pattern.Of(`(?i)(` + speech.Amount + `)[ \t]+(?:pour|slug|glug)([ \t]+of[ \t]+\pL)`), by: "$1$2"},
	{of: pattern.Of(`(?i)\b(?:a|the)[ \t]+short[ \t]+(\d[\d./]*[ \t]?(?:oz|ml|cl)\b)`), by: "a scant $1"},
	{of: pattern.Of(`(?i)\b(\d[\d./]*)[ \t]?-?ish[ \t]+((?:oz|ml|cl|dash|dashes)\b)`), by: "about $1 $2"},
	{of: pattern.Of(`(?i)\b(?:just|slightly|barely|a[ \t]+(?:bit|little|touch|hair|tad))[ \t]+(?:shy[ \t]+of|short[ \t]+of|under|over|below|above|more[ \t]+than|less[ \t]+than)[ \t]+((?:half[ \t]+)?an[ \t]+(?:ounce|oz)\b)`), by: "about $1"},
	{of: pattern.Of(`(?im)^([^\n]*\d[^\n:]*[\pL)])[ \t]+((?:method|garnish|directions|instructions|preparation)[ \t]*:[ \t]*\pL)`), by: "$1\n$2"},
	{of: pattern.Of(`(?m)^([^\n]*\d[^\n:]*[\pL)])[ \t]+((?:Glass|GLASS|Glassware|GLASSWARE)[ \t]*:[ \t]*\pL)`), by: "$1\n$2"},
	{of: pattern.Of(`(?i)(` + speech.Amount + `)[ \t]+(?:scant|generous|hefty|healthy)([ \t]+(?:of[ \t]+)?\pL)`), by: "$1$2", told: true},
	{of: pattern.Of(`(?i)(` + speech.Amount + `[ \t]+[^\n,;()\d]+),[ \t]*(?:scant|generous|hefty|healthy|heavy[ -]handed)(` + clauseEnds + `)`), by: "$1$2", told: true},
	{of: pattern.Of(`(?i)([\pL)])[ \t]*,?[ \t]*(?:(?:and|then)[ \t]+){0,2}(?:throw|toss|chuck)(?:n|ed)?[ \t]+(?:it|that|the[ \t]+(?:peel|twist|zest))[ \t]+(?:away|out)(` + clauseEnds + `)`), by: "$1$2", told: true},
	{of: pattern.Of(`(?i)([\pL)])[ \t]*,[ \t]*(?:with[ \t]+)?its[ \t]+oils?[ \t]+(?:expressed|squeezed|sprayed|spritzed|misted)(?:[ \t]+(?:over|on|onto|across)[ \t]+(?:it|the[ \t]+\pL+))?(` + clauseEnds + `)`), by: "$1$2", told: true},
	{of: pattern.Of(`(?i)([,;.\n])[ \t]*(?:(?:and|then)[ \t]+)?(?:drop|pop|toss|tuck|rest|lay|place|perch)(?:ped|p?ed)?[ \t]+(?:it|the[ \t]+(?:peel|twist|zest|shell|husk))[ \t]+(?:in|on[ \t]+top|on|over)(` + clauseEnds + `)`), by: "$2", told: true},
}

// turned writes the turns of a text in plain words.
func (p *Plain) turned() {
	for i := range turns {
		t := &turns[i]
		if !t.told {
			p.Text = t.of.ReplaceAllString(p.Text, t.by)
			continue
		}
		p.backward(t.of, func(at []int) {
			from, to := at[0], at[1]
			if strings.HasPrefix(t.by, "$1") {
				from = at[3]
			}
			if strings.HasSuffix(t.by, "$2") {
				to = at[4]
			}
			p.aside(from, to)
		})
	}
}

var (
	// inTin is the ice that a drink is shaken on, where it is strained off.
	inTin = pattern.Of(`(?i)\b(?:shak\pL+|stir\pL*|whip\pL*)([ \t]+(?:hard[ \t]+)?(?:with|w/|w|over|on)[ \t]*(?:crushed|cracked|pebbled?)(?:[ \t]+ice)?)\b[^\n]*\b(?:strain\pL*|up|coupe\pL*)\b`)
	// keptIn are words by which that ice goes into the glass.
	keptIn = pattern.Of(`(?i)\b(?:dump|dirty|open|all[ \t]+in|unstrained)`)
)

// strainedOff sets such ice aside.
func (p *Plain) strainedOff() {
	if !keptIn.MatchString(p.Text) {
		p.backward(inTin, func(at []int) { p.aside(at[2], at[3]) })
	}
}
