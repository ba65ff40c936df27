package service

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"time"

	"counterpour/data/house"
	"counterpour/flavor"
)

// shelfMarks returns the edits that mark what ran out and what is back: none for what is
// marked so already.
func (v *Venue) shelfMarks(ctx context.Context, by house.By, r *MarkRequest) ([]house.Edit, error) {
	m := &marking{at: by.At}
	if !r.Tapped.IsZero() {
		if err := v.late(ctx, by, r); err != nil {
			return nil, err
		}
		m.at = r.Tapped
	}
	outs, err := house.All[house.Out](ctx, v.inner)
	if err != nil {
		return nil, err
	}
	m.outs = outs
	if len(r.Back)+len(r.BottlesOut)+len(r.BottlesBack) > 0 {
		if m.bottles, err = house.All[house.Bottle](ctx, v.inner); err != nil {
			return nil, err
		}
	}
	m.touched = make([]bool, len(m.bottles))
	for _, id := range distinct(r.Out) {
		m.gone(id)
	}
	for _, id := range distinct(r.Back) {
		m.back(id)
	}
	for _, id := range distinct(r.BottlesOut) {
		m.bottleGone(id)
	}
	for _, id := range distinct(r.BottlesBack) {
		m.bottleBack(id)
	}
	return m.edits(), nil
}

// late refuses a mark that is sent too late, or whose bottles somebody marked after it was
// tapped: the newer mark stands until somebody looks.
func (v *Venue) late(ctx context.Context, by house.By, r *MarkRequest) error {
	if ago := by.At.Sub(r.Tapped); ago < 0 || ago > MostLate {
		return flavor.Invalid(TappedField, r.Tapped.Format(time.RFC3339), "that was tapped more than a day ago; look at the shelf, and mark it anew")
	}
	now := v.Now()
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
		changes, err := v.inner.History(ctx, ref)
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

// marking is the bottles and the outs of a house while a mark changes them. A bottle that
// ran out beside others says so itself; with the last one the ingredient is out, so that
// whoever brings that one back brings back this bottle and no other.
type marking struct {
	at      time.Time
	bottles []house.Kept[house.Bottle]
	touched []bool // which of the bottles changed
	outs    []house.Kept[house.Out]
	added   []house.Out
	removed []house.Kept[house.Out]
}

func (m *marking) isOut(id string) bool {
	return slices.ContainsFunc(m.outs, func(o house.Kept[house.Out]) bool { return o.Item.Ingredient == id }) ||
		slices.ContainsFunc(m.added, func(o house.Out) bool { return o.Ingredient == id })
}

// gone marks an ingredient as out.
func (m *marking) gone(id string) {
	if !m.isOut(id) {
		m.added = append(m.added, house.Out{Ingredient: id, Since: m.at})
	}
}

// in takes the mark off an ingredient.
func (m *marking) in(id string) {
	for i, o := range m.outs {
		if o.Item.Ingredient == id {
			m.removed, m.outs = append(m.removed, o), slices.Delete(slices.Clone(m.outs), i, i+1)
			break
		}
	}
	m.added = slices.DeleteFunc(m.added, func(o house.Out) bool { return o.Ingredient == id })
}

// there returns how many bottles of an ingredient are there, but for one of them.
func (m *marking) there(id, but string) (n int) {
	for _, b := range m.bottles {
		if b.Item.Ingredient == id && b.Item.ID != but && b.Item.There() {
			n++
		}
	}
	return n
}

// back marks an ingredient as available.
func (m *marking) back(id string) {
	m.in(id)
	if m.there(id, "") > 0 {
		return
	}
	well, kept := house.Wells(house.Items(m.bottles))[id]
	if kept {
		m.fill(m.place(well.ID))
	}
}

// place returns where a bottle stands among the bottles; -1 for one that is gone.
func (m *marking) place(id string) int {
	return slices.IndexFunc(m.bottles, func(b house.Kept[house.Bottle]) bool { return b.Item.ID == id })
}

// fill makes a bottle one that is there.
func (m *marking) fill(i int) {
	b := &m.bottles[i].Item
	if b.There() {
		return
	}
	if b.OutSince = nil; b.Stock == 0 {
		b.Stock = 1
	}
	m.touched[i] = true
}

// bottleGone marks one bottle as out, and with the last one its ingredient.
func (m *marking) bottleGone(id string) {
	i := m.place(id)
	if i < 0 || !m.bottles[i].Item.There() {
		return
	}
	b := &m.bottles[i].Item
	if m.there(b.Ingredient, id) == 0 {
		m.gone(b.Ingredient)
		return
	}
	at := m.at
	b.OutSince, m.touched[i] = &at, true
}

// bottleBack marks one bottle as available. Others of an ingredient that was out stay out.
func (m *marking) bottleBack(id string) {
	i := m.place(id)
	if i < 0 {
		return
	}
	of := m.bottles[i].Item.Ingredient
	if m.isOut(of) {
		m.in(of)
		for j := range m.bottles {
			if b := &m.bottles[j].Item; j != i && b.Ingredient == of && b.There() {
				at := m.at
				b.OutSince, m.touched[j] = &at, true
			}
		}
	}
	m.fill(i)
}

func (m *marking) edits() (edits []house.Edit) {
	for _, o := range m.added {
		edits = append(edits, house.Put(o, 0))
	}
	for _, o := range m.removed {
		edits = append(edits, house.Remove(o.Item.Ref(), o.Version))
	}
	for i, b := range m.bottles {
		if m.touched[i] {
			edits = append(edits, house.Put(b.Item, b.Version))
		}
	}
	return edits
}

// bottles resolves ids and names of single bottles to their ids. It adds a fault for each
// that is none.
func (s *Snapshot) bottles(field string, names []string, faults *flavor.Faults) (ids []string) {
	for i, name := range names {
		id, ok := s.bottleCalled(name)
		if !ok {
			*faults = append(*faults, flavor.Unknown(fmt.Sprintf("%s[%d]", field, i), name, nil, "the house has no bottle %q; mark one that stands in its stock", name))
			continue
		}
		ids = append(ids, id)
	}
	return ids
}

// bottleCalled finds a bottle of the house by its id, or by its name if it alone has that.
func (s *Snapshot) bottleCalled(name string) (id string, ok bool) {
	n := 0
	for _, b := range s.Bottles() {
		if b.ID == name {
			return b.ID, true
		}
		if flavor.NormaliseName(b.Name) == flavor.NormaliseName(name) {
			id, n = b.ID, n+1
		}
	}
	return id, n == 1
}

// Bottles returns the bottles of the house, sorted by id.
func (s *Snapshot) Bottles() []house.Bottle {
	if s.from == nil {
		return nil
	}
	return house.Items(s.from.Bottles)
}

// Poured returns the bottle that each ingredient is poured from, of those that are not out.
func (s *Snapshot) Poured() map[string]house.Bottle {
	out := house.Wells(s.Bottles())
	for _, p := range s.Out {
		delete(out, p.ID)
	}
	return out
}
