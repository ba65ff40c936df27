package main

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"sync"

	"counterpour/data"
	"counterpour/flavor"
	"counterpour/webui"
)

// till is a house in memory: its menu and stock as they were loaded, and its
// outs as they are marked. What is marked is gone when the program ends.
type till struct {
	house *data.House
	menu  []webui.HouseSpec

	mu        sync.Mutex
	out       map[string]bool
	listeners map[chan struct{}]bool
}

var _ webui.House = (*till)(nil)

func newTill(h *data.House) *till {
	t := &till{house: h, out: map[string]bool{}, listeners: map[chan struct{}]bool{}}
	for _, s := range h.Specs {
		// The names of a menu differ even so.
		slug := strings.ReplaceAll(flavor.NormaliseName(s.Name), " ", "-")
		t.menu = append(t.menu, webui.HouseSpec{Slug: slug, Family: s.Family, Spec: s.Spec})
	}
	for _, p := range h.Out {
		t.out[p.ID] = true
	}
	return t
}

func (t *till) About() string { return t.house.Name + ". " + t.house.Description }

func (t *till) Menu(context.Context) ([]webui.HouseSpec, error) { return slices.Clone(t.menu), nil }

func (t *till) Stock(context.Context) ([]*flavor.Profile, error) {
	return slices.Clone(t.house.Stock), nil
}

func (t *till) Find(_ context.Context, q webui.SpecQuery) ([]webui.HouseSpec, error) {
	var found []webui.HouseSpec
	for _, s := range t.menu {
		if holds(&s, &q) {
			found = append(found, s)
		}
	}
	return found, nil
}

// holds reports whether a query lets a drink through. Every word must be in the
// name of the drink or of an ingredient.
func holds(s *webui.HouseSpec, q *webui.SpecQuery) bool {
	if q.Family != "" && q.Family != s.Family {
		return false
	}
	text := flavor.NormaliseName(s.Spec.Name)
	for _, p := range s.Spec.Pours {
		if !p.Profile.Avoids(q.Avoid) {
			return false
		}
		text += " " + flavor.NormaliseName(p.Profile.Name)
		for _, a := range p.Profile.Aliases {
			text += " " + flavor.NormaliseName(a)
		}
	}
	for _, word := range strings.Fields(flavor.NormaliseName(q.Text)) {
		if !strings.Contains(text, word) {
			return false
		}
	}
	return true
}

func (t *till) Outs(context.Context) ([]string, error) {
	t.mu.Lock()
	defer t.mu.Unlock()
	var ids []string
	for id := range t.out {
		ids = append(ids, id)
	}
	slices.Sort(ids)
	return ids, nil
}

func (t *till) Mark(_ context.Context, id string, out bool) error {
	if !slices.ContainsFunc(t.house.Stock, func(p *flavor.Profile) bool { return p.ID == id }) {
		return &flavor.Fault{Kind: flavor.ErrUnknown, Location: "id", Value: id,
			Message: fmt.Sprintf("the house does not keep %q; mark something that it keeps", id)}
	}
	t.mu.Lock()
	defer t.mu.Unlock()
	if t.out[id] == out {
		return nil
	}
	if out {
		t.out[id] = true
	} else {
		delete(t.out, id)
	}
	for c := range t.listeners {
		select {
		case c <- struct{}{}:
		default: // it has not yet looked at the change before, and will see this one too
		}
	}
	return nil
}

func (t *till) Changes(ctx context.Context) (<-chan struct{}, error) {
	c := make(chan struct{}, 1)
	t.mu.Lock()
	t.listeners[c] = true
	t.mu.Unlock()
	context.AfterFunc(ctx, func() {
		// Mark sends under the same lock, so never into a closed channel.
		t.mu.Lock()
		defer t.mu.Unlock()
		delete(t.listeners, c)
		close(c)
	})
	return c, nil
}
