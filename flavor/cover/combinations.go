package cover

import (
	"cmp"
	"context"
	"slices"
)

// combinations goes through every set of a number of candidates.
type combinations struct {
	task   *task
	bounds *bounds
	list   *shortlist
	parts  int

	order []int // candidates, the most helpful first
	count int
}

// checkEvery is how many combinations pass between looks at the context.
const checkEvery = 1 << 14

// hopes is how many combinations are gathered before the best are rounded, so
// that the edge comes down early and the rest can be ruled out.
const hopes = 512

// hope is a combination that its bound does not rule out.
type hope struct {
	parts [MaxParts]int
	bound float64
}

func (h hope) compare(o hope) int {
	return cmp.Or(cmp.Compare(h.bound, o.bound), slices.Compare(h.parts[:], o.parts[:]))
}

// run looks at the combinations in the order of what their candidates can
// bring, and stops where even the sum of that cannot bring the drink near
// enough.
func (s *combinations) run(ctx context.Context) error {
	s.order = make([]int, len(s.task.cands))
	for i := range s.order {
		s.order[i] = i
	}
	gain := s.bounds.gain
	slices.SortStableFunc(s.order, func(a, b int) int { return cmp.Compare(gain[b], gain[a]) })
	var pending []hope
	if err := s.descend(ctx, nil, 0, 0, &pending); err != nil {
		return err
	}
	return s.settle(&pending)
}

// descend adds to chosen each later candidate in turn. The candidates come in
// falling order of gain, so where the best that is still to come cannot do,
// none can.
func (s *combinations) descend(ctx context.Context, chosen []int, from int, gain float64, pending *[]hope) error {
	missing := s.parts - len(chosen)
	for at := from; at+missing <= len(s.order); at++ {
		c := s.order[at]
		most := gain + float64(missing)*s.bounds.gain[c]
		if !s.list.hopeful(s.bounds.distance(s.bounds.total-most), s.parts) {
			return nil
		}
		next := append(chosen, c)
		if !s.allowed(next) {
			continue
		}
		if missing > 1 {
			if err := s.descend(ctx, next, at+1, gain+s.bounds.gain[c], pending); err != nil {
				return err
			}
			continue
		}
		if err := s.weigh(ctx, next, pending); err != nil {
			return err
		}
	}
	return nil
}

// allowed keeps out a second odd ingredient.
func (s *combinations) allowed(chosen []int) bool {
	n := 0
	for _, c := range chosen {
		if s.task.cands[c].odd {
			n++
		}
	}
	return n <= 1
}

// weigh holds a combination's bound against the worst cover kept, and gathers
// it if it may do better.
func (s *combinations) weigh(ctx context.Context, chosen []int, pending *[]hope) error {
	if s.count++; s.count%checkEvery == 0 && ctx.Err() != nil {
		return ctx.Err()
	}
	bound := s.bounds.distance(s.bounds.least(chosen))
	if !s.list.hopeful(bound, s.parts) {
		return nil
	}
	h := hope{bound: bound}
	copy(h.parts[:], chosen)
	slices.Sort(h.parts[:s.parts])
	*pending = append(*pending, h)
	if len(*pending) >= hopes {
		return s.settle(pending)
	}
	return nil
}

// settle rounds what was gathered, the best first.
func (s *combinations) settle(pending *[]hope) error {
	slices.SortFunc(*pending, hope.compare)
	for _, h := range *pending {
		if !s.list.hopeful(h.bound, s.parts) {
			break
		}
		if err := s.list.try(slices.Clone(h.parts[:s.parts])); err != nil {
			return err
		}
	}
	*pending = (*pending)[:0]
	return nil
}

// least returns the least squared distance of some candidates in any amounts
// that are not negative.
func (b *bounds) least(chosen []int) float64 {
	switch len(chosen) {
	case 1:
		return b.single(chosen[0])
	case 2:
		return b.pair(chosen[0], chosen[1])
	}
	return b.triple(chosen[0], chosen[1], chosen[2])
}

// triple is least for three: the best of the three pairs, or of all three if
// that needs no negative amount.
func (b *bounds) triple(i, j, k int) float64 {
	ij, ik, jk := dot(&b.per[i], &b.per[j]), dot(&b.per[i], &b.per[k]), dot(&b.per[j], &b.per[k])
	ii, jj, kk := b.self[i], b.self[j], b.self[k]
	// Cofactors of the symmetric matrix of products.
	cii, cij, cik := jj*kk-jk*jk, jk*ik-ij*kk, ij*jk-jj*ik
	cjj, cjk, ckk := ii*kk-ik*ik, ij*ik-ii*jk, ii*jj-ij*ij
	det := ii*cii + ij*cij + ik*cik
	gi, gj, gk := b.gap[i], b.gap[j], b.gap[k]
	x, y, z := cii*gi+cij*gj+cik*gk, cij*gi+cjj*gj+cjk*gk, cik*gi+cjk*gj+ckk*gk
	if det > 1e-12*ii*jj*kk && x > 0 && y > 0 && z > 0 {
		return b.total - (x*gi+y*gj+z*gk)/det
	}
	return min(b.pairOf(i, j, ij), b.pairOf(i, k, ik), b.pairOf(j, k, jk))
}
