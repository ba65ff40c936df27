package riff

import (
	"context"
	"testing"

	"counterpour/data/bartest"
)

func BenchmarkRiff(bm *testing.B) {
	b := bartest.New(bm)
	stock := b.Usual
	for _, c := range []struct {
		name, text string
		whole      bool // everything in the drink is in stock
	}{{"sour", bartest.GinSour, true}, {"five pours", bartest.Tropical, true}, {"bitter third", bartest.BitterThird, true}, {"two bottles out", bartest.Tropical, false}} {
		bm.Run(c.name, func(bm *testing.B) {
			bm.ReportAllocs()
			s := b.Spec(bm, c.text)
			some := stock
			if c.whole {
				some = bartest.With(stock, s)
			}
			for bm.Loop() {
				res, err := Vary(context.Background(), b.Station, Request{Spec: s, Stock: some, Limit: 10})
				if err != nil || len(res.Riffs) != 10 {
					bm.Fatal(err, len(res.Riffs))
				}
			}
		})
	}
}
