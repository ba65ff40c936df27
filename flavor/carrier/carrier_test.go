package carrier

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
)

// Each word of the table names allergens of the law and animals of the diets, and stands once.
func TestTableIsSound(t *testing.T) {
	seen := map[string]bool{}
	for line := range strings.Lines(table) {
		line = strings.TrimSpace(line)
		if line == "" {
			continue
		}
		brings, words, ok := strings.Cut(line, ":")
		assert.True(t, ok, line)
		c := bringsOf(brings)
		for _, m := range c.Marks {
			assert.Contains(t, flavor.Allergens(), m.Allergen, line)
		}
		for _, a := range c.Animal {
			assert.Contains(t, flavor.Animals(), a, line)
		}
		for w := range strings.SplitSeq(words, ",") {
			key := strings.Join(Words(w), " ")
			assert.NotEmpty(t, key, line)
			assert.LessOrEqual(t, len(strings.Fields(key)), longest, w)
			assert.False(t, seen[key], "%q stands twice", key)
			seen[key] = true
		}
	}
}

// What bars lay on drinks and put into bottles: common practice, no source.
func TestOf(t *testing.T) {
	for text, want := range map[string]string{
		"toasted hazelnuts": "tree nuts", "crushed almonds": "tree nuts", "salted peanuts": "peanuts", "marzipan": "tree nuts", "chopped walnuts": "tree nuts", "cashews": "tree nuts",
		"grated chocolate with peanuts": "peanuts tree nuts? milk? soybeans?", "whipped cream": "milk", "egg white foam": "eggs", "celery salt": "celery", "blue cheese olive and prosciutto": "milk sulphites? +meat",
		"Almond-washed gin": "tree nuts +alcohol", "milk-washed vodka": "milk +alcohol", "peanut fat washed bourbon": "peanuts +alcohol", "Pistachio vodka": "tree nuts +alcohol", "Haselnusssirup": "tree nuts", "anchovies": "fish", "strawberries": "",
		"grated nutmeg": "", "coconut flakes": "", "oat milk": "gluten", "almond milk": "tree nuts", "peanut butter": "peanuts", "coconut milk": "", "cocoa butter": "", "cream of tartar": "", "rice milk": "",
		"egg nog": "eggs milk", "quail eggs": "eggs", "sesame seeds": "sesame", "bar nuts": "peanuts tree nuts", "nuts": "tree nuts", "wasabi peas": "", "honeycomb": "+honey", "honeydew": "", "brandied cherries": "+alcohol",
		"butterfly pea flower": "", "blood orange wheel": "", "squid ink": "molluscs", "prawn cracker": "gluten crustaceans", "buttered popcorn": "milk?", "wheat vodka": "gluten +alcohol", "noisettes": "tree nuts", "Mandeln": "tree nuts", "noix de coco": "",
		"hasselnötssirap": "tree nuts", "Valnødder": "tree nuts", "hasselnøttlikør": "tree nuts", "jordnötter": "peanuts", "maapähkinä": "peanuts", "hasselpähkinäsiirappi": "tree nuts", "kookospähkinä": "", "muskotnöt": "",
		"hazelnootsiroop": "tree nuts", "amandelsiroop": "tree nuts", "pindakaas": "peanuts", "kokosnoot": "", "mandulaszörp": "tree nuts", "mogyorókrém": "tree nuts", "földimogyoró": "peanuts", "dió": "tree nuts",
		"lískový ořech": "tree nuts", "mandlový sirup": "tree nuts", "arašídy": "peanuts", "muškátový ořech": "", "syrop migdałowy": "tree nuts", "orzech laskowy": "peanuts tree nuts", "syrop orzechowy": "peanuts tree nuts",
		"badem şurubu": "tree nuts", "FINDIK": "tree nuts", "Antep fıstığı": "peanuts tree nuts", "ceviz": "tree nuts", "hindistan cevizi": "",
	} {
		c := Of(text)
		var got []string
		for _, m := range c.Marks {
			mark := string(m.Allergen)
			if m.Certainty != flavor.Contains {
				mark += "?"
			}
			got = append(got, mark)
		}
		for _, a := range c.Animal {
			if !slices.Contains([]string{"milk", "egg", "fish"}, a) {
				got = append(got, "+"+a)
			}
		}
		if c.Alcohol {
			got = append(got, "+alcohol")
		}
		slices.Sort(got)
		var wanted []string
		for _, w := range strings.Split(strings.ReplaceAll(want, "tree nuts", "tree_nuts"), " ") {
			if w != "" {
				wanted = append(wanted, strings.ReplaceAll(w, "_", " "))
			}
		}
		slices.Sort(wanted)
		assert.Equal(t, wanted, got, text)
	}
}

// A bare cereal is what a spirit was distilled from; whatever else is named goes beyond its record.
func TestBeyond(t *testing.T) {
	vodka := &flavor.Profile{Class: flavor.ClassVodka, AllergensKnown: true}
	orgeat := &flavor.Profile{AllergenMarks: []flavor.AllergenMark{{Allergen: flavor.TreeNuts, Certainty: flavor.Contains}}}
	for _, c := range []struct {
		text string
		of   *flavor.Profile
		want string
	}{
		{"wheat vodka", vodka, ""}, {"brioche vodka", vodka, "gluten"}, {"almond-washed vodka", vodka, "tree nuts"}, {"almond orgeat", orgeat, ""}, {"bacon vodka", vodka, "meat"},
		{"honey vodka", vodka, "honey"}, {"milk vodka", vodka, "milk"}, {"peanut orgeat", orgeat, "peanuts"}, {"wheat and milk vodka", vodka, "gluten or milk"},
	} {
		of := Of(c.text)
		assert.Equal(t, c.want, Brings(of.Beyond(c.of)), c.text)
	}
}
