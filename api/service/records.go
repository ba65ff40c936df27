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

// recordKinds are the kinds that a snapshot depends on.
var recordKinds = []house.Kind{house.KindBottle, house.KindMade, house.KindSpec, house.KindOut, house.KindCover, house.KindRight, house.KindName, house.KindSettings}

// records are what of a store a snapshot depends on. They are never changed.
type records struct {
	bottles []house.Kept[house.Bottle]
	made    []house.Kept[house.Made]
	specs   []house.Kept[house.Spec]
	outs    []house.Out
	covers  []house.Cover
	rights  []house.Right
	names   []house.Kept[house.Name]
	setup   house.Settings
	upTo    int64        // all changes up to this one are in them
	anew    []house.Kind // of them, those that were read anew; the rest is as it was before
}

// read reads what a store has. Of what was read before, if anything was, only the
// kinds that changed since are read again, so that a mark costs the same in a house
// of a hundred drinks and of a hundred thousand.
func read(ctx context.Context, s house.Reader, before *records) (*records, error) {
	if before != nil {
		since, err := s.Changes(ctx, before.upTo, changesAtOnce)
		if err != nil {
			return nil, err
		}
		if len(since) < changesAtOnce {
			return before.readAnew(ctx, s, since)
		}
	}
	r := &records{anew: recordKinds}
	list, err := s.List(ctx, recordKinds...)
	for _, e := range list {
		r.upTo = max(r.upTo, e.Seq)
	}
	r.take(list)
	return r, err
}

// readAnew reads the kinds that some changes touch again; or all of them if something
// was written meanwhile, so that what it returns was there at one moment.
func (r *records) readAnew(ctx context.Context, s house.Reader, since []house.Change) (*records, error) {
	out := *r
	out.anew = nil
	for _, c := range since {
		out.upTo = c.Seq
		if slices.Contains(recordKinds, c.Ref.Kind) && !out.isAnew(c.Ref.Kind) {
			out.anew = append(out.anew, c.Ref.Kind)
		}
	}
	if len(out.anew) == 0 {
		return &out, nil
	}
	for _, k := range out.anew {
		out.drop(k)
	}
	list, err := s.List(ctx, out.anew...)
	if err == nil && slices.ContainsFunc(list, func(e house.Entry) bool { return e.Seq > out.upTo }) {
		return read(ctx, s, nil)
	}
	out.take(list)
	return &out, err
}

// isAnew reports whether one of some kinds was read anew.
func (r *records) isAnew(kinds ...house.Kind) bool {
	return slices.ContainsFunc(kinds, func(k house.Kind) bool { return slices.Contains(r.anew, k) })
}

func (r *records) drop(k house.Kind) {
	switch k {
	case house.KindBottle:
		r.bottles = nil
	case house.KindMade:
		r.made = nil
	case house.KindSpec:
		r.specs = nil
	case house.KindOut:
		r.outs = nil
	case house.KindCover:
		r.covers = nil
	case house.KindRight:
		r.rights = nil
	case house.KindName:
		r.names = nil
	case house.KindSettings:
		r.setup = house.Settings{}
	}
}

func (r *records) take(list []house.Entry) {
	for _, e := range list {
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
	r, err := read(ctx, store, s.from)
	if err != nil {
		return nil, err
	}
	version := s.Version
	if r.isAnew(house.KindBottle, house.KindMade, house.KindName) {
		version = r.version()
	}
	out := &Snapshot{from: r, About: about.named(r.setup), Settings: r.setup, Shelf: s.Shelf, Version: version, upTo: r.upTo, Tastings: r.tastings(), made: house.Items(r.made), named: house.Items(r.names), rights: r.rights, unlaid: s.unlaid}
	if s.Version != out.Version {
		profiles, faults := house.Overlay(s.Catalogue.Profiles(), house.Items(r.bottles), out.made)
		profiles, misnamed := house.NameProfiles(profiles, out.named)
		out.unlaid = append(faults, misnamed...)
		out.Shelf = house.NewShelf(s.unchanged(profiles))
	}
	out.Faults = slices.Clone(out.unlaid)
	out.Stock, out.Out = r.stock(out.Shelf)
	out.pour(ctx, base, store, s)
	out.Prices, out.PricesFault = s.Prices, s.PricesFault
	if r.isAnew(house.KindBottle, house.KindMade, house.KindName) {
		out.Prices, out.PricesFault = prep.NewPrices(out.Shelf, house.Items(r.bottles), out.made)
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
func (s *Snapshot) pour(ctx context.Context, k *Kitchen, store house.Reader, before *Snapshot) {
	defer func() { s.Faults = append(s.Faults, s.unpoured...) }()
	if before.from != nil && before.Shelf == s.Shelf && !s.from.isAnew(house.KindSpec, house.KindRight) {
		s.Menu, s.mixed, s.right, s.unpoured = before.Menu, before.mixed, before.right, before.unpoured
		return
	}
	marks := map[string]int64{}
	for _, m := range s.from.rights {
		marks[m.Spec] = m.SpecVersion
	}
	was := make(map[string]*Drink, len(before.Menu))
	for i := range before.Menu {
		was[before.Menu[i].Slug] = &before.Menu[i]
	}
	for _, kept := range s.from.specs {
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
func (s *Snapshot) drinkOf(k *Kitchen, kept *house.Kept[house.Spec], was *Drink, before *Snapshot) (Drink, error) {
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
