package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/measure/draft/reading"
)

// What a title, a remark or a step names beside an amount in any tongue, or as a list of bottles, is asked
// for where nothing pours it; so is what is poured under a condition, what is taken back behind its name,
// and what a claim for a guest's diet contradicts. Common practice, no source.
func TestWhatIsLeftOpenIsAsked(t *testing.T) {
	for _, text := range []string{
		"Bon, vodka quarante, le triple sec vingt, jus de citron vingt. Two dashes orange bitters. shake",
		"Allora, rye quaranta e vermouth rosso trenta. 1 dash saline. stir",
		"rum and vermouth and amaro\n2 oz gin\n1 oz lime juice\nshake",
		"45 ml rum\n20 ml lime\n2 dashes absinthe (not any more)\nshake", "45 ml rum, 20 ml lime, 10 ml falernum (dropped), shake",
		"45 ml rum\n20 ml lime\n1 bsp honey syrup (forget it)\nshake",
		"45 ml rum, 20 ml lime, 15 ml honey syrup if they want it sweeter, shake", "45 ml rum\n20 ml lime\n1 egg white only when asked\nshake",
		"45 rum, 20 lime, 15 simple. 30 soda for the weak ones. shake",
		"Vegan fizz\n2 oz rum\n1 oz lemon\n1 oz honey syrup\nshake", "lactose free grasshopper\n30 ml green creme de menthe\n30 ml white creme de cacao\n30 ml cream\nshake",
		"nut-free japanese\n2 oz cognac\n.5 oz orgeat\n1 oz lemon\nshake", "virgin daiquiri\n2 oz rum\n1 oz lime\n1 oz simple\nshake", "0% buck\n2 oz rum\n1 oz lime\ntop ginger beer",
		"ohne Ei: 5 cl rye, 3 cl zitrone, 2 cl zucker, 1 eiweiß", "2 oz rum\n1 oz lime\n1 egg white\n1 oz simple\nshake, egg free",
	} {
		s, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, "%q is read as %v", text, s.Pours)
	}
	for text, want := range map[string]string{
		"Virgin islands punch\n2 oz rum\n1 oz lime\n1 oz simple\nshake":                   "rum 59.15 + lime 29.57 + simple 29.57",
		"egg free: use aquafaba\n2 oz rum\n1 oz lemon\n1 oz simple\n1 oz aquafaba\nshake": "rum 59.15 + lemon 29.57 + simple 29.57 + aquafaba 29.57",
		"vegan\n2 oz rum\n1 oz lemon\n1 oz simple\n1 oz aquafaba\nshake":                  "rum 59.15 + lemon 29.57 + simple 29.57 + aquafaba 29.57",
		"name: gin 40 and rye 20\n45 ml rum\n20 ml lime\n15 ml simple\nshake":             "rum 45 + lime 20 + simple 15",
		"the bitter one. 45 ml rum, 20 ml lime, 15 ml simple. shake":                      "rum 45 + lime 20 + simple 15",
		"45 ml rum, 20 ml lime, 15 ml simple. shake. a shot of prosecco on the side":      "rum 45 + lime 20 + simple 15",
		"45 ml rum, 20 ml lime, 15 ml honey syrup, 20 ml aquafaba (vegan). shake":         "rum 45 + lime 20 + honey syrup 15 + aquafaba (vegan) 20",
		"2 oz tequila\n1 oz lime\n1 oz triple sec\nshake, half salt rim":                  "tequila 59.15 + lime 29.57 + triple sec 29.57",
		"forty rum no make it forty gin twenty lime fifteen simple shake":                 "gin 40 + lime 20 + simple 15",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
}
