package mix

import (
	"testing"

	"counterpour/flavor"
)

// uncertain gives every figure of a profile a spread, the dearest case for the
// plus-or-minus.
func uncertain(p *flavor.Profile) *flavor.Profile {
	for _, f := range []*flavor.Figure{&p.ABV, &p.Sugar, &p.Acid} {
		f.Spread = 0.05 * f.Value
	}
	return p
}

// fivePours has five profiles, each with strength, sugar and acid, all spread.
func fivePours(tb testing.TB) *flavor.Spec {
	s := specOf(tb, "five pours", flavor.Shake, flavor.Up,
		part{45, 40, 1, 0.2}, part{15, 40, 250, 0.5}, part{22.5, 0, 615, 0}, part{22.5, 0, 20, 50}, part{1.6, 45, 40, 1})
	for i := range s.Pours {
		uncertain(s.Pours[i].Profile)
	}
	return s
}

func BenchmarkMix(b *testing.B) {
	m, s := mixer(b), fivePours(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := m.Mix(s); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkMixWithIce(b *testing.B) {
	m, s := mixer(b), fivePours(b)
	m, err := m.WithIce(Ice{Kind: LargeCube, TemperatureC: -8})
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := m.Mix(s); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkComplete(b *testing.B) {
	p := *made(b, 24, 240, 6)
	b.ReportAllocs()
	for b.Loop() {
		if err := Complete(&p); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkEthanolWaterDensity(b *testing.B) {
	var sum float64
	for b.Loop() {
		sum += ethanolWater(0.33, -5)
	}
	_ = sum
}
