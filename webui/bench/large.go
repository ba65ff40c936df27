package bench

import (
	"counterpour/api/service/kitchen"
	"counterpour/flavor"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// largeView is the question about a draft that no glass holds: a batch.
type largeView struct {
	Said string
	Ways []sizeView // the drafts that may have been meant, the likeliest first
}

// largeOf asks about a draft that no glass holds; nil if it may be one drink.
func largeOf(text string, s *flavor.Spec) *largeView {
	one, all, batch := kitchen.OneOfBatch(s)
	if !batch {
		return nil
	}
	v := &largeView{Said: say.It("bench.no-glass-holds", "Volume", words.Millilitres(all))}
	v.Ways = append(v.Ways, sizeView{say.It("bench.one-drink-of-it"), rewrite(text, s, &one)})
	return v
}
