package evening

import (
	"context"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/outs"
	"counterpour/flavor/guest"
)

// coverForGuest covers the drinks of which a pour is there and is not for the guest, as it would
// if the bottle had run out, so that what the guest can be poured is told as such. A drink that
// only a label keeps from the guest waits for it to be read, and one without its alcohol is another
// drink, which is asked for by itself.
func coverForGuest(ctx context.Context, bar Kitchen, r *Request, a *Answer) error {
	if r.Guest.NoAlcohol || len(r.Stock) == 0 {
		return nil
	}
	var menu []*flavor.Spec
	var gone []*flavor.Profile
	for i := range a.Drinks {
		d := &a.Drinks[i]
		if d.State != NotFor || d.Touched != nil || d.Barred == nil || len(d.Unread) > 0 {
			continue
		}
		if tooStrong, err := strength(bar, d.Spec, &r.Guest); err != nil {
			return err
		} else if tooStrong != "" || r.Guest.BarredLaid(r.Guest.Serve(d.Spec)) != nil {
			continue
		}
		menu = append(menu, d.Spec)
		gone = append(gone, barredPours(d.Spec, &r.Guest)...)
	}
	if len(menu) == 0 {
		return nil
	}
	gone = slices.Concat(gone, r.Out, a.NotKept)
	found, err := bar.Outs(ctx, outs.Request{Specs: menu, Out: gone, Stock: r.Stock, Guest: r.Guest, Tastings: r.Tastings, Parts: r.Parts})
	if err != nil {
		return err
	}
	for i := range found.Touched {
		t := &found.Touched[i]
		if d := a.Of(t.Spec); d != nil && keeps(t) {
			t.Missing = nil // it is there, and had to go for the guest: Removed has it
			d.State, d.Touched, d.Because, d.Barred = Covered, t, "", nil
		}
	}
	return nil
}

// barredPours are the pours of a drink that are not for a guest.
func barredPours(s *flavor.Spec, g *guest.Guest) (out []*flavor.Profile) {
	for i := range s.Pours {
		if p := s.Pours[i].Profile; !g.MayHave(p) {
			out = append(out, p)
		}
	}
	return out
}

// keeps reports whether a cover, or leaving out what went, keeps a drink.
func keeps(t *outs.Touched) bool {
	return Without(t.LeftOut, Chosen(t)) != nil || t.Chosen >= 0 && (t.Near || t.NotSearched)
}
