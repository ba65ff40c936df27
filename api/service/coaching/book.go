package coaching

import (
	"cmp"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"sync"

	"golang.org/x/text/cases"
	"golang.org/x/text/unicode/norm"

	"counterpour/data/house"
	"counterpour/flavor/drill"
)

// book is the training on record in the house, grouped by person. It caches what it has
// read, asks the store only for later changes, and recomputes a learner only if their own
// records changed.
type book struct {
	store house.Store

	mu       sync.Mutex
	read     bool
	seq      int64                        // of the last change read
	of       map[string]string            // record id to person
	rounds   map[string]map[string]played // person to record id to record
	learners map[string]drill.Learner     // cache by person; a change to their records removes the entry
}

// played is one record of training.
type played struct {
	name    string // as spelt in the record
	outcome drill.Outcome
	seq     int64
}

func newBook(s house.Store) *book {
	return &book{store: s, of: map[string]string{}, rounds: map[string]map[string]played{}, learners: map[string]drill.Learner{}}
}

// learner returns the learner with a name. A learner without records has only the name.
func (b *book) learner(ctx context.Context, name string) (drill.Learner, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	if err := b.refresh(ctx); err != nil {
		return drill.Learner{}, err
	}
	l := b.made(personKey(name))
	l.Name = name
	return l, nil
}

// team returns everybody on record, sorted by name.
func (b *book) team(ctx context.Context) ([]drill.Learner, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	if err := b.refresh(ctx); err != nil {
		return nil, err
	}
	var out []drill.Learner
	for _, who := range slices.Sorted(maps.Keys(b.rounds)) {
		out = append(out, b.made(who))
	}
	return out, nil
}

// made returns the learner of a person, recomputed if their records changed.
func (b *book) made(who string) drill.Learner {
	if l, ok := b.learners[who]; ok {
		return l
	}
	lines := slices.SortedFunc(maps.Values(b.rounds[who]), func(x, y played) int {
		return cmp.Or(x.outcome.At.Compare(y.outcome.At), cmp.Compare(x.seq, y.seq))
	})
	if len(lines) == 0 {
		return drill.Learner{}
	}
	outcomes := make([]drill.Outcome, len(lines))
	for i := range lines {
		outcomes[i] = lines[i].outcome
	}
	l := drill.Replay(lines[len(lines)-1].name, outcomes)
	b.learners[who] = l
	return l
}

// changesRead is how many changes are read at a time.
const changesRead = 1000

// refresh reads what has changed in the store. The first call reads the training records
// themselves, since they are few among the changes in the log.
func (b *book) refresh(ctx context.Context) error {
	if !b.read {
		entries, err := b.store.List(ctx, house.KindTraining)
		if err != nil {
			return err
		}
		for _, e := range entries {
			b.put(e.Item.Ref(), e.Item, e.Seq)
			b.seq = max(b.seq, e.Seq)
		}
		b.read = true
	}
	for {
		changes, err := b.store.Changes(ctx, b.seq, changesRead)
		if err != nil {
			return err
		}
		for _, c := range changes {
			if c.Ref.Kind == house.KindTraining {
				b.put(c.Ref, c.Item, c.Seq)
			}
			b.seq = c.Seq
		}
		if len(changes) < changesRead {
			return nil
		}
	}
}

// put adds or replaces a record, or deletes it if item is nil.
func (b *book) put(ref house.Ref, item house.Item, seq int64) {
	if who, ok := b.of[ref.ID]; ok {
		delete(b.of, ref.ID)
		delete(b.learners, who)
		if delete(b.rounds[who], ref.ID); len(b.rounds[who]) == 0 {
			delete(b.rounds, who)
		}
	}
	record, ok := item.(house.Training)
	if !ok {
		return
	}
	outcome, ok := outcomeOf(&record)
	if !ok {
		return
	}
	who := personKey(strings.Join(strings.Fields(record.Person), " "))
	if b.rounds[who] == nil {
		b.rounds[who] = map[string]played{}
	}
	b.of[ref.ID], b.rounds[who][ref.ID] = who, played{record.Person, outcome, seq}
	delete(b.learners, who)
}

// personKey returns a key that is equal for two names of the same person: case and the
// Unicode encoding of accents do not count.
func personKey(name string) string { return cases.Fold().String(norm.NFC.String(name)) }

// recordOf returns a graded round as the house stores it. The id is derived from the
// person and the round, so a round that is sent twice is stored once.
func recordOf(name string, outcome drill.Outcome, r *drill.Round, g *drill.Grade, given string) house.Training {
	points := g.Points
	return house.Training{ID: roundID(name, &r.Request), At: outcome.At, Person: name, Drill: drillID(&r.Request),
		Question: r.Question, Wanted: g.Solution, Given: given, Right: g.Right, Score: &points,
		Kind: string(outcome.Kind), Axis: outcome.Axis, SizeJND: &outcome.Size, Quality: &outcome.Quality}
}

// outcomeOf reads a learner's outcome from a record. ok is false if the record holds none,
// as in records of an earlier version.
func outcomeOf(t *house.Training) (drill.Outcome, bool) {
	if t.Kind == "" || t.SizeJND == nil || t.Quality == nil {
		return drill.Outcome{}, false
	}
	return drill.Outcome{Kind: drill.Kind(t.Kind), Axis: t.Axis, Size: *t.SizeJND, Right: t.Right, Quality: *t.Quality, At: t.At}, true
}

func roundID(name string, r *drill.RoundRequest) string {
	h := sha256.New()
	fmt.Fprintf(h, "%s\n%s", personKey(name), r.Bytes())
	return "round-" + hex.EncodeToString(h.Sum(nil)[:12])
}

// drillID encodes the request of a round, from which the same round can be made again.
func drillID(r *drill.RoundRequest) string {
	id := fmt.Sprintf("%s:%v:%s:%s", r.Kind, r.Axis, strconv.FormatFloat(r.Size, 'g', -1, 64), strconv.FormatUint(r.Seed, 36))
	if r.Avoid != 0 {
		id += ":" + strconv.FormatUint(uint64(r.Avoid), 36)
	}
	if r.Menu {
		id += ":menu"
	}
	return id
}
