package webui

import (
	"context"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/measure"
	"counterpour/flavor/template"
)

// How many substitutes a cover may have, and how many covers are shown.
const (
	coverParts = 2
	coverLimit = 6
)

// coversView is what may be poured for what ran out.
type coversView struct {
	ID, Missing string
	Guest       string   // the allergens that the guest avoids
	Left        []string // other pours that had to go, for the guest's allergy
	Unbalanced  bool
	Covers      []coverView
	Trouble     string // why there can be no cover
}

// coverView is one cover.
type coverView struct {
	Text      string
	New       []string // allergens that the drink did not carry
	Allergens allergensView
	Pours     []coverPour
	Score     string
	Verdict   string
	Before    string
	Steps     string // just-noticeable steps
	Near      string
	Draft     string
}

// coverPour is one pour of the covered drink.
type coverPour struct {
	Amount, Name string
	Mark         string // "instead" or "moved", empty if it stays
}

// covers finds covers for what the form says is missing. A name that is no pour
// of the drink is told in the panel, so that the rest of the answer stands.
func (p *pages) covers(ctx context.Context, text string, s *flavor.Spec, f benchForm) (*coversView, error) {
	missing, found, err := p.bar.Cover(ctx, CoverRequest{Spec: s, Missing: f.Missing, Avoid: f.Avoid,
		Parts: coverParts, Limit: coverLimit})
	if faults := faultsIn(err); len(faults) > 0 {
		return &coversView{Missing: f.Missing, Trouble: sentence(faults[0].Message)}, nil
	}
	if err != nil {
		return nil, err
	}
	v := &coversView{ID: missing.ID, Missing: missing.Name, Guest: list(words(f.Avoid)), Unbalanced: found.Unbalanced}
	for _, r := range found.Removed {
		if r.ID != missing.ID {
			v.Left = append(v.Left, r.Name)
		}
	}
	for i := range found.Covers {
		c := &found.Covers[i]
		v.Covers = append(v.Covers, coverView{Text: sentence(c.Text), New: words(c.NewAllergens),
			Allergens: allergensOf(&c.Spec, f.Avoid), Pours: coverPours(s, c),
			Score: figure(c.Score, 0), Before: figure(found.ScoreBefore, 0),
			Verdict: strings.ToLower(verdictWord(template.VerdictOf(c.Score))),
			Steps:   figure(c.Distance, 1), Near: nearness(c.Distance), Draft: rewrite(text, s, &c.Spec)})
	}
	return v, nil
}

// coverPours lists the whole covered drink and marks what differs.
func coverPours(from *flavor.Spec, c *cover.Cover) []coverPour {
	var out []coverPour
	for i := range c.Spec.Pours {
		pour := &c.Spec.Pours[i]
		v := coverPour{Amount: measure.FormatAmount(pour.Amount, pour.Unit), Name: pour.Profile.Name}
		switch k := pourOf(from.Pours, pour.Profile); {
		case k < 0:
			v.Mark = "instead"
		case from.Pours[k].Amount != pour.Amount || from.Pours[k].Unit != pour.Unit:
			v.Mark = "moved"
		}
		out = append(out, v)
	}
	return out
}
