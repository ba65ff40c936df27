package service

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"log/slog"
	"reflect"
	"slices"

	"counterpour/data/house"
	"counterpour/data/house/prep"
	"counterpour/flavor"
	"counterpour/flavor/template"
)

// records are what of a store a snapshot depends on, all from one moment.
type records struct {
	bottles []house.Kept[house.Bottle]
	made    []house.Kept[house.Made]
	specs   []house.Kept[house.Spec]
	outs    []house.Out
	covers  []house.Cover
	rights  []house.Right
	names   []house.Kept[house.Name]
	upTo    int64 // the last change of any of them
	setup   house.Settings
}

func read(ctx context.Context, s house.Reader) (*records, error) {
	list, err := s.List(ctx, house.KindBottle, house.KindMade, house.KindSpec, house.KindOut, house.KindCover, house.KindRight, house.KindName, house.KindSettings)
	if err != nil {
		return nil, err
	}
	r := &records{}
	for _, e := range list {
		r.upTo = max(r.upTo, e.Seq)
		switch item := e.Item.(type) {
		case house.Bottle:
			r.bottles = append(r.bottles, house.Kept[house.Bottle]{Item: item, Version: e.Version, Seq: e.Seq})
		case house.Made:
			r.made = append(r.made, house.Kept[house.Made]{Item: item, Version: e.Version, Seq: e.Seq})
		case house.Spec:
			r.specs = append(r.specs, house.Kept[house.Spec]{Item: item, Version: e.Version, Seq: e.Seq})
		case house.Out:
			r.outs = append(r.outs, item)
		case house.Cover:
			r.covers = append(r.covers, item)
		case house.Right:
			r.rights = append(r.rights, item)
		case house.Settings:
			r.setup = item
		case house.Name:
			r.names = append(r.names, house.Kept[house.Name]{Item: item, Version: e.Version, Seq: e.Seq})
		}
	}
	return r, nil
}

// version digests what the shelf depends on.
func (r *records) version() Version {
	h := sha256.New()
	for _, b := range r.bottles {
		fmt.Fprintln(h, b.Item.Ref(), b.Version)
	}
	for _, m := range r.made {
		fmt.Fprintln(h, m.Item.Ref(), m.Version)
	}
	for _, n := range r.names {
		fmt.Fprintln(h, n.Item.Ref(), n.Version)
	}
	return Version(hex.EncodeToString(h.Sum(nil)[:8]))
}

// next makes the snapshot that a store asks for now. What the change does not
// touch is shared with s.
//
// What family a drink reads as is for the proven drinks to say, not for a
// palate that depends on it: base is a kitchen without one.
func (s *Snapshot) next(ctx context.Context, base *Kitchen, store house.Reader, about About, log *slog.Logger) (*Snapshot, error) {
	r, err := read(ctx, store)
	if err != nil {
		return nil, err
	}
	out := &Snapshot{About: about.named(r.setup), Settings: r.setup, Shelf: s.Shelf, Version: r.version(), upTo: r.upTo, Tastings: r.tastings(), made: house.Items(r.made), named: house.Items(r.names), rights: r.rights, unlaid: s.unlaid}
	if s.Version != out.Version {
		profiles, faults := house.Overlay(s.Catalogue.Profiles(), house.Items(r.bottles), out.made)
		profiles, misnamed := house.NameProfiles(profiles, out.named)
		out.unlaid = append(faults, misnamed...)
		out.Shelf = house.NewShelf(s.unchanged(profiles))
	}
	out.Faults = slices.Clone(out.unlaid)
	out.Stock, out.Out = r.stock(out.Shelf)
	right := out.pour(ctx, base, store, r)
	out.Prices, out.PricesFault = prep.NewPrices(out.Shelf, house.Items(r.bottles), out.made)
	if out.PricesFault != nil {
		out.Faults = append(out.Faults, out.PricesFault)
	}
	out.Kitchen, err = s.Kitchen.For(ctx, out.Shelf.Profiles(), out.Stock, right, func(done, total int) {
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

// pour puts the menu together, and returns the drinks that are marked as right.
// One that cannot be poured is left out and reported.
func (s *Snapshot) pour(ctx context.Context, k *Kitchen, store house.Reader, r *records) (right []template.Labelled) {
	marks := map[string]int64{}
	for _, m := range r.rights {
		marks[m.Spec] = m.SpecVersion
	}
	for _, kept := range r.specs {
		d := Drink{Slug: kept.Item.ID, Version: kept.Version}
		var err error
		if d.Spec, err = kept.Item.Flavor(s.Shelf); err != nil {
			s.Faults = append(s.Faults, err)
			continue
		}
		d.Family = familyOf(k, &d.Spec)
		s.Menu = append(s.Menu, d)
		if version := marks[d.Slug]; version > 0 {
			l, err := s.asTasted(ctx, k, store, &d, version)
			if err != nil {
				s.Faults = append(s.Faults, err)
			} else if l.Family != "" {
				right = append(right, l)
			}
		}
	}
	slices.SortStableFunc(s.Menu, func(a, b Drink) int { return compareNames(&a, &b) })
	return right
}

// asTasted returns the version of a drink that was marked as right.
func (s *Snapshot) asTasted(ctx context.Context, k *Kitchen, store house.Reader, d *Drink, version int64) (template.Labelled, error) {
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
func familyOf(k *Kitchen, s *flavor.Spec) string {
	r, err := k.Judge.Score(s)
	if err != nil || len(r.Judgement.Fits) == 0 {
		return ""
	}
	return r.Judgement.Fits[0].ID
}
