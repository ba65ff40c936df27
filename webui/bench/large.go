package bench

import (
	"counterpour/api/service/kitchen"
	"counterpour/flavor"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// What is asked about instead of being mended, in mL: common practice, no source.
const (
	mostOneDrinkML = 1000.0 // more than any glass holds
	oneDrinkML     = 100.0  // before ice, of a batch that is brought down to one drink
)

// largeView is the question about a draft that no glass holds: a batch.
type largeView struct {
	Said string
	Ways []sizeView // the drafts that may have been meant, the likeliest first
}

// largeOf asks about a draft that no glass holds; nil if it may be one drink.
func largeOf(text string, s *flavor.Spec) *largeView {
	all := 0.0
	for i := range s.Pours {
		all += s.Pours[i].ML
	}
	if all <= mostOneDrinkML {
		return nil
	}
	v := &largeView{Said: say.It("bench.no-glass-holds", "Volume", words.Millilitres(all))}
	one := kitchen.Scaled(s, oneDrinkML/all)
	one, _ = kitchen.InUnit(&one, []flavor.Unit{flavor.Ounce}, flavor.Ounce)
	one, _ = kitchen.InUnit(&one, []flavor.Unit{flavor.Millilitre, flavor.Centilitre}, flavor.Millilitre)
	v.Ways = append(v.Ways, sizeView{say.It("bench.one-drink-of-it"), rewrite(text, s, &one)})
	return v
}
