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

// next derives the snapshot for the current state of the store. Parts that did not change
// are shared with s.
//
// base is a kitchen without a palate. It decides which family a drink belongs to, since
// the palate itself depends on that.
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
	out.school = out.newSchool()
	if s.school != nil && s.Set == out.Set && s.Settings.Units == out.Settings.Units && slices.Equal(s.Stock, out.Stock) {
		out.school = s.school
	}
	out.coach = out.newCoach()
	for _, f := range out.Faults {
		log.Warn("part of the house cannot be used", "error", f)
	}
	return out, nil
}

// unchanged replaces each profile that equals one of s by that one, so that code that
// compares profiles by pointer, such as the index, sees only real changes.
func (s *Snapshot) unchanged(profiles []*flavor.Profile) []*flavor.Profile {
	for i, p := range profiles {
		if old, ok := s.Shelf.ByID(p.ID); ok && old != p && reflect.DeepEqual(old, p) {
			profiles[i] = old
		}
	}
	return profiles
}

// pour fills in the menu and the drinks marked as right. A drink that cannot be poured is
// left out and reported as a fault. Unchanged drinks are taken from the snapshot before.
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

// drinkOf makes a drink from a record, or reuses the one of the snapshot before if
// neither the record nor its bottles changed.
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

// samePours reports whether two readings of one record pour the same profiles, and lay the same
// on the drink.
func samePours(a, b *flavor.Spec) bool {
	laid := slices.EqualFunc(a.Dressings, b.Dressings, func(x, y flavor.Dressing) bool { return slices.Equal(x.Records, y.Records) })
	return laid && slices.EqualFunc(a.Pours, b.Pours, func(x, y flavor.Pour) bool { return x.Profile == y.Profile })
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
		return template.Labelled{}, nil // that version was not on the menu
	}
	spec, err := kept.Flavor(s.Shelf)
	return template.Labelled{Spec: spec, Family: familyOf(k, &spec)}, err
}

// familyOf returns the id of the most probable family of a drink, or "".
func familyOf(k *kitchen.Kitchen, s *flavor.Spec) string {
	r, err := k.Judge.Score(s)
	if err != nil || len(r.Judgement.Fits) == 0 {
		return ""
	}
	return r.Judgement.Fits[0].ID
}
