package webuitest

import (
	"context"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/flavor/mix"
	"counterpour/flavor/riff"
	"counterpour/flavor/riff/precedent"
	"counterpour/flavor/riff/station"
	"counterpour/flavor/riff/useup"
	"counterpour/flavor/riff/walk"
	"counterpour/flavor/riff/wish"
	"counterpour/flavor/sense"
	"counterpour/flavor/template"
)

// The riffs of the fake bar pour another syrup in place of the last one, each of
// what is in stock and for the guest. A seed turns the list; a wish for a longer
// drink is never met; a drink called Slow runs out of time.
func (b Bar) Riff(_ context.Context, r riff.Request) (*riff.Result, error) {
	if r.Spec.Name == "Slow" {
		return nil, context.DeadlineExceeded
	}
	out := &riff.Result{Refused: station.Refused{Off: 2}}
	if slices.ContainsFunc(r.Toward, func(w wish.Wish) bool { return w.Kind == wish.Sense && w.Sense == sense.Volume }) {
		out.Refused.Unmet = 7
		return out, nil
	}
	at := slices.IndexFunc(r.Spec.Pours, func(p flavor.Pour) bool { return p.Profile.Class.Part() == flavor.PartSweetener })
	for _, with := range []*flavor.Profile{Almond, Clove, Sesame} {
		if at < 0 || !slices.Contains(r.Stock, with) || !with.Avoids(r.Guest.Avoid) || with == r.Spec.Pours[at].Profile {
			continue
		}
		s := r.Spec.Clone()
		s.Name, s.Pours[at] = "", flavor.Pour{Profile: with, Amount: 0.5, Unit: flavor.Ounce, ML: 14.8}
		s.Pours[0].Amount, s.Pours[0].ML = 1.75, 51.8
		out.Riffs = append(out.Riffs, riff.Riff{Distance: 3.6, Notice: sense.NoticeOf(3.6, false), Listed: station.Listed{Spec: s, Kind: riff.KindSweetener, Score: 91.7, FamilyID: "sour", Family: "Sour",
			Drink: &mix.Drink{ABV: 13.9, VolumeML: 160}, Name: "London dry gin, " + with.Name + ": sour, up", Why: "it is there"},
			Recipe: "½ oz " + with.Name + " for " + r.Spec.Pours[at].Profile.Name, Effect: "more of it"})
	}
	if n := len(out.Riffs); n > 0 {
		turn := int(r.Seed % uint64(n))
		out.Riffs = slices.Concat(out.Riffs[turn:], out.Riffs[:turn])
	}
	out.Riffs = out.Riffs[:min(len(out.Riffs), r.Limit)]
	return out, nil
}

func (b Bar) Relatives(_ *flavor.Spec, n int, g guest.Guest) ([]precedent.Relative, error) {
	var out []precedent.Relative
	for i, text := range []string{GoodDraft, "Nut Sour\n" + NutDraft} {
		s, err := b.Read(text)
		if err != nil {
			return nil, err
		}
		if slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return !p.Profile.Avoids(g.Avoid) }) || len(out) == n {
			continue
		}
		out = append(out, precedent.Relative{Proven: template.Labelled{Spec: s, Family: "sour", Source: "An old book", Status: template.StatusRecalled}, Distance: float64(i) / 4})
	}
	return out, nil
}

// UseUp pours every bottle in a sour of its own, spare bitters apart.
func (Bar) UseUp(_ context.Context, r useup.Request) (*useup.Result, error) {
	out := &useup.Result{}
	for _, b := range r.Bottles {
		switch {
		case !b.Avoids(r.Guest.Avoid):
			out.Unused = append(out.Unused, useup.Unused{Profile: b, Why: useup.WhyGuest})
		case b == Spare:
			out.Unused = append(out.Unused, useup.Unused{Profile: b, Why: useup.WhyNoPlace})
		case r.Guest.MaxABV > 0 && r.Guest.MaxABV < draftABV:
			out.Unused = append(out.Unused, useup.Unused{Profile: b, Why: useup.WhyLimit})
		case len(out.Drafts) == r.Limit:
			out.Unused = append(out.Unused, useup.Unused{Profile: b, Why: useup.WhyCrowded})
		default:
			unit, amount := flavor.Ounce, 0.5
			if r.System == "ml" {
				unit, amount = flavor.Millilitre, 15
			}
			s := flavor.Spec{Method: flavor.Shake, Service: flavor.Up, Pours: []flavor.Pour{{Profile: Gin, Amount: 2, Unit: flavor.Ounce, ML: 59.1},
				{Profile: Lemon, Amount: 0.75, Unit: flavor.Ounce, ML: 22.2}, {Profile: b, Amount: amount, Unit: unit, ML: 15}}}
			out.Drafts = append(out.Drafts, useup.Draft{Uses: []useup.Use{{Profile: b, ML: 15}}, Listed: station.Listed{Spec: s, Score: 88.8, FamilyID: "sour", Family: "Sour",
				Drink: &mix.Drink{ABV: draftABV, VolumeML: 150}, Name: b.Name + ": sour, up", Text: "Uses some " + b.Name}})
		}
	}
	return out, nil
}

// How strong drafts and the drinks of a walk are, % vol.
const (
	draftABV = 14.1
	walkABV  = 20.0
)

// Walk goes by way of the first drink without its name, and nowhere from a
// drink to itself.
func (Bar) Walk(_ context.Context, r walk.Request) (*walk.Result, error) {
	var labels []*flavor.Profile
	for end, s := range map[string]*flavor.Spec{"from": r.From, "to": r.To} {
		for i := range s.Pours {
			switch p := s.Pours[i].Profile; {
			case r.Guest.LabelDecides(p):
				labels = append(labels, p)
			case !p.Avoids(r.Guest.Avoid):
				return nil, &flavor.DataFault{Kind: flavor.ErrInvalid, Location: end, Message: p.Name + " is not for this guest; find a cover for it first"}
			}
		}
	}
	if r.Guest.MaxABV > 0 && r.Guest.MaxABV < walkABV {
		return nil, &flavor.DataFault{Kind: flavor.ErrInvalid, Location: "from", Message: "this drink is stronger than is asked for"}
	}
	if r.From.Name == r.To.Name {
		return nil, &flavor.DataFault{Kind: flavor.ErrInvalid, Location: "between", Message: "no balanced drinks lie one after another between these two; ask for fewer"}
	}
	middle := r.From.Clone()
	middle.Name = ""
	out := []walk.Stop{{Spec: *r.From, Text: "The first drink"}}
	for range r.Between {
		out = append(out, walk.Stop{Spec: middle, Hop: 2.4, Text: "Half of each"})
	}
	out = append(out, walk.Stop{Spec: *r.To, Hop: 3.1, Text: "All of it"})
	for i := range out {
		out[i].Score, out[i].Drink = 88.8, &mix.Drink{ABV: walkABV, VolumeML: 150}
	}
	out[0].Drink = &mix.Drink{ABV: 20, VolumeML: 40} // smaller than a small pour
	return &walk.Result{Stops: out, Labels: labels}, nil
}
