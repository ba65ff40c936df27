package coaching

import (
	"context"
	"fmt"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/data/house"
	"counterpour/data/house/store"
	"counterpour/data/house/storetest"
	"counterpour/flavor/drill"
	"counterpour/flavor/ratio"
)

var evening = time.Date(2026, 3, 1, 18, 0, 0, 0, time.UTC)

// playRound notes a round of a skill, right or wrong.
func playRound(t require.TestingT, l *Learners, who Trainee, skill drill.Skill, seed uint64, right bool, at time.Time) {
	axis, _ := ratio.ParseAxis(skill.Axis)
	r := &drill.Round{Request: drill.RoundRequest{Kind: skill.Kind, Axis: axis, Size: 6, Seed: seed}, Size: 1 + float64(seed%9), Question: "What?"}
	g := &drill.Grade{Right: right, Solution: "that"}
	if right {
		g.Points = 1
	}
	require.NoError(t, l.Note(context.Background(), who, house.By{Actor: "bar", At: at}, r, g, "this"))
}

// A learner with stored outcomes and one in memory progress equally, on this server and on
// one that starts later.
func TestStoredAndInMemoryLearnersAgree(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		store, err := store.OpenMemory(context.Background())
		require.NoError(r, err)
		defer store.Close()
		l := NewLearners(store)
		named, guest := Trainee{Name: "Ada"}, Trainee{Word: "x"}
		at := evening
		for i := range rapid.IntRange(1, 25).Draw(r, "rounds") {
			skill := rapid.SampledFrom(drill.Skills()).Draw(r, "skill")
			right := rapid.Bool().Draw(r, "right")
			at = at.Add(time.Duration(rapid.IntRange(1, 100000).Draw(r, "seconds")) * time.Second)
			for range rapid.IntRange(1, 2).Draw(r, "sent") {
				playRound(r, l, named, skill, uint64(i), right, at)
				playRound(r, l, guest, skill, uint64(i), right, at)
			}
			if rapid.Bool().Draw(r, "another") {
				playRound(r, l, Trainee{Name: "Bo"}, skill, uint64(i), !right, at)
			}
			want, err := l.Of(context.Background(), guest)
			require.NoError(r, err)
			got, err := l.Of(context.Background(), named)
			require.NoError(r, err)
			assert.Equal(r, want.Skills, got.Skills)
		}
		got, err := l.Of(context.Background(), named)
		require.NoError(r, err)
		again, err := NewLearners(store).Of(context.Background(), named)
		require.NoError(r, err)
		assert.Equal(r, got, again)
	})
}

// Records that somebody else writes, removes or restores count at once, in the order of
// their time and not of their writing.
func TestBookFollowsTheStore(t *testing.T) {
	store, ctx := storetest.Memory(t), t.Context()
	l, skill := NewLearners(store), drill.Skill{Kind: drill.KindFamily}
	playRound(t, l, Trainee{Name: "Ada"}, skill, 2, true, evening.Add(time.Hour))
	ada, err := l.Of(ctx, Trainee{Name: "ada"})
	require.NoError(t, err)
	require.Equal(t, 1, ada.Skills[0].Rounds, "case makes nobody another person")

	playRound(t, NewLearners(store), Trainee{Name: "ADA"}, skill, 1, false, evening)
	ada, err = l.Of(ctx, Trainee{Name: "Ada"})
	require.NoError(t, err)
	assert.Equal(t, 2, ada.Skills[0].Rounds)
	assert.Equal(t, -1, ada.Skills[0].Stairs.Direction, "the right one is the later")
	assert.True(t, ada.Skills[0].Last.Equal(evening.Add(time.Hour)))

	kept, err := house.All[house.Training](ctx, store)
	require.NoError(t, err)
	by := house.By{Actor: "lead", At: evening}
	for _, k := range kept {
		_, err := store.Write(ctx, by, house.Remove(k.Item.Ref(), k.Version))
		require.NoError(t, err)
	}
	team, err := l.Team(ctx)
	require.NoError(t, err)
	assert.Empty(t, team)
	_, err = store.Undo(ctx, by, kept[0].Item.Ref(), 2)
	require.NoError(t, err)
	team, err = l.Team(ctx)
	require.NoError(t, err)
	require.Len(t, team, 1)
	assert.Equal(t, 1, team[0].Skills[0].Rounds)

	before := house.Training{ID: "old", At: evening, Person: "Cy", Drill: "acids", Question: "which is malic?", Right: true}
	_, err = store.Write(ctx, by, house.Put(before, 0))
	require.NoError(t, err)
	team, err = l.Team(ctx)
	require.NoError(t, err)
	assert.Len(t, team, 1, "a record of an earlier version says nothing of a skill")
}

// There are more changes than are read at a time, of which few are training.
func TestBookReadsALongLog(t *testing.T) {
	store, ctx := storetest.Memory(t), t.Context()
	l := NewLearners(store)
	_, err := l.Team(ctx)
	require.NoError(t, err)
	edits := make([]house.Edit, 2*changesRead)
	for i := range edits {
		edits[i] = house.Put(house.Out{Ingredient: fmt.Sprintf("bottle-%d", i), Since: evening}, 0)
	}
	_, err = store.Write(ctx, house.By{Actor: "bar", At: evening}, edits...)
	require.NoError(t, err)
	playRound(t, l, Trainee{Name: "Ada"}, drill.Skill{Kind: drill.KindGuess}, 3, true, evening)
	for _, l := range []*Learners{l, NewLearners(store)} {
		ada, err := l.Of(ctx, Trainee{Name: "Ada"})
		require.NoError(t, err)
		assert.Len(t, ada.Skills, 1)
	}
}

func TestPersonKey(t *testing.T) {
	for _, pair := range [][2]string{{"Ada", "aDA"}, {"José", "Jose\u0301"}, {"Straße", "STRASSE"}} {
		assert.Equal(t, personKey(pair[0]), personKey(pair[1]), "%q", pair)
	}
	assert.NotEqual(t, personKey("José"), personKey("Jose"))
	r := drill.RoundRequest{Kind: drill.KindFault, Axis: ratio.Sour, Size: 6, Seed: 7}
	assert.Equal(t, roundID("Ada", &r), roundID("ada", &r))
	other := r
	other.Seed++
	assert.NotEqual(t, roundID("Ada", &r), roundID("Ada", &other))
	assert.NotEqual(t, roundID("Ada", &r), roundID("Bo", &r))
}

// Who has not answered for longest is forgotten first.
func TestGuestsAreForgotten(t *testing.T) {
	g := newGuests()
	outcome := drill.Outcome{Kind: drill.KindGuess, Size: 6, Right: true, Quality: 5, At: evening}
	for i := range mostGuests {
		require.NoError(t, g.note(fmt.Sprint(i), drill.RoundRequest{Seed: 1}, outcome))
	}
	require.NoError(t, g.note("0", drill.RoundRequest{Seed: 1}, outcome))
	require.NoError(t, g.note("new", drill.RoundRequest{Seed: 1}, outcome))
	assert.Len(t, g.byWord, mostGuests)
	assert.Equal(t, mostGuests, g.recent.Len())
	assert.Equal(t, 1, g.learner("0").Skills[0].Rounds, "a round sent twice counts once")
	assert.Empty(t, g.learner("1").Skills)
}

func TestLearnersConcurrently(t *testing.T) {
	l := NewLearners(storetest.Memory(t))
	var all sync.WaitGroup
	for i := range 8 {
		all.Go(func() {
			for k := range 5 {
				who := Trainee{Name: fmt.Sprint("Ada ", (i+k)%3)}
				if k%2 == 0 {
					who = Trainee{Word: fmt.Sprint((i + k) % 3)}
				}
				playRound(t, l, who, drill.Skill{Kind: drill.KindFamily}, uint64(k), true, evening)
				_, err := l.Of(context.Background(), who)
				assert.NoError(t, err)
				_, err = l.Team(context.Background())
				assert.NoError(t, err)
			}
		})
	}
	all.Wait()
}

// The first page after a start reads every record, the next ones what is new.
func BenchmarkBook(b *testing.B) {
	const people, each = 20, 250
	store := storetest.Memory(b)
	var edits []house.Edit
	for i := range people * each {
		s := drill.Skills()[i%len(drill.Skills())]
		axis, _ := ratio.ParseAxis(s.Axis)
		r := &drill.Round{Request: drill.RoundRequest{Kind: s.Kind, Axis: axis, Size: 6, Seed: uint64(i)}, Size: 6, Question: "What?"}
		g := &drill.Grade{Right: i%3 > 0, Points: 0.6, Solution: "that"}
		edits = append(edits, house.Put(recordOf(fmt.Sprint("Ada ", i%people), drill.OutcomeOf(r, g, evening.Add(time.Duration(i)*time.Minute)), r, g, "this"), 0))
	}
	_, err := store.Write(b.Context(), house.By{Actor: "bar", At: evening}, edits...)
	require.NoError(b, err)
	b.Run("first", func(b *testing.B) {
		for b.Loop() {
			_, err := newBook(store).team(b.Context())
			require.NoError(b, err)
		}
	})
	b.Run("next", func(b *testing.B) {
		book := newBook(store)
		_, err := book.team(b.Context())
		require.NoError(b, err)
		for b.Loop() {
			_, err := book.team(b.Context())
			require.NoError(b, err)
		}
	})
}
