package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/reading"
)

// Cards are read in the tongues of the bars that write them: names as their grammar bends them,
// units, how the drink is made and served. Common practice, no source.
func TestCardsOfOtherTongues(t *testing.T) {
	x := wholeCatalogue(t)
	for _, c := range []struct {
		text    string
		pours   []string
		method  flavor.Method
		service flavor.Service
	}{
		{"40 ml ginu\n20 ml soku z cytryny\n20 ml syropu cukrowego\nwstrząsnąć z lodem, przecedzić do kieliszka koktajlowego", []string{"london-dry-gin", "lemon-juice", "simple-syrup"}, flavor.Shake, flavor.Up},
		{"3 cl bourbonu\n3 cl červeného vermutu\n3 cl červeného bitteru\nzamíchat, podávat na ledu", []string{"bourbon", "sweet-vermouth", "red-bitter-aperitif"}, flavor.Stir, flavor.Rocks},
		{"Виски ржаной 50 мл\n1 ст. л. кленового сиропа\nперемешать, рокс, большой куб льда", []string{"rye-whiskey", "maple-syrup"}, flavor.Stir, flavor.Rocks},
		{"Βότκα 50 ml\nχυμός λάιμ 20 ml\nσιρόπι μελιού 15 ml\nχτυπάμε στο σέικερ με πάγο, ποτήρι κοκτέιλ", []string{"vodka", "lime-juice", "honey-syrup"}, flavor.Shake, flavor.Up},
		{"ハイボール\nジャパニーズウイスキー 30ml\nソーダ 120ml\nビルド、タンブラー、氷たっぷり", []string{"japanese-whisky", "soda-water"}, flavor.Build, flavor.Long},
		{"ウォッカ　４５ｍｌ\nトニックウォーター　適量\nライム　1/6\nビルド", []string{"vodka", "tonic-water", "lime"}, flavor.Build, flavor.Long},
		{"4 cl gin\n2 cl sitronsaft\n2 ss sukkerlake\nristes med is, siles i cocktailglass", []string{"london-dry-gin", "lemon-juice", "simple-syrup"}, flavor.Shake, flavor.Up},
		{"5 cl de rhum blanc, le jus d'un demi citron vert, 2 cuillères à café de sucre, shaker, verre à cocktail", []string{"white-rum", "lime-juice", "white-sugar"}, flavor.Shake, flavor.Up},
	} {
		s, err := reading.Read(c.text, x)
		require.NoError(t, err, c.text)
		var ids []string
		for _, p := range s.Pours {
			ids = append(ids, p.Profile.ID)
		}
		assert.Equal(t, c.pours, ids, c.text)
		assert.Equal(t, c.method, s.Method, c.text)
		assert.Equal(t, c.service, s.Service, c.text)
	}
}

// How a syrup is made and what another version has is not poured, and said to be skipped; a
// drink that is told by another is asked for. Common practice, no source.
func TestMakingIsNotPoured(t *testing.T) {
	x := wholeCatalogue(t)
	for text, skipped := range map[string]string{
		"50 gin\n25 lemon\n20 raspberry syrup\nshake, coupe\n\nFor the raspberry syrup:\n200 g raspberries\n200 g sugar\n200 ml water": "For the raspberry syrup",
		"For the honey syrup:\n100 ml honey\n100 ml water\n\nFor the drink:\n50 ml gin\n25 ml lemon\n20 ml honey syrup\nshake, up":     "For the honey syrup",
		"50 gin\n25 lemon\n15 honey 3:1 (3 honey 1 water)\nshake":                                                                      "3 honey 1 water",
		"45 ml bourbon\n20 ml lemon\n15 ml honey syrup\nshake, rocks\nsame but mezcal":                                                 "same but mezcal",
	} {
		s, err := reading.Read(text, x)
		require.NoError(t, err, text)
		assert.Len(t, s.Pours, 3, text)
		assert.Contains(t, s.Notes[0], skipped, text)
	}
	_, err := reading.Read("same as fri special but w/ the pink stuff 25 instead, lime 20", x)
	assert.ErrorContains(t, err, "goes by another drink")
}
