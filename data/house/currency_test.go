package house_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/data/house"
)

func TestMixedCurrenciesNameTheBottles(t *testing.T) {
	price := 9.0
	in := func(code string, names ...string) (out []house.Bottle) {
		for _, n := range names {
			out = append(out, house.Bottle{ID: house.Slug(n), Name: n, Price: &price, Currency: code})
		}
		return out
	}
	unpriced := house.Bottle{ID: "x", Name: "Unpriced"}
	for want, bottles := range map[string][]house.Bottle{
		"": append(in("EUR", "Hawse", "Cleat"), unpriced),
		"Cleat is priced in EUR, the other bottles in USD: no drink can be costed until all are in one currency.":                                       append(in("EUR", "Cleat"), in("USD", "Hawse", "Oakum")...),
		"Hawse is priced in USD, the other bottles in EUR: no drink can be costed until all are in one currency.":                                       append(in("USD", "Hawse"), in("EUR", "Cleat")...),
		"Hawse and Oakum are priced in GBP and Pitch is priced in USD, the other bottles in EUR: no drink can be costed until all are in one currency.": append(append(in("GBP", "Hawse", "Oakum"), in("USD", "Pitch")...), in("EUR", "A", "B", "C")...),
		"A, B, C, D, E and 2 more are priced in EUR, the other bottles in USD: no drink can be costed until all are in one currency.":                   append(in("EUR", "A", "B", "C", "D", "E", "F", "G"), in("USD", "1", "2", "3", "4", "5", "6", "7", "8")...),
	} {
		assert.Equal(t, want, house.MixedCurrencies(bottles))
	}
}
