package service

import (
	"context"
	"fmt"
	"log/slog"
	"reflect"
	"slices"

	"counterpour/api/service/kitchen"
	"counterpour/api/service/records"
	"counterpour/data/house"
	"counterpour/data/house/prep"
	"counterpour/flavor"
	"counterpour/flavor/template"
)

// next makes the snapshot that a store asks for now. What the change does not
// touch is shared with s.
//
// What family a drink reads as is for the proven drinks to say, not for a
// palate that depends on it: base is a kitchen without one.
func (s *Snapshot) next(ctx context.Context, base *kitchen.Kitchen, store house.Reader, about About, log *slog.Logger) (*Snapshot, error) {
	r, err := records.Read(ctx, store, s.from)
	if err != nil {
		return nil, err
	}
	version := s.Version
	if r.IsAnew(house.KindBottle, house.KindMade, house.KindName) {
		version = r.Version()
	}
	out := &Snapshot{from: r, About: about.named(r.Setup), Settings: r.Setup, Shelf: s.Shelf, Version: version, upTo: r.UpTo, Tastings: r.Tastings(), made: house.Items(r.Made), named: house.Items(r.Names), rights: r.Rights, unlaid: s.unlaid}
	if s.Version != out.Version {
		profiles, faults := house.Overlay(s.Catalogue.Profiles(), house.Items(r.Bottles), out.made)
		profiles, misnamed := house.NameProfiles(profiles, out.named)
		out.unlaid = append(faults, misnamed...)
		out.Shelf = house.NewShelf(s.unchanged(profiles))
	}
	out.Faults = slices.Clone(out.unlaid)
	out.Stock, out.Out = r.Stock(out.Shelf)
	out.pour(ctx, base, store, s)
	out.Prices, out.PricesFault = s.Prices, s.PricesFault
	if r.IsAnew(house.KindBottle, house.KindMade, house.KindName) {
		out.Prices, out.PricesFault = prep.NewPrices(out.Shelf, house.Items(r.Bottles), out.made)
	}
	if out.PricesFault != nil {
		out.Faults = append(out.Faults, out.PricesFault)
	}
	out.Kitchen, err = s.Kitchen.For(ctx, out.Shelf.Profiles(), out.Stock, out.right, func(done, total int) {
		log.Debug("the index follows the house", "done", done, "total", total, "version", string(out.Version))
	})
	if err != nil {
		return nil, err
	}
	out.coach = out.newCoach()
	if s.coach != nil && s.Set == out.Set && slices.Equal(s.Stock, out.Stock) {
		out.coach = s.coach
	}
	for _, f := range out.Faults {
		log.Warn("part of the house cannot be used", "error", f)
	}
	return out, nil
}

// unchanged puts the profiles that s has already in place of their equals, so
// that the index and all who compare by address see what really changed.
func (s *Snapshot) unchanged(profiles []*flavor.Profile) []*flavor.Profile {
	for i, p := range profiles {
		if old, ok := s.Shelf.ByID(p.ID); ok && old != p && reflect.DeepEqual(old, p) {
			profiles[i] = old
		}
	}
	return profiles
}

// pour puts the menu together, and the drinks that are marked as right. One that
// cannot be poured is left out and reported. What is as it was before is taken from
// there.
func (s *Snapshot) pour(ctx context.Context, k *kitchen.Kitchen, store house.Reader, before *Snapshot) {
	defer func() { s.Faults = append(s.Faults, s.unpoured...) }()
	if before.from != nil && before.Shelf == s.Shelf && !s.from.IsAnew(house.KindSpec, house.KindRight) {
		s.Menu, s.mixed, s.right, s.unpoured = before.Menu, before.mixed, before.right, before.unpoured
		return
	}
	marks := map[string]int64{}
	for _, m := range s.from.Rights {
		marks[m.Spec] = m.SpecVersion
	}
	was := make(map[string]*Drink, len(before.Menu))
	for i := range before.Menu {
		was[before.Menu[i].Slug] = &before.Menu[i]
	}
	for _, kept := range s.from.Specs {
		d, err := s.drinkOf(k, &kept, was[kept.Item.ID], before)
		if err != nil {
			s.unpoured = append(s.unpoured, err)
			continue
		}
		s.Menu = append(s.Menu, d)
		if version := marks[d.Slug]; version > 0 {
			l, err := s.asTasted(ctx, k, store, &d, version)
			if err != nil {
				s.unpoured = append(s.unpoured, err)
			} else if l.Family != "" {
				s.right = append(s.right, l)
			}
		}
	}
	sortByName(s.Menu)
	s.mixed = s.newMixed(k)
}

// drinkOf makes a drink of a record, or takes it from the snapshot before if neither
// the record nor a bottle of it changed.
func (s *Snapshot) drinkOf(k *kitchen.Kitchen, kept *house.Kept[house.Spec], was *Drink, before *Snapshot) (Drink, error) {
	same := was != nil && was.Version == kept.Version
	if same && before.Shelf == s.Shelf {
		return *was, nil
	}
	d := Drink{Slug: kept.Item.ID, Version: kept.Version}
	var err error
	if d.Spec, err = kept.Item.Flavor(s.Shelf); err != nil {
		return d, err
	}
	if same && samePours(&d.Spec, &was.Spec) {
		return *was, nil
	}
	d.Family = familyOf(k, &d.Spec)
	return d, nil
}

// samePours reports whether two readings of one record pour from the same bottles.
func samePours(a, b *flavor.Spec) bool {
	return slices.EqualFunc(a.Pours, b.Pours, func(x, y flavor.Pour) bool { return x.Profile == y.Profile })
}

// asTasted returns the version of a drink that was marked as right.
func (s *Snapshot) asTasted(ctx context.Context, k *kitchen.Kitchen, store house.Reader, d *Drink, version int64) (template.Labelled, error) {
	if version == d.Version {
		return template.Labelled{Spec: d.Spec, Family: d.Family}, nil
	}
	history, err := store.History(ctx, house.Ref{Kind: house.KindSpec, ID: d.Slug})
	if err != nil {
		return template.Labelled{}, err
	}
	at := slices.IndexFunc(history, func(c house.Change) bool { return c.Version == version })
	if at < 0 {
		return template.Labelled{}, fmt.Errorf("spec %q: version %d is marked as right and was never written", d.Slug, version)
	}
	kept, ok := history[at].Item.(house.Spec)
	if !ok {
		return template.Labelled{}, nil // the drink was off the menu in that version
	}
	spec, err := kept.Flavor(s.Shelf)
	return template.Labelled{Spec: spec, Family: familyOf(k, &spec)}, err
}

// familyOf returns the family that a drink reads as, or none.
func familyOf(k *kitchen.Kitchen, s *flavor.Spec) string {
	r, err := k.Judge.Score(s)
	if err != nil || len(r.Judgement.Fits) == 0 {
		return ""
	}
	return r.Judgement.Fits[0].ID
}
