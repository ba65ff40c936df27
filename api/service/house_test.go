package service

import (
	"context"
	"errors"
	"fmt"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/service/kitchen"
	"counterpour/data/house"
	"counterpour/data/house/storetest"
	"counterpour/flavor"
	"counterpour/flavor/lookup"
	"counterpour/index"
)

// muted is a store whose feed is in the test's hands, and whose records may be
// out of reach.
type muted struct {
	house.Store
	feed  chan house.Change
	fails func()
}

func (m muted) Subscribe(context.Context) (<-chan house.Change, error) { return m.feed, nil }

func (m muted) List(ctx context.Context, kinds ...house.Kind) ([]house.Entry, error) {
	m.fails()
	return m.Store.List(ctx, kinds...)
}

func (m muted) Changes(ctx context.Context, after int64, limit int) ([]house.Change, error) {
	m.fails()
	return m.Store.Changes(ctx, after, limit)
}

// A feed that ends or panics is reported; a closed venue is not lost.
func TestLostFeedIsReported(t *testing.T) {
	for name, end := range map[string]func(*Venue, muted, *atomic.Bool){
		"the feed ends":    func(_ *Venue, m muted, _ *atomic.Bool) { close(m.feed) },
		"taking up panics": func(_ *Venue, m muted, breaks *atomic.Bool) { breaks.Store(true); m.feed <- house.Change{Seq: 99} },
	} {
		var breaks atomic.Bool
		m := muted{Store: storetest.Memory(t), feed: make(chan house.Change), fails: func() {
			if breaks.Load() {
				panic("the records are out of reach")
			}
		}}
		v := open(t, m)
		require.NoError(t, v.Ready(), name)
		end(v, m, &breaks)
		assert.Eventually(t, func() bool { return errors.Is(v.Ready(), ErrLost) }, patience, time.Millisecond, name)
	}
	v := open(t, storetest.Memory(t))
	v.Close()
	assert.NoError(t, v.Ready(), "it was closed")
}

// The fault of a bottle stays until it is mended, whatever else changes.
func TestFaultsStayUntilMended(t *testing.T) {
	v := open(t, storetest.Memory(t))
	put(t, v.Store(), 0, house.Bottle{ID: "lost", Name: "Lost", Ingredient: "nothing-known", SizeML: 700, Stock: 1})
	require.Len(t, v.Now().Faults, 1)
	put(t, v.Store(), 0, drink(t, v, sour))
	require.Len(t, v.Now().Menu, 1)
	require.Len(t, v.Now().Faults, 1, "the shelf is as it was, and so is its fault")
	_, err := v.Store().Write(t.Context(), someone, house.Remove(house.Ref{Kind: house.KindBottle, ID: "lost"}, 1))
	require.NoError(t, err)
	assert.Empty(t, v.Now().Faults)
}

// With a closed index every request fails; none is answered as if the ingredient did not
// exist.
func TestClosedIndexFailsEveryRequest(t *testing.T) {
	s := *testHouse(t)
	closed := *s.Kitchen
	s.Kitchen = &closed
	var err error
	closed.Index, err = index.New(closed.Catalogue.Profiles()[:3])
	require.NoError(t, err)
	require.NoError(t, closed.Index.Close())
	for name, r := range map[string]OutsRequest{
		"a bottle": {Out: []string{"falernum"}, Parts: 2},
		"a drink":  {Out: nil, Menu: []kitchen.Fields{{Pours: []kitchen.Line{{Ingredient: "gin", Amount: 2, Unit: "oz"}}}}, Parts: 2},
	} {
		_, err := s.Outs(t.Context(), r)
		assert.ErrorIs(t, err, lookup.ErrClosed, name)
	}
}

// A drink of one pour that is out is covered by what can be weighed, and a
// foamer that cannot stops nobody.
func TestCoverOfADrinkOfOnePour(t *testing.T) {
	s := testHouse(t)
	text := "1 egg white\nshake, up"
	a, err := s.Cover(t.Context(), CoverRequest{Draft: Draft{Text: &text}, Missing: []string{"egg white"}, Parts: 1, Limit: 100})
	require.NoError(t, err)
	for _, c := range a.Result.Covers {
		_, err := s.Judge.Score(&c.Spec)
		assert.NoError(t, err, c.Text)
	}
	b, err := s.Outs(t.Context(), OutsRequest{Out: []string{"egg white"}, Parts: 2,
		Menu: []kitchen.Fields{{Pours: []kitchen.Line{{Ingredient: "egg white", Amount: 1, Unit: "piece"}}}}})
	require.NoError(t, err)
	assert.Len(t, b.Result.Touched, 1)
}

// What cannot be weighed is refused wherever a draft is read.
func TestDraftWithNothingToWeigh(t *testing.T) {
	s := testHouse(t)
	foam := "1 oz soy lecithin foamer\nshake, up"
	other := honeySour
	for name, err := range map[string]error{
		"score": second(s.Score(t.Context(), ScoreRequest{Draft: Draft{Text: &foam}})),
		"cover": second(s.Cover(t.Context(), CoverRequest{Draft: Draft{Text: &foam}, Missing: []string{"soy lecithin foamer"}, Parts: 1, Limit: 1})),
		"riff":  second(s.Riff(t.Context(), RiffRequest{Draft: Draft{Text: &foam}, Limit: 1})),
		"walk":  second(s.Walk(t.Context(), WalkRequest{From: Draft{Text: &foam}, To: Draft{Text: &other}, Steps: 1, PourML: 60})),
		"menu":  second(s.Outs(t.Context(), OutsRequest{Out: []string{"gin"}, Parts: 1, Menu: []kitchen.Fields{{Pours: []kitchen.Line{{Ingredient: "soy-lecithin-foamer", Amount: 1, Unit: "oz"}}}}})),
		"bench": second(s.ReadRest(foam)),
	} {
		assert.ErrorIs(t, err, flavor.ErrInvalid, name)
		assert.ErrorContains(t, err, "to weigh", name)
	}
}

func second[T any](_ T, err error) error { return err }

// Several that are missing go together, each once, and none of them comes back.
func TestCoverOfSeveral(t *testing.T) {
	s := testHouse(t)
	text := falernumSour
	a, err := s.Cover(t.Context(), CoverRequest{Draft: Draft{Text: &text}, Missing: []string{"falernum", "orgeat", "Falernum"}, Parts: 2, Limit: 5})
	require.NoError(t, err)
	require.Len(t, a.Missing, 2)
	assert.Equal(t, "falernum", a.Missing[0].ID)
	assert.Equal(t, "orgeat", a.Missing[1].ID)
	require.NotEmpty(t, a.Result.Covers)
	for _, c := range a.Result.Covers {
		for _, p := range c.Spec.Pours {
			assert.NotContains(t, []string{"falernum", "orgeat"}, p.Profile.ID, c.Text)
		}
	}
	_, err = s.Cover(t.Context(), CoverRequest{Draft: Draft{Text: &text}, Missing: nil, Parts: 2, Limit: 5})
	assert.ErrorIs(t, err, flavor.ErrInvalid)
}

func TestStockList(t *testing.T) {
	s := testHouse(t)
	listed, err := s.StockList("# the back bar\nSimple syrup\n\nhoney syrup # runny\r\ngin")
	require.NoError(t, err)
	assert.Equal(t, []string{"simple-syrup", "honey-syrup", "london-dry-gin"}, listed.IDs)
	assert.Empty(t, listed.Unread)
	assert.Empty(t, listed.Told)
	listed, err = s.StockList("# nothing yet\n")
	require.NoError(t, err)
	assert.Equal(t, []string{}, listed.IDs, "an empty list is no missing one: nothing may be poured")
	listed, err = s.StockList("gin\nmoon dust\n\nsun dust")
	require.NoError(t, err, "what is known is poured")
	assert.Equal(t, []string{"london-dry-gin"}, listed.IDs)
	require.Len(t, listed.Unread, 2)
	assert.Equal(t, "line 2", listed.Unread[0].Location)
	assert.Equal(t, "line 4", listed.Unread[1].Location)
	_, err = s.StockList("moon dust\nsun dust")
	assert.Len(t, flavor.DataFaultsOf(err), 2, "a list that names nothing is none")
	listed, err = s.StockList("old bourbon\nrum from Jamaica\nreserve walnut gin\nlemon\nfruity vodka")
	require.NoError(t, err, "words that tell no bottle apart are passed over")
	assert.Equal(t, []string{"bourbon", "aged-jamaican-rum", "lemon"}, listed.IDs)
	assert.Equal(t, []string{"line 1: \"old bourbon\" is read as bourbon", "line 2: \"rum from Jamaica\" is read as aged Jamaican rum"}, listed.Told)
	assert.Len(t, listed.Unread, 2, "what a guest may have to avoid, or taste, is asked")
}

// A single name with a misspelling is not guessed: the answer asks what it means.
func TestMisspeltBottlesAreNotGuessed(t *testing.T) {
	s := testHouse(t)
	for written, means := range map[string]string{"lemmon juice": "lemon juice", "swete vermouth": "sweet vermouth"} {
		_, _, err := s.Index.Resolve(written)
		require.NoError(t, err, "a draft forgives it")
		_, err = s.Named(written)
		var fault *flavor.DataFault
		require.ErrorAs(t, err, &fault, written)
		assert.ErrorIs(t, fault, flavor.ErrUnknown)
		assert.Equal(t, []string{means}, fault.Suggest)
		listed, err := s.StockList("gin\n" + written)
		require.NoError(t, err)
		assert.Equal(t, []string{"london-dry-gin"}, listed.IDs)
		require.Len(t, listed.Unread, 1)
		assert.ErrorIs(t, listed.Unread[0], flavor.ErrUnknown)
	}
	p, err := s.Named("lemon juice")
	require.NoError(t, err)
	assert.Equal(t, "lemon-juice", p.ID)
}

// The cost of the menu is that of its drinks, and each pour's part adds up.
func TestCost(t *testing.T) {
	v, _ := openDemo(t)
	s := v.Now()
	a, err := s.Cost(t.Context(), CostRequest{})
	require.NoError(t, err)
	require.Len(t, a.Drinks, len(s.Menu))
	for _, d := range a.Drinks {
		var sum, part float64
		for _, share := range d.Shares {
			sum += share.Amount
			part += share.Part
		}
		assert.InDelta(t, d.Cost.Amount, sum, 1e-9, d.Drink.Slug)
		assert.InDelta(t, 1, part, 1e-9, d.Drink.Slug)
	}
	one, err := s.Cost(t.Context(), CostRequest{Drinks: []string{a.Drinks[3].Drink.Slug}})
	require.NoError(t, err)
	assert.Equal(t, a.Drinks[3], one.Drinks[0])
	_, err = s.Cost(t.Context(), CostRequest{Drinks: []string{"moon dust"}})
	assert.ErrorIs(t, err, flavor.ErrUnknown)
}

// Prices in two currencies cannot be added up, and nothing is said to be free.
func TestCostInTwoCurrencies(t *testing.T) {
	v := open(t, storetest.Memory(t))
	price := 20.0
	put(t, v.Store(), 0, house.Bottle{ID: "gin", Name: "gin", Ingredient: "london-dry-gin", SizeML: 700, Stock: 1, Price: &price, Currency: "EUR"},
		house.Bottle{ID: "rum", Name: "rum", Ingredient: "white-rum", SizeML: 700, Stock: 1, Price: &price, Currency: "USD"}, drink(t, v, sour))
	_, err := v.Now().Cost(t.Context(), CostRequest{})
	assert.ErrorIs(t, err, flavor.ErrInvalid)
	b, err := v.Now().Batch(t.Context(), BatchRequest{Draft: called("quay sour"), Servings: 10})
	require.NoError(t, err, "how much to pour does not hang on what it costs")
	assert.Zero(t, b.Cost.Amount)
	assert.Contains(t, b.Cost.Unpriced, "london-dry-gin")
}

// called is the drink of the house of a name.
func called(name string) Draft { return Draft{Drink: &name} }

func TestBatch(t *testing.T) {
	v, _ := openDemo(t)
	s := v.Now()
	name := s.Menu[0].Spec.Name
	a, err := s.Batch(t.Context(), BatchRequest{Draft: called(name), Servings: 12})
	require.NoError(t, err)
	assert.InDelta(t, 12*a.Batch.ServingML, a.Batch.TotalML, 1e-9)
	keg, err := s.Batch(t.Context(), BatchRequest{Draft: called(name), KegLitres: 19})
	require.NoError(t, err)
	const unfilled = 0.01 // of the keg: what the rounding of the lines to the marks of a jug may take
	assert.InEpsilon(t, 19000, keg.Batch.TotalML, unfilled)
	assert.LessOrEqual(t, keg.Batch.Sum.JugML, 1.002*19000)
	for place, r := range map[string]BatchRequest{
		"servings":   {Draft: called(name)},
		"bottle_ml":  {Draft: called(name), BottleML: -1},
		"keg_litres": {Draft: called(name), KegLitres: 1e9},
		"from":       {Draft: called(name), Servings: 1, Place: "cellar"},
		"drink":      {Draft: called("moon dust"), Servings: 1},
	} {
		_, err := s.Batch(t.Context(), r)
		faults := flavor.DataFaultsOf(err)
		require.NotEmpty(t, faults, place)
		assert.Equal(t, place, faults[0].Location)
	}
}

// A drink is marked as right as it is now, by its name; the mark comes off again.
func TestRight(t *testing.T) {
	v := open(t, storetest.Memory(t))
	put(t, v.Store(), 0, drink(t, v, sour))
	require.NoError(t, v.Right(t.Context(), someone, RightRequest{Drink: "quay sour"}))
	p := v.Now().Palate()
	require.Len(t, p.Right, 1)
	assert.Equal(t, RightDrink{"quay-sour", "Quay Sour", 1}, p.Right[0])
	require.Len(t, p.Palates, 1)
	assert.Equal(t, "sour", p.Palates[0].ID)
	require.NoError(t, v.Right(t.Context(), someone, RightRequest{Drink: "quay-sour", Undo: true}))
	assert.Empty(t, v.Now().Palate().Right)
	assert.ErrorIs(t, v.Right(t.Context(), someone, RightRequest{Drink: "quay-sour", Undo: true}), flavor.ErrInvalid)
	assert.ErrorIs(t, v.Right(t.Context(), someone, RightRequest{Drink: "moon dust"}), flavor.ErrUnknown)
}

// Later searches learn from a cover that was tasted.
func TestTaste(t *testing.T) {
	v := open(t, storetest.Memory(t))
	put(t, v.Store(), 0, drink(t, v, sour))
	served := "Quay Sour\n2 oz London dry gin\n3/4 oz lemon juice\n3/4 oz honey syrup\nshake, up\n"
	require.NoError(t, v.Taste(t.Context(), someone, TasteRequest{Served: Draft{Text: &served}, Missing: "simple syrup", Reception: house.ReceptionSentBack}))
	tastings := v.Now().Tastings
	require.Len(t, tastings, 1)
	assert.Equal(t, "simple-syrup", tastings[0].Missing)
	assert.Equal(t, []string{"honey-syrup"}, tastings[0].Parts)
	assert.Zero(t, tastings[0].Liked)

	nameless, strange, fine, off := honeySour, "Sand Sour\n"+honeySour, 7.0, 11.0
	for name, r := range map[string]TasteRequest{
		"a name":  {Served: Draft{Text: &nameless}, Missing: "honey syrup", Reception: house.ReceptionKept},
		"no spec": {Served: Draft{Text: &strange}, Missing: "honey syrup", Reception: house.ReceptionKept},
		"verdict": {Served: Draft{Text: &served}, Missing: "honey syrup"},
		"both":    {Served: Draft{Text: &served}, Missing: "honey syrup", Reception: house.ReceptionKept, Score: &fine},
		"missing": {Served: Draft{Text: &served}, Reception: house.ReceptionKept},
		"score":   {Served: Draft{Text: &served}, Missing: "honey syrup", Score: &off},
	} {
		assert.NotEmpty(t, flavor.DataFaultsOf(v.Taste(t.Context(), someone, r)), name)
	}
}

// listed is a store that counts how often its records are read.
type listed struct {
	house.Store
	times atomic.Int64
}

func (l *listed) List(ctx context.Context, kinds ...house.Kind) ([]house.Entry, error) {
	l.times.Add(1)
	return l.Store.List(ctx, kinds...)
}

// Any number of writes that wait for a snapshot share the next one, and each sees its own
// change in it.
func TestWritesWaitForOneSnapshot(t *testing.T) {
	const writes = 20
	s := storetest.Memory(t)
	counted := &listed{Store: s}
	var looks atomic.Int64
	m := muted{Store: counted, feed: make(chan house.Change), fails: func() {
		if looks.Add(1) != 2 { // the first is that of opening
			return
		}
		assert.Eventually(t, func() bool {
			done, err := s.Changes(t.Context(), 0, 2*writes)
			return err == nil && len(done) == writes
		}, patience, time.Millisecond, "all are durable before the second is made")
	}}
	seldom := pace{every: time.Hour, answer: time.Hour, age: time.Hour} // nobody asks the store but the writes
	v, err := openAt(t.Context(), seldom, testKitchen(t), m, About{}, nil)
	require.NoError(t, err)
	t.Cleanup(v.Close)
	t.Cleanup(func() { close(m.feed) }) // before the venue, which follows it to its end
	var all sync.WaitGroup
	for i := range writes {
		all.Go(func() {
			id := fmt.Sprint("gin-", i)
			done, err := v.Store().Write(t.Context(), someone, house.Put(house.Bottle{ID: id, Name: id, Ingredient: "london-dry-gin", SizeML: 700, Stock: 1}, 0))
			if assert.NoError(t, err) {
				assert.GreaterOrEqual(t, v.Now().upTo, done[0].Seq, "it is known once it is acknowledged")
			}
		})
	}
	all.Wait()
	assert.Equal(t, int64(2), counted.times.Load(), "once when it was opened, and once for all that was written")
}
