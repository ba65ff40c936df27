package bench

import (
	"math"

	"counterpour/api/service/kitchen"
	"counterpour/flavor"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// What is asked about instead of being mended, in mL: common practice, no source.
const (
	mostOneDrinkML = 1000.0 // more than any glass holds
	mostOnePourML  = 150.0  // of one thing in one drink
	oneDrinkML     = 100.0  // before ice, of a batch that is brought down to one drink
	slipFactor     = 10.0   // one pour that is so many times all others together is likely a slip
)

// largeView is the question about a draft that no glass holds: a slip in an amount, or a batch.
type largeView struct {
	Said string
	Ways []sizeView // the drafts that may have been meant, the likeliest first
}

// largeOf asks about a draft that no glass holds; nil if it may be one drink.
func largeOf(text string, s *flavor.Spec) *largeView {
	all, largest := 0.0, 0
	for i := range s.Pours {
		all += s.Pours[i].ML
		if s.Pours[i].ML > s.Pours[largest].ML {
			largest = i
		}
	}
	if all <= mostOneDrinkML {
		return nil
	}
	v := &largeView{Said: say.It("bench.no-glass-holds", "Volume", words.Millilitres(all))}
	pour := &s.Pours[largest]
	if pour.ML >= slipFactor*(all-pour.ML) {
		tens := math.Pow(10, math.Ceil(math.Log10(pour.ML/mostOnePourML)))
		meant := s.Clone()
		meant.Pours[largest].Amount, meant.Pours[largest].ML = pour.Amount/tens, pour.ML/tens
		v.Ways = append(v.Ways, sizeView{part.Amount(&meant.Pours[largest]) + " " + pour.Profile.Name, rewrite(text, s, &meant)})
		return v
	}
	one := kitchen.Scaled(s, oneDrinkML/all)
	one, _ = kitchen.InUnit(&one, []flavor.Unit{flavor.Ounce}, flavor.Ounce)
	one, _ = kitchen.InUnit(&one, []flavor.Unit{flavor.Millilitre, flavor.Centilitre}, flavor.Millilitre)
	v.Ways = append(v.Ways, sizeView{say.It("bench.one-drink-of-it"), rewrite(text, s, &one)})
	return v
}
