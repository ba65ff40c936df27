package main

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"slices"
	"sync"
	"time"

	"counterpour/api/service"
	"counterpour/flavor"
	"counterpour/flavor/drill"
	"counterpour/flavor/template"
	"counterpour/webui"
)

// coach makes and grades rounds over a kitchen. It remembers nobody.
type coach struct {
	kitchen func() *service.Kitchen
	now     func() time.Time

	making sync.Mutex
	of     *service.Kitchen // that made was made for
	made   *drill.Trainer
}

var _ webui.Trainer = (*coach)(nil)

func newCoach(kitchen func() *service.Kitchen) *coach {
	return &coach{kitchen: kitchen, now: time.Now}
}

// trainer is made by the first who asks, and again once the house keeps other
// things or has another palate.
func (c *coach) trainer() (*drill.Trainer, error) {
	c.making.Lock()
	defer c.making.Unlock()
	k := c.kitchen()
	if c.of != nil && c.of.Set == k.Set && slices.Equal(c.of.House.Stock, k.House.Stock) {
		return c.made, nil
	}
	t, err := drill.NewTrainer(k.Mixer, k.Judge, k.Set, k.Finder, k.Proven, k.House.Stock)
	if err == nil {
		c.of, c.made = k, t
	}
	return t, err
}

// Next tries one axis after the other where the wish leaves it open, since not
// every one can be spoilt in the size asked for.
func (c *coach) Next(l drill.Learner, w webui.RoundWish) (*drill.Round, error) {
	t, err := c.trainer()
	if err != nil {
		return nil, err
	}
	now := c.now()
	kind := w.Kind
	if kind == "" {
		kind = l.Next(now, 0).Kind
	}
	skills := skillsToTry(l, kind, now)
	if w.HasAxis {
		skills = slices.DeleteFunc(skills, func(s drill.Skill) bool { return s.Axis != w.Axis.String() })
	}
	err = fmt.Errorf("no skill of kind %q", kind)
	for _, s := range skills {
		axis, _ := template.ParseAxis(s.Axis)
		r := drill.RoundRequest{Kind: kind, Axis: axis, Size: w.Size, Seed: rand.Uint64()}
		if r.Size == 0 {
			r.Size = s.Stairs.Next()
		}
		var round *drill.Round
		if round, err = t.Round(r); err == nil {
			return round, nil
		}
		if fault := (*flavor.Fault)(nil); !errors.As(err, &fault) {
			return nil, err
		}
	}
	return nil, err
}

// skillsToTry lists the skills of a kind: in any order, so that no round gives
// its axis away, but those that are due or new before the rest.
func skillsToTry(l drill.Learner, kind drill.Kind, now time.Time) []drill.Skill {
	var first, rest []drill.Skill
	all := drill.Skills()
	for _, i := range rand.Perm(len(all)) {
		s := all[i]
		if s.Kind != kind {
			continue
		}
		if at := slices.IndexFunc(l.Skills, func(o drill.Skill) bool { return o.Kind == s.Kind && o.Axis == s.Axis }); at >= 0 {
			s = l.Skills[at]
		}
		if s.Rounds == 0 || !s.Repeat.Due.After(now) {
			first = append(first, s)
		} else {
			rest = append(rest, s)
		}
	}
	return append(first, rest...)
}

func (c *coach) Again(r drill.RoundRequest) (*drill.Round, error) {
	t, err := c.trainer()
	if err != nil {
		return nil, err
	}
	return t.Round(r)
}

func (c *coach) Grade(r *drill.Round, a drill.Answer) (*drill.Grade, error) {
	t, err := c.trainer()
	if err != nil {
		return nil, err
	}
	return t.Grade(r, a)
}

func (c *coach) Flight(r drill.FlightRequest) (*drill.Flight, error) {
	t, err := c.trainer()
	if err != nil {
		return nil, err
	}
	return t.Flight(r)
}

func (c *coach) Card(family string, specs []template.Labelled) (*drill.Card, error) {
	t, err := c.trainer()
	if err != nil {
		return nil, err
	}
	return t.Card(family, specs)
}
