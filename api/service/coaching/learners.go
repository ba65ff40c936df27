package coaching

import (
	chain "container/list"
	"context"
	"errors"
	"sync"

	"counterpour/data/house"
	"counterpour/flavor/drill"
)

// Trainee identifies who trains: by the name they gave or, without one, by a random word.
// Both are empty for a trainee who has neither yet.
type Trainee struct{ Name, Word string }

// Learners stores the outcomes of trainees: of those with a name in the house's store, of
// the others in memory. It is safe for concurrent use.
type Learners struct {
	book   *book
	guests *guests
}

// NewLearners returns the learners of a house.
func NewLearners(s house.Store) *Learners {
	return &Learners{book: newBook(s), guests: newGuests()}
}

// Of returns what is known of a trainee; the zero learner if nothing is.
func (l *Learners) Of(ctx context.Context, who Trainee) (drill.Learner, error) {
	if who.Name != "" {
		return l.book.learner(ctx, who.Name)
	}
	return l.guests.learner(who.Word), nil
}

// Team returns everybody on record in the house, sorted by name.
func (l *Learners) Team(ctx context.Context) ([]drill.Learner, error) { return l.book.team(ctx) }

// Note stores a graded round and the answer in words. A round that a trainee sends twice
// is stored once.
func (l *Learners) Note(ctx context.Context, who Trainee, by house.By, r *drill.Round, g *drill.Grade, given string) error {
	outcome := drill.OutcomeOf(r, g, by.At.UTC().Round(0))
	if who.Name == "" {
		return l.guests.note(who.Word, r.Request, outcome)
	}
	_, err := l.book.store.Write(ctx, by, house.Put(recordOf(who.Name, outcome, r, g, given), 0))
	if errors.Is(err, house.ErrConflict) {
		return nil // sent twice: already counted
	}
	return err
}

// mostGuests is how many trainees without a name are remembered. Beyond it, the one who
// has not answered for longest is forgotten.
const mostGuests = 1000

// guests holds the learners without a name, in memory only: an LRU list.
type guests struct {
	mu     sync.Mutex
	byWord map[string]*chain.Element // values are *guest
	recent *chain.List               // most recent first
}

type guest struct {
	word    string
	learner drill.Learner
	graded  drill.RoundRequest // the last round, so that a form sent twice counts once
}

func newGuests() *guests { return &guests{byWord: map[string]*chain.Element{}, recent: chain.New()} }

func (g *guests) learner(word string) drill.Learner {
	g.mu.Lock()
	defer g.mu.Unlock()
	if e, ok := g.byWord[word]; ok {
		return e.Value.(*guest).learner // a copy: After returns a new learner
	}
	return drill.Learner{}
}

func (g *guests) note(word string, r drill.RoundRequest, outcome drill.Outcome) error {
	g.mu.Lock()
	defer g.mu.Unlock()
	one := g.guest(word)
	if one.graded == r {
		return nil
	}
	next, err := one.learner.After(outcome)
	if err == nil {
		one.learner, one.graded = next, r
	}
	return err
}

// guest returns the guest with a word, creating one if needed, and moves it to the front
// of the list.
func (g *guests) guest(word string) *guest {
	if e, ok := g.byWord[word]; ok {
		g.recent.MoveToFront(e)
		return e.Value.(*guest)
	}
	if g.recent.Len() >= mostGuests {
		last := g.recent.Remove(g.recent.Back()).(*guest)
		delete(g.byWord, last.word)
	}
	one := &guest{word: word}
	g.byWord[word] = g.recent.PushFront(one)
	return one
}
