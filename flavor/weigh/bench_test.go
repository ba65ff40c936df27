package weigh_test

import "testing"

const benchSour = "1 oz gin\n1 oz red bitter aperitif\n3/4 oz lemon juice\n1/2 oz simple syrup\n2 dashes aromatic bitters\nshake, up"

func BenchmarkPrepare(b *testing.B) {
	k := newKitchen(b)
	s := k.read(b, benchSour)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := k.set.Prepare(s); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkScore(b *testing.B) {
	k := newKitchen(b)
	build := k.build(b, k.read(b, benchSour))
	ml := build.Amounts()
	b.ReportAllocs()
	for b.Loop() {
		build.Score(ml)
	}
}

func BenchmarkCeiling(b *testing.B) {
	k := newKitchen(b)
	build := k.build(b, k.read(b, benchSour))
	ml := build.Amounts()
	b.ReportAllocs()
	for b.Loop() {
		build.Ceiling(ml)
	}
}

func BenchmarkJudge(b *testing.B) {
	k := newKitchen(b)
	build := k.build(b, k.read(b, benchSour))
	ml := build.Amounts()
	for b.Loop() {
		build.Judge(ml)
	}
}
