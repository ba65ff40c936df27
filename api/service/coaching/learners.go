package coaching

import (
	chain "container/list"
	"context"
	"errors"
	"sync"

	"counterpour/data/house"
	"counterpour/flavor/drill"
)

// Trainee is who trains: by the name they gave, or else by a word that says nothing
// of them. The zero trainee has neither yet.
type Trainee struct{ Name, Word string }

// Learners remembers who answered how: those who gave a name in the house, the
// others in memory. It is safe for concurrent use.
type Learners struct {
	book   *book
	guests *guests
}

// NewLearners returns the learners of a house.
func NewLearners(s house.Store) *Learners {
	return &Learners{book: newBook(s), guests: newGuests()}
}

// Of returns what is known of a trainee, empty if nothing is.
func (l *Learners) Of(ctx context.Context, who Trainee) (drill.Learner, error) {
	if who.Name != "" {
		return l.book.learner(ctx, who.Name)
	}
	return l.guests.learner(who.Word), nil
}

// Team returns everybody who is on record in the house, by name.
func (l *Learners) Team(ctx context.Context) ([]drill.Learner, error) { return l.book.team(ctx) }

// Note keeps a graded round and what was answered, in words, once for each
// trainee.
func (l *Learners) Note(ctx context.Context, who Trainee, by house.By, r *drill.Round, g *drill.Grade, given string) error {
	result := drill.ResultOf(r, g, by.At.UTC().Round(0))
	if who.Name == "" {
		return l.guests.note(who.Word, r.Request, result)
	}
	_, err := l.book.store.Write(ctx, by, house.Put(recordOf(who.Name, result, r, g, given), 0))
	if errors.Is(err, house.ErrConflict) {
		return nil // it was sent before, and counted then
	}
	return err
}

// mostGuests is how many people without a name are remembered; beyond it, who
// has not answered for longest is forgotten.
const mostGuests = 1000

// guests are learners without a name, gone when the program ends.
type guests struct {
	mu     sync.Mutex
	byWord map[string]*chain.Element // of guest
	recent *chain.List               // the one who answered last in front
}

type guest struct {
	word    string
	learner drill.Learner
	graded  drill.RoundRequest // the last round, so that a page sent twice counts once
}

func newGuests() *guests { return &guests{byWord: map[string]*chain.Element{}, recent: chain.New()} }

func (g *guests) learner(word string) drill.Learner {
	g.mu.Lock()
	defer g.mu.Unlock()
	if e, ok := g.byWord[word]; ok {
		return e.Value.(*guest).learner // After never changes the one before
	}
	return drill.Learner{}
}

func (g *guests) note(word string, r drill.RoundRequest, result drill.Result) error {
	g.mu.Lock()
	defer g.mu.Unlock()
	one := g.guest(word)
	if one.graded == r {
		return nil
	}
	next, err := one.learner.After(result)
	if err == nil {
		one.learner, one.graded = next, r
	}
	return err
}

// guest returns the guest of a word, new or not, and moves them to the front.
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
