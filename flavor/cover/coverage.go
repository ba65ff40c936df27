package cover

import (
	"cmp"
	"context"
	"slices"
	"strings"

	"counterpour/flavor"
)

// Weak is a bottle that the menu leans on and that nothing in stock covers well.
type Weak struct {
	Profile *flavor.Profile
	Drinks  []string // names of the drinks without a good cover
}

// Coverage looks ahead, before service: for every bottle that the menu uses,
// which drinks would be left without a good cover if it ran out. Those are the
// bottles to order two of; the one that most drinks lean on comes first.
func (f *Finder) Coverage(ctx context.Context, specs []*flavor.Spec, stock []*flavor.Profile, progress func(done, total int)) ([]Weak, error) {
	bottles := bottlesOf(specs)
	var out []Weak
	for n, b := range bottles {
		r, err := f.Outs(ctx, MenuRequest{Specs: specs, Out: []*flavor.Profile{b}, Stock: stock}, nil)
		if err != nil {
			return nil, err
		}
		w := Weak{Profile: b}
		for i := range r.Touched {
			if t := &r.Touched[i]; len(t.Covers) == 0 || t.Covers[0].Distance > NearJND {
				w.Drinks = append(w.Drinks, t.Spec.Name)
			}
		}
		if len(w.Drinks) > 0 {
			slices.Sort(w.Drinks)
			out = append(out, w)
		}
		if progress != nil {
			progress(n+1, len(bottles))
		}
	}
	slices.SortStableFunc(out, func(a, b Weak) int {
		return cmp.Or(cmp.Compare(len(b.Drinks), len(a.Drinks)), strings.Compare(a.Profile.Name, b.Profile.Name))
	})
	return out, nil
}

// bottlesOf lists what the drinks are made of, by id.
func bottlesOf(specs []*flavor.Spec) []*flavor.Profile {
	var out []*flavor.Profile
	for _, s := range specs {
		for i := range s.Pours {
			out = append(out, s.Pours[i].Profile)
		}
	}
	slices.SortFunc(out, func(a, b *flavor.Profile) int { return strings.Compare(a.ID, b.ID) })
	return slices.CompactFunc(out, func(a, b *flavor.Profile) bool { return a.ID == b.ID })
}
