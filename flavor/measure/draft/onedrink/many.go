package onedrink

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
)

// How many drinks a text is for, where it tells so in words that no line of pours has: common practice, no source.

// several is a number of drinks beyond one.
const several = `(?:[2-9]|[1-9]\d|two|three|four|five|six|seven|eight|nine|ten|twelve|a[ \t]+(?:pair|couple|dozen)|both)`

var (
	// drinksSaid tells for how many drinks a text is: "makes two", "for a pair", "split between two coupes", "x2".
	drinksSaid = pattern.Of(`(?i)(?:\b(?:makes?|serves?|servings?|yields?|feeds|enough[ \t]+for)[ \t]*[:=]?[ \t]*(?:about[ \t]+|up[ \t]+to[ \t]+)?` + several + `(?:[ \t]+(?:drinks?|serves?|servings?|portions?|cocktails?|people|guests|pax|glasses))?(?:[ \t]*(?:[.,;:!)\]]|$))` +
		`|(?:^|[.,;:(–-])[ \t]*(?:(?:pitcher|jug|bowl|batch|round|recipe|quantit\pL+|amounts|sharer|punch|drinks)[ \t]+)?for[ \t]+` + several + `(?:[ \t]+(?:drinks|serves|servings|portions|cocktails|people|persons|ppl|guests|pax|covers)\b|[ \t]*(?:[.:!)\]]|$))` +
		`|\b(?:into|between|among|across|over)[ \t]+` + several + `[ \t]+(?:\pL+[ \t]+)?(?:coupes|glasses|flutes|mugs|cups|highballs|people|guests)\b` +
		`|^[ \t]*(?:[x×][ \t]?(?:[2-9]|[1-9]\d)|(?:[2-9]|[1-9]\d)[ \t]?[x×])[ \t]*:?[ \t]*$` +
		`|^[ \t]*(?:(?:a|one|1|table|party|half|full|big|large|small|gallon|litre|liter)[ \t-]+){0,3}(?:pitcher|jug|punch[ -]?bowl|carafe|keg|growler)[ \t]*:` +
		`|^[ \t]*(?:half|double|triple|big|small|large|full|single)?[ \t]*batch\b[^,;\pN]*(?:[(\[]?[ \t]*\d[^,;)\]]*[)\]]?)?[ \t]*:?[ \t]*$)`)
)

// Many returns a note for each line of a text that tells that its amounts are those of several drinks, or of a
// batch, where no other note tells of it.
func Many(text string, told []string) (notes []string) {
	all := strings.Join(told, "\n")
	for i, line := range strings.Split(text, "\n") {
		said := drinksSaid.FindString(line)
		if said == "" || strings.HasPrefix(strings.TrimSpace(line), "#") {
			continue
		}
		said = strings.Trim(token.OneLine(strings.TrimSpace(said)), " .,;:!()[]")
		if strings.Contains(all, said+"” is skipped: the amounts are") {
			continue
		}
		notes = append(notes, measure.LineLocation(i+1)+": “"+said+"” tells of more than one drink; the amounts are taken as those of one, write those of one glass if they are not")
	}
	return notes
}

// makings are last words of what a house makes for its drinks, and leastMaking the fewest mL of it that one makes
// at once; common practice, no source.
var makings = token.Words(`syrup cordial oleo shrub tincture grenadine orgeat falernum`)

const leastMaking = 150.0

// Makes returns a note where what was read is what a house makes for its drinks, and no drink: its name says so,
// much of it is made, and no spirit is in it.
func Makes(s *flavor.Spec) []string {
	words, all := strings.Fields(strings.ToLower(strings.Trim(s.Name, " :"))), 0.0
	for i := range s.Pours {
		if s.Pours[i].Profile.Class.Part() == flavor.PartBase {
			return nil
		}
		all += s.Pours[i].ML
	}
	if len(words) == 0 || !makings[words[len(words)-1]] || all < leastMaking {
		return nil
	}
	return []string{"“" + s.Name + "” is what a house makes for its drinks, and no drink; keep it with what the house makes, since a score tells nothing of it"}
}
