package weigh_test

import (
	"testing"

	"counterpour/flavor/weigh"
)

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

// BenchmarkReaches asks amounts that spoil a drink whether they balance it: most of what a
// search for fixes asks, and to be told no takes less than a score.
func BenchmarkReaches(b *testing.B) {
	k := newKitchen(b)
	build := k.build(b, k.read(b, benchSour))
	ml := build.Amounts()
	ml[3] *= 4
	b.ReportAllocs()
	for b.Loop() {
		if _, ok := build.Reaches(ml, weigh.BalancedFrom); ok {
			b.Fatal("four times the syrup is balanced")
		}
	}
}

// BenchmarkPreparedScore is the first score of a draft, which is held against all proven
// drinks, and BenchmarkScore every other with other amounts.
func BenchmarkPreparedScore(b *testing.B) {
	k := newKitchen(b)
	s := k.read(b, benchSour)
	b.ReportAllocs()
	for b.Loop() {
		build := k.build(b, s)
		build.Score(build.Amounts())
		build.Done()
	}
}

// BenchmarkCompanions asks what proven drinks pour beside all that a draft has.
func BenchmarkCompanions(b *testing.B) {
	k := newKitchen(b)
	build := k.build(b, k.read(b, benchSour))
	b.ReportAllocs()
	for b.Loop() {
		build.Forgotten().Companions(6)
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
