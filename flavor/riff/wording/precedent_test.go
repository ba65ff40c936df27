package wording

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
)

func TestPrecedents(t *testing.T) {
	assert.Equal(t, "mint is poured in one proven drink, such as Halyard", PouredIn("mint", 1, "Halyard"))
	assert.Equal(t, "mint is poured with rum in 3 proven drinks, such as Halyard", PouredWith("mint", "rum", 3, "Halyard"))
	assert.Equal(t, "no proven drink pours mint with rum; the nearest is Halyard", NeverWith("mint", "rum", "Halyard"))
}

func TestEffect(t *testing.T) {
	for _, c := range []struct {
		name       string
		senses     []string
		more, less []flavor.AromaFamily
		want       string
	}{
		{name: "nothing", want: "much the same on the tongue"},
		{name: "a sense", senses: []string{"sweeter"}, want: "sweeter"},
		{name: "aromas", more: []flavor.AromaFamily{flavor.Tropical}, less: []flavor.AromaFamily{flavor.Nut}, want: "more tropical, less nut"},
		{name: "three each way at most", more: []flavor.AromaFamily{flavor.Tropical, flavor.Nut, flavor.Citrus, flavor.Floral},
			want: "more tropical, nut and citrus"},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, Effect(c.senses, c.more, c.less)) })
	}
}

func TestWhatADraftDoes(t *testing.T) {
	assert.Equal(t, "lighter at 12 % vol, not 20", Strength(-2, 12.3, 19.6))
	assert.Equal(t, "Uses 2 oz gin and 1 oz rye: sour, 22 % vol", Uses([]string{"2 oz gin", "1 oz rye"}, "Sour", 21.6))
}
