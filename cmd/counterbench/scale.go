package main

import (
	"context"
	"fmt"
	"io"
	"math/rand/v2"
	"runtime"
	"slices"
	"strings"
	"time"

	"counterpour/api/service/kitchen"
	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/cover/outs"
	"counterpour/flavor/lookup"
	"counterpour/index"
)

// seed of the generated catalogues and menus.
const seed = 1

// catalogues measures how times grow with the number of ingredients.
func (r *ratios) catalogues(ctx context.Context, out io.Writer) error {
	fmt.Fprintf(out, "\n| ingredients | names | index | find, median, 99 in 100 | completion, median, 99 in 100 | cover of 1, of 2 parts | memory |\n| ---: | ---: | ---: | ---: | ---: | ---: | ---: |\n")
	k, err := newKitchen()
	if err != nil {
		return err
	}
	for _, n := range r.sizes {
		if err := r.catalogue(ctx, k, n, out); err != nil {
			return err
		}
	}
	return nil
}

func newKitchen() (*kitchen.Kitchen, error) {
	c, err := data.Embedded()
	if err != nil {
		return nil, err
	}
	return kitchen.New(c, index.New)
}

// catalogue measures one generated catalogue.
func (r *ratios) catalogue(ctx context.Context, k *kitchen.Kitchen, n int, out io.Writer) error {
	before := heap()
	profiles := generated(k.Catalogue.Profiles(), n)
	var x *index.Index
	named, err := timed(func() (err error) { x, err = index.New(profiles); return err })
	if err != nil {
		return err
	}
	opened, err := timed(func() error { return x.Open(ctx, nil) })
	if err != nil {
		return err
	}
	defer x.Close()
	held := heap() - before
	words := []string{"orange", "dry gin", "bitters", "cinammon syrup", "rum", "pear", "sherry", "lemon", "amaro", "honey"}
	find, err := repeated(100*r.rounds, func(i int) error {
		_, err := x.Search(ctx, lookup.Query{Text: words[i%len(words)]})
		return err
	})
	if err != nil {
		return err
	}
	typed, err := repeated(100*r.rounds, func(i int) error {
		_, err := x.Complete(ctx, words[i%len(words)][:3], 8)
		return err
	})
	if err != nil {
		return err
	}
	var covers [2]time.Duration
	for parts := range covers {
		if covers[parts], err = r.covered(ctx, k, profiles, parts+1); err != nil {
			return err
		}
	}
	fmt.Fprintf(out, "| %d | %s ms | %s ms | %s ms, %s ms | %s ms, %s ms | %s ms, %s ms | %.0f MB |\n", n, ms(named), ms(opened),
		quantile(find, 0.5), quantile(find, 0.99), quantile(typed, 0.5), quantile(typed, 0.99), ms(covers[0]), ms(covers[1]), float64(held)/1e6)
	return nil
}

// covered returns the median time of a search for covers over the whole catalogue.
func (r *ratios) covered(ctx context.Context, k *kitchen.Kitchen, profiles []*flavor.Profile, parts int) (time.Duration, error) {
	spec, err := k.Catalogue.ReadSpec("", "1 1/4 oz gin\n3/4 oz lemon juice\n1/2 oz passion fruit syrup\n1/4 oz orgeat\n1/4 oz falernum\nshake, up")
	if err != nil {
		return 0, err
	}
	times, err := repeated(2*r.rounds-1, func(i int) error {
		gone := spec.Pours[i%len(spec.Pours)].Profile
		candidates := slices.DeleteFunc(slices.Clone(profiles), func(p *flavor.Profile) bool { return p.ID == gone.ID })
		_, err := k.Finder.Find(ctx, cover.Request{Spec: &spec, Missing: []*flavor.Profile{gone}, Candidates: candidates, Parts: parts, Effort: 50_000_000})
		return err
	})
	if err != nil {
		return 0, err
	}
	return times[len(times)/2], nil
}

// generated returns a catalogue of n ingredients: the existing ones, and copies of them
// with other names, strengths and sugars.
func generated(from []*flavor.Profile, n int) []*flavor.Profile {
	chance := rand.New(rand.NewPCG(seed, uint64(n)))
	out := slices.Clone(from[:min(n, len(from))])
	for i := len(out); i < n; i++ {
		p := *from[i%len(from)]
		word := madeUp(chance)
		p.ID, p.Name, p.Aliases = fmt.Sprintf("%s-%d", p.ID, i), word+" "+p.Name, []string{fmt.Sprintf("%s No. %d", word, i)}
		vary := func(f *flavor.Figure) { f.Value *= 0.8 + 0.4*chance.Float64() }
		vary(&p.ABV)
		vary(&p.Sugar)
		vary(&p.Acid)
		vary(&p.Bitter)
		out = append(out, &p)
	}
	return out
}

// madeUp returns a random word.
func madeUp(chance *rand.Rand) string {
	var b strings.Builder
	for range 3 {
		b.WriteByte("bdfgklmnprstvz"[chance.IntN(14)])
		b.WriteByte("aeiou"[chance.IntN(5)])
	}
	return b.String()
}

// menus measures how times grow with the number of drinks of a house.
func (r *ratios) menus(ctx context.Context, out io.Writer) error {
	k, err := newKitchen()
	if err != nil {
		return err
	}
	stock, err := k.Catalogue.UsualBar()
	if err != nil {
		return err
	}
	fmt.Fprintf(out, "\n| specs | touched by one bottle | outs of it | not searched in 20 s |\n| ---: | ---: | ---: | ---: |\n")
	gone := stock[slices.IndexFunc(stock, func(p *flavor.Profile) bool { return p.ID == "lime-juice" })]
	for _, n := range r.houses {
		menu := drinks(k, n)
		limited, stop := context.WithTimeout(ctx, 20*time.Second)
		var found *outs.Result
		took, err := timed(func() (err error) {
			found, err = outs.Find(limited, k.Finder, outs.Request{Specs: menu, Out: []*flavor.Profile{gone}, Stock: stock, Parts: 2})
			return err
		})
		stop()
		if err != nil {
			return err
		}
		left := 0
		for i := range found.Touched {
			if found.Touched[i].NotSearched {
				left++
			}
		}
		fmt.Fprintf(out, "| %d | %d | %s ms | %d |\n", n, len(found.Touched), ms(took), left)
	}
	return nil
}

// drinks returns a menu of n drinks: the proven ones, each time round in other amounts.
func drinks(k *kitchen.Kitchen, n int) []*flavor.Spec {
	out := make([]*flavor.Spec, n)
	for i := range out {
		s := k.Proven[i%len(k.Proven)].Spec.Clone()
		s.Name = fmt.Sprintf("%s %d", s.Name, i)
		first := &s.Pours[0]
		more := 1 + 0.01*float64(i/len(k.Proven))
		first.Amount, first.ML = first.Amount*more, first.ML*more
		out[i] = &s
	}
	return out
}

func timed(do func() error) (time.Duration, error) {
	begun := time.Now()
	err := do()
	return time.Since(begun), err
}

// repeated calls do a number of times and returns the sorted durations.
func repeated(times int, do func(i int) error) ([]time.Duration, error) {
	out := make([]time.Duration, max(1, times))
	for i := range out {
		var err error
		if out[i], err = timed(func() error { return do(i) }); err != nil {
			return nil, err
		}
	}
	slices.Sort(out)
	return out, nil
}

// heap returns the size of the live heap, in bytes.
func heap() int64 {
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return int64(m.HeapInuse)
}

func ms(d time.Duration) string { return fmt.Sprintf("%.1f", float64(d.Microseconds())/1000) }
