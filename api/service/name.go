package service

import (
	"cmp"
	"context"
	"errors"
	"slices"

	"counterpour/api/service/fault"
	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
)

// Named is one of the house's own words and the ingredient that it means.
type Named struct {
	Words   string
	Profile *flavor.Profile
}

// Names lists the house's own words in alphabetical order. Words whose ingredient no
// longer exists are left out.
func (s *Snapshot) Names() []Named {
	var out []Named
	for _, n := range s.named {
		if p, ok := s.Shelf.ByID(n.Ingredient); ok {
			out = append(out, Named{n.Written, p})
		}
	}
	slices.SortFunc(out, func(a, b Named) int {
		return cmp.Or(cmp.Compare(flavor.NormaliseName(a.Words), flavor.NormaliseName(b.Words)), cmp.Compare(a.Words, b.Words))
	})
	return out
}

// NameRequest says what words mean in this house.
type NameRequest struct {
	Words string // as written, for example on a label
	Kind  string // name, alias or id of the ingredient; empty if Undo is set
	Undo  bool   // forget the word
}

// Name stores or forgets what a word means in this house. The draft reader, completion
// and imports use it from then on. It is a fault if the word means another ingredient
// already.
func (v *Venue) Name(ctx context.Context, by house.By, r NameRequest) error {
	edit, err := v.naming(ctx, r)
	if err != nil {
		return err
	}
	_, err = v.Store().Write(ctx, by, edit)
	return err
}

func (v *Venue) naming(ctx context.Context, r NameRequest) (house.Edit, error) {
	id := house.IDOf(house.KindName, flavor.NormaliseName(r.Words))
	if id == "" {
		return house.Edit{}, flavor.Invalid("words", r.Words, "there is no letter or digit in the words; write them as they stand on the label")
	}
	kept, err := house.Get[house.Name](ctx, v.inner, id)
	if err != nil && !errors.Is(err, house.ErrNotFound) {
		return house.Edit{}, err
	}
	if r.Undo {
		if kept.Version == 0 {
			return house.Edit{}, flavor.Invalid("words", r.Words, "%q is no word of this house, so that there is nothing to forget", fault.Quotable(r.Words))
		}
		return house.Remove(kept.Item.Ref(), kept.Version), nil
	}
	p, m, err := v.Now().Index.Resolve(r.Kind)
	if err == nil && m.How == flavor.MatchFuzzy {
		err = &flavor.DataFault{Kind: flavor.ErrUnknown, Value: r.Kind, Suggest: []string{p.Name}}
	}
	if err != nil {
		return house.Edit{}, unknownKind(r.Kind, err)
	}
	if lost := naming.Loses(r.Words, p); lost != "" {
		return house.Edit{}, flavor.Invalid("words", r.Words, "%q says that it holds %s, and %s is not known to carry that; keep it as a bottle of your stock, and read its label", fault.Quotable(r.Words), lost, p.Name)
	}
	other, m, err := v.Now().Index.Resolve(r.Words)
	if err == nil && m.How != flavor.MatchFuzzy && kept.Version == 0 {
		return house.Edit{}, flavor.Invalid("words", r.Words, "%q means %s already; use other words", fault.Quotable(r.Words), other.Name)
	}
	return house.Put(house.Name{ID: id, Written: r.Words, Ingredient: p.ID}, kept.Version), nil
}

// unknownKind returns the fault for an unknown ingredient, with suggestions.
func unknownKind(kind string, err error) error {
	var unknown *flavor.DataFault
	if !errors.As(err, &unknown) {
		return err
	}
	f := &flavor.DataFault{Kind: flavor.ErrUnknown, Location: "kind", Value: kind, Suggest: unknown.Suggest}
	f.Message = "no ingredient is called " + fault.Quotable(kind)
	if len(f.Suggest) > 0 {
		f.Message += "; nearest: " + flavor.JoinOr(f.Suggest)
	}
	return f
}
