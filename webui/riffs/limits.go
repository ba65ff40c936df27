package riffs

import (
	"context"
	"net/url"
	"strings"

	"counterpour/flavor/guest"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// limits are how strong and how dear a drink may be, as typed.
type limits struct {
	ABV, Cost         string
	ABVSays, CostSays string // what is wrong with them
	Priced            bool   // the house has prices
}

func readLimits(sent url.Values) limits {
	return limits{ABV: strings.TrimSpace(sent.Get("abv")), Cost: strings.TrimSpace(sent.Get("cost"))}
}

// any reports whether one is set.
func (l *limits) any() bool { return l.ABV != "" || l.Cost != "" }

func (l *limits) values(v url.Values) {
	if l.ABV != "" {
		v.Set("abv", l.ABV)
	}
	if l.Cost != "" {
		v.Set("cost", l.Cost)
	}
}

// hold adds the limits and the prices of the house to what a guest is held to; it is
// false if one cannot be read.
func (l *limits) hold(ctx context.Context, p *pages, g *guest.Guest) (*part.Tariff, bool, error) {
	t, err := part.TariffOf(ctx, p.house)
	if err != nil {
		return nil, false, err
	}
	g.Prices, l.Priced = t.PerML, len(t.PerML) > 0
	if l.ABV != "" {
		most, err := form.Quantity(l.ABV, "% vol")
		switch {
		case err != nil:
			l.ABVSays = words.Sentence(err.Error())
		case !(most > 0 && most <= 100):
			l.ABVSays = say.It("riffs.strength-out-of-range")
		}
		if g.MaxABV == 0 || most < g.MaxABV { // what the guest asks for holds as well
			g.MaxABV = most
		}
	}
	if l.Cost != "" {
		if g.MaxCost, err = mostCost(l.Cost, t); err != nil {
			l.CostSays = words.Sentence(err.Error())
		}
	}
	return t, l.ABVSays == "" && l.CostSays == "", nil
}
