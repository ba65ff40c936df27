package marking

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"time"

	"counterpour/data/house"
	"counterpour/flavor"
)

// onShelf returns the edits that mark what ran out and what is back: none for what is
// marked so already.
func (p *Pen) onShelf(ctx context.Context, by house.By, r *Request) ([]house.Edit, error) {
	s := &shelf{at: by.At}
	if !r.Tapped.IsZero() {
		if err := p.late(ctx, by, r); err != nil {
			return nil, err
		}
		s.at = r.Tapped
	}
	outs, err := house.All[house.Out](ctx, p.store)
	if err != nil {
		return nil, err
	}
	s.outs = outs
	if len(r.Back)+len(r.BottlesOut)+len(r.BottlesBack) > 0 {
		if s.bottles, err = house.All[house.Bottle](ctx, p.store); err != nil {
			return nil, err
		}
	}
	s.touched = make([]bool, len(s.bottles))
	for _, id := range distinct(r.Out) {
		s.gone(id)
	}
	for _, id := range distinct(r.Back) {
		s.back(id)
	}
	for _, id := range distinct(r.BottlesOut) {
		s.bottleGone(id)
	}
	for _, id := range distinct(r.BottlesBack) {
		s.bottleBack(id)
	}
	return s.edits(), nil
}

// late refuses a mark that is sent too late, or whose bottles somebody marked after it was
// tapped: the newer mark stands until somebody looks.
func (p *Pen) late(ctx context.Context, by house.By, r *Request) error {
	if ago := by.At.Sub(r.Tapped); ago < 0 || ago > MostLate {
		return flavor.Invalid(TappedField, r.Tapped.Format(time.RFC3339), "that was tapped more than a day ago; look at the shelf, and mark it anew")
	}
	now := p.now()
	var records []house.Ref
	is := map[house.Ref]bool{} // whether what is marked is out after it
	for _, id := range slices.Concat(r.Out, r.Back) {
		ref := house.Ref{Kind: house.KindOut, ID: id}
		records, is[ref] = append(records, ref), slices.Contains(r.Out, id)
	}
	for _, id := range slices.Concat(r.BottlesOut, r.BottlesBack) {
		records = append(records, house.Ref{Kind: house.KindBottle, ID: id})
		if at := slices.IndexFunc(now.Bottles(), func(b house.Bottle) bool { return b.ID == id }); at >= 0 {
			records = append(records, house.Ref{Kind: house.KindOut, ID: now.Bottles()[at].Ingredient})
		}
	}
	for _, ref := range records {
		changes, err := p.store.History(ctx, ref)
		if err != nil && !errors.Is(err, house.ErrNotFound) { // that was never marked has none
			return err
		}
		n := len(changes)
		if out, told := is[ref]; n > 0 && told && out == (changes[n-1].Item != nil) {
			continue // it is marked so already
		}
		if n > 0 && changes[n-1].At.After(r.Tapped) {
			return flavor.Invalid(TappedField, ref.ID, "%s marked %s after this was tapped; look at the shelf, and mark it again if need be", changes[n-1].Actor, now.NameOf(ref.ID))
		}
	}
	return nil
}

// shelf is the bottles and the outs of a house while a mark changes them. A bottle that
// ran out beside others says so itself; with the last one the ingredient is out, so that
// whoever brings that one back brings back this bottle and no other.
type shelf struct {
	at      time.Time
	bottles []house.Kept[house.Bottle]
	touched []bool // which of the bottles changed
	outs    []house.Kept[house.Out]
	added   []house.Out
	removed []house.Kept[house.Out]
}

func (s *shelf) isOut(id string) bool {
	return slices.ContainsFunc(s.outs, func(o house.Kept[house.Out]) bool { return o.Item.Ingredient == id }) ||
		slices.ContainsFunc(s.added, func(o house.Out) bool { return o.Ingredient == id })
}

// gone marks an ingredient as out.
func (s *shelf) gone(id string) {
	if !s.isOut(id) {
		s.added = append(s.added, house.Out{Ingredient: id, Since: s.at})
	}
}

// in takes the mark off an ingredient.
func (s *shelf) in(id string) {
	for i, o := range s.outs {
		if o.Item.Ingredient == id {
			s.removed, s.outs = append(s.removed, o), slices.Delete(slices.Clone(s.outs), i, i+1)
			break
		}
	}
	s.added = slices.DeleteFunc(s.added, func(o house.Out) bool { return o.Ingredient == id })
}

// there returns how many bottles of an ingredient are there, but for one of them.
func (s *shelf) there(id, but string) (n int) {
	for _, b := range s.bottles {
		if b.Item.Ingredient == id && b.Item.ID != but && b.Item.There() {
			n++
		}
	}
	return n
}

// back marks an ingredient as available.
func (s *shelf) back(id string) {
	s.in(id)
	if s.there(id, "") > 0 {
		return
	}
	well, kept := house.Wells(house.Items(s.bottles))[id]
	if kept {
		s.fill(s.place(well.ID))
	}
}

// place returns where a bottle stands among the bottles; -1 for one that is gone.
func (s *shelf) place(id string) int {
	return slices.IndexFunc(s.bottles, func(b house.Kept[house.Bottle]) bool { return b.Item.ID == id })
}

// fill makes a bottle one that is there.
func (s *shelf) fill(i int) {
	b := &s.bottles[i].Item
	if b.There() {
		return
	}
	if b.OutSince = nil; b.Stock == 0 {
		b.Stock = 1
	}
	s.touched[i] = true
}

// bottleGone marks one bottle as out, and with the last one its ingredient.
func (s *shelf) bottleGone(id string) {
	i := s.place(id)
	if i < 0 || !s.bottles[i].Item.There() {
		return
	}
	b := &s.bottles[i].Item
	if s.there(b.Ingredient, id) == 0 {
		s.gone(b.Ingredient)
		return
	}
	at := s.at
	b.OutSince, s.touched[i] = &at, true
}

// bottleBack marks one bottle as available. Others of an ingredient that was out stay out.
func (s *shelf) bottleBack(id string) {
	i := s.place(id)
	if i < 0 {
		return
	}
	of := s.bottles[i].Item.Ingredient
	if s.isOut(of) {
		s.in(of)
		for j := range s.bottles {
			if b := &s.bottles[j].Item; j != i && b.Ingredient == of && b.There() {
				at := s.at
				b.OutSince, s.touched[j] = &at, true
			}
		}
	}
	s.fill(i)
}

func (s *shelf) edits() (edits []house.Edit) {
	for _, o := range s.added {
		edits = append(edits, house.Put(o, 0))
	}
	for _, o := range s.removed {
		edits = append(edits, house.Remove(o.Item.Ref(), o.Version))
	}
	for i, b := range s.bottles {
		if s.touched[i] {
			edits = append(edits, house.Put(b.Item, b.Version))
		}
	}
	return edits
}

// bottles resolves ids and names of single bottles to their ids. It adds a fault for each
// that is none.
func bottles(now House, field string, names []string, faults *flavor.DataFaults) (ids []string) {
	for i, name := range names {
		id, ok := bottleCalled(now, name)
		if !ok {
			*faults = append(*faults, flavor.Unknown(fmt.Sprintf("%s[%d]", field, i), name, nil, "the house has no bottle %q; mark one that stands in its stock", name))
			continue
		}
		ids = append(ids, id)
	}
	return ids
}

// bottleCalled finds a bottle of the house by its id, or by its name if it alone has that.
func bottleCalled(now House, name string) (id string, ok bool) {
	n := 0
	for _, b := range now.Bottles() {
		if b.ID == name {
			return b.ID, true
		}
		if flavor.NormaliseName(b.Name) == flavor.NormaliseName(name) {
			id, n = b.ID, n+1
		}
	}
	return id, n == 1
}
