package main

import (
	"container/list"
	"errors"
	"fmt"
	"math/rand/v2"
	"slices"
	"sync"
	"time"

	"counterpour/api"
	"counterpour/flavor"
	"counterpour/flavor/drill"
	"counterpour/flavor/template"
	"counterpour/webui"
)

// mostLearners is how many learners are remembered; beyond it, who has not
// answered for longest is forgotten.
const mostLearners = 1000

// coach trains over a kitchen. Learners are kept in memory and gone when the
// program ends.
type coach struct {
	kitchen func() *api.Kitchen
	now     func() time.Time

	making sync.Mutex
	of     *api.Kitchen // that made was made for
	made   *drill.Trainer

	mu       sync.Mutex
	learners map[string]*list.Element // of pupils
	recent   *list.List               // the one who answered last in front
}

// pupil is a learner as the coach remembers them.
type pupil struct {
	id      string
	learner drill.Learner
	graded  drill.RoundRequest // the last round, so that a page sent twice counts once
}

var _ webui.Trainer = (*coach)(nil)

func newCoach(kitchen func() *api.Kitchen) *coach {
	return &coach{kitchen: kitchen, now: time.Now, learners: map[string]*list.Element{}, recent: list.New()}
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
func (c *coach) Next(learner string, w webui.RoundWish) (*drill.Round, error) {
	t, err := c.trainer()
	if err != nil {
		return nil, err
	}
	l, now := c.Learner(learner), c.now()
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

func (c *coach) Grade(learner string, r *drill.Round, a drill.Answer) (*drill.Grade, error) {
	t, err := c.trainer()
	if err != nil {
		return nil, err
	}
	g, err := t.Grade(r, a)
	if err != nil {
		return nil, err
	}
	c.mu.Lock()
	defer c.mu.Unlock()
	p := c.pupil(learner)
	if p.graded == r.Request {
		return g, nil
	}
	if p.learner, err = p.learner.After(r, g, c.now()); err != nil {
		return nil, err
	}
	p.graded = r.Request
	return g, nil
}

// pupil returns the pupil of an id, new or not, and moves them to the front.
func (c *coach) pupil(id string) *pupil {
	if e, ok := c.learners[id]; ok {
		c.recent.MoveToFront(e)
		return e.Value.(*pupil)
	}
	if c.recent.Len() >= mostLearners {
		last := c.recent.Remove(c.recent.Back()).(*pupil)
		delete(c.learners, last.id)
	}
	p := &pupil{id: id}
	c.learners[id] = c.recent.PushFront(p)
	return p
}

func (c *coach) Learner(id string) drill.Learner {
	c.mu.Lock()
	defer c.mu.Unlock()
	if e, ok := c.learners[id]; ok {
		return e.Value.(*pupil).learner // After never changes the one before
	}
	return drill.Learner{}
}
