package shared

import (
	"context"
	"errors"
	"reflect"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/cover/outs"
	"counterpour/flavor/guest"
	"counterpour/flavor/weigh"
)

// asked is a menu of one drink, read anew at every call.
func asked() outs.Request {
	gin := &flavor.Profile{ID: "gin", Name: "gin", ABV: flavor.Figure{Value: 40}, AllergenMarks: []flavor.AllergenMark{{Allergen: flavor.Milk, Certainty: flavor.MayContain}}}
	rum := &flavor.Profile{ID: "rum", Name: "rum"}
	return outs.Request{Out: []*flavor.Profile{gin}, Stock: []*flavor.Profile{gin, rum}, Parts: 2,
		Specs: []*flavor.Spec{{Name: "Sour", Method: flavor.Shake, Pours: []flavor.Pour{{Profile: gin, Amount: 2, Unit: flavor.Ounce, ML: 59}}}}}
}

// touch says of every drink that it lost the first bottle.
func touch(_ context.Context, r outs.Request) (*outs.Result, error) {
	out := &outs.Result{Fetch: []outs.Fetch{{Profile: r.Out[0]}}, Opened: []outs.Opened{{Profile: r.Stock[1]}}}
	for _, s := range r.Specs {
		out.Touched = append(out.Touched, outs.Touched{Spec: s, Missing: r.Out})
	}
	return out, nil
}

// waitingFor returns how many requests wait for a search.
func (m *Menus) waitingFor() (n int) {
	m.mu.Lock()
	defer m.mu.Unlock()
	for _, w := range m.asked {
		n += w.waiting
	}
	return n
}

func answers(t *testing.T) *Menus {
	t.Helper()
	m, err := New()
	require.NoError(t, err)
	return m
}

func TestEqualRequestsShareOneSearch(t *testing.T) {
	m := answers(t)
	var searched atomic.Int32
	begin := make(chan struct{})
	search := func(ctx context.Context, r outs.Request) (*outs.Result, error) {
		searched.Add(1)
		<-begin
		return touch(ctx, r)
	}
	type got struct {
		r      outs.Request
		result *outs.Result
		err    error
	}
	results := make(chan got, 4)
	ask := func(ctx context.Context) {
		r := asked()
		result, err := m.Outs(ctx, nil, r, search)
		results <- got{r, result, err}
	}
	gone, leave := context.WithCancel(t.Context())
	go ask(gone)
	assert.Eventually(t, func() bool { return searched.Load() == 1 }, time.Minute, time.Millisecond)
	for range 3 {
		go ask(t.Context())
	}
	require.Eventually(t, func() bool { return m.waitingFor() == 4 }, time.Minute, time.Millisecond, "a search ends with the last who waits for it")
	leave()
	assert.ErrorIs(t, (<-results).err, context.Canceled, "who leaves is not kept waiting")
	close(begin)
	for range 3 {
		g := <-results
		require.NoError(t, g.err)
		assert.Same(t, g.r.Specs[0], g.result.Touched[0].Spec, "an answer speaks of the drinks that were asked about")
		assert.Same(t, g.r.Out[0], g.result.Touched[0].Missing[0])
		assert.Same(t, g.r.Out[0], g.result.Fetch[0].Profile)
		assert.Same(t, g.r.Stock[1], g.result.Opened[0].Profile)
	}
	assert.Equal(t, int32(1), searched.Load())
}

// Everything that affects an answer is part of the key.
func TestDifferentRequestsAreSearchedSeparately(t *testing.T) {
	for name, change := range map[string]func(r *outs.Request, palates *[]weigh.Palate){
		"an allergen": func(r *outs.Request, _ *[]weigh.Palate) { r.Guest.Avoid = []flavor.Allergen{flavor.Milk} },
		"a diet":      func(r *outs.Request, _ *[]weigh.Palate) { r.Guest.NoAnimal = []string{"milk"} },
		"no alcohol":  func(r *outs.Request, _ *[]weigh.Palate) { r.Guest.NoAlcohol = true },
		"a strength":  func(r *outs.Request, _ *[]weigh.Palate) { r.Guest.MaxABV = 12 },
		"a cost": func(r *outs.Request, _ *[]weigh.Palate) {
			r.Guest.MaxCost, r.Guest.Prices = 2, map[string]float64{"rum": 0.02}
		},
		"a palate": func(_ *outs.Request, p *[]weigh.Palate) {
			*p = []weigh.Palate{{ID: "sour", Drinks: 1, Factors: []float64{0.8}}}
		},
		"a tasting": func(r *outs.Request, _ *[]weigh.Palate) {
			r.Tastings = []cover.Tasting{{Missing: "gin", Liked: 1}}
		},
		"parts":                   func(r *outs.Request, _ *[]weigh.Palate) { r.Parts = 1 },
		"a strength as measured":  func(r *outs.Request, _ *[]weigh.Palate) { r.Stock[0].ABV.Value = 41 },
		"an allergen of a bottle": func(r *outs.Request, _ *[]weigh.Palate) { r.Stock[1].AllergensKnown = true },
		"an amount":               func(r *outs.Request, _ *[]weigh.Palate) { r.Specs[0].Pours[0].ML = 60 },
		"a garnish": func(r *outs.Request, _ *[]weigh.Palate) {
			r.Specs[0].Dressings = []flavor.Dressing{{Spot: flavor.OnDrink, Said: "olive", Profile: &flavor.Profile{ID: "garnish: olive"}}}
		},
		"a service": func(r *outs.Request, _ *[]weigh.Palate) { r.Specs[0].Service = flavor.Up },
		"the stock": func(r *outs.Request, _ *[]weigh.Palate) { r.Stock = r.Stock[:1] },
		"the menu":  func(r *outs.Request, _ *[]weigh.Palate) { r.Specs = append(r.Specs, r.Specs[0]) },
	} {
		r, palates := asked(), []weigh.Palate(nil)
		same, usual := menuKey(nil, &r), asked()
		change(&r, &palates)
		assert.NotEqual(t, same, menuKey(palates, &r), name)
		assert.Equal(t, same, menuKey(nil, &usual))
	}
}

// A key by content must not contain pointers.
func TestKeyContainsNoPointers(t *testing.T) {
	var walk func(t *testing.T, at string, of reflect.Type)
	walk = func(t *testing.T, at string, of reflect.Type) {
		switch of.Kind() {
		case reflect.Pointer, reflect.Interface, reflect.Func, reflect.Chan, reflect.UnsafePointer:
			assert.Fail(t, "an address", "%s is a %s", at, of)
		case reflect.Slice, reflect.Array, reflect.Map:
			walk(t, at+"[]", of.Elem())
		case reflect.Struct:
			for i := range of.NumField() {
				f := of.Field(i)
				if of == reflect.TypeFor[flavor.Pour]() && f.Name == "Profile" || of == reflect.TypeFor[flavor.Dressing]() && (f.Name == "Profile" || f.Name == "Records") {
					continue // these are written by themselves
				}
				walk(t, at+"."+f.Name, f.Type)
			}
		}
	}
	for _, of := range []reflect.Type{reflect.TypeFor[flavor.Profile](), reflect.TypeFor[flavor.Spec](), reflect.TypeFor[guest.Guest](), reflect.TypeFor[cover.Tasting](), reflect.TypeFor[weigh.Palate]()} {
		walk(t, of.String(), of)
	}
}

func TestErrorsAreNotCached(t *testing.T) {
	m := answers(t)
	broken := errors.New("the pump is broken")
	_, err := m.Outs(t.Context(), nil, asked(), func(context.Context, outs.Request) (*outs.Result, error) { return nil, broken })
	assert.ErrorIs(t, err, broken)
	_, err = m.Outs(t.Context(), nil, asked(), func(context.Context, outs.Request) (*outs.Result, error) { panic("spilled") })
	assert.ErrorContains(t, err, "spilled")
	_, err = m.Outs(t.Context(), nil, asked(), touch)
	assert.NoError(t, err)
	for i := range 3 * mostKept {
		r := asked()
		r.Parts = i + 10
		_, err := m.Outs(t.Context(), nil, r, touch)
		require.NoError(t, err)
	}
	assert.LessOrEqual(t, m.kept.Len(), mostKept)
}

// When the last waiting request is cancelled, the search is too, and the next request
// starts its own.
func TestSearchIsCancelledWithItsLastRequest(t *testing.T) {
	m := answers(t)
	began, ended := make(chan struct{}), make(chan error, 1)
	ctx, leave := context.WithCancel(t.Context())
	failed := make(chan error)
	go func() {
		_, err := m.Outs(ctx, nil, asked(), func(shared context.Context, _ outs.Request) (*outs.Result, error) {
			close(began)
			<-shared.Done()
			ended <- shared.Err()
			return nil, shared.Err()
		})
		failed <- err
	}()
	<-began
	leave()
	assert.ErrorIs(t, <-failed, context.Canceled)
	assert.ErrorIs(t, <-ended, context.Canceled)
	_, err := m.Outs(t.Context(), nil, asked(), touch)
	assert.NoError(t, err)
	assert.Empty(t, m.asked)
}

// The result of a search that ran out of time is returned, but not cached.
func TestIncompleteResultsAreNotCached(t *testing.T) {
	m := answers(t)
	short := func(ctx context.Context, r outs.Request) (*outs.Result, error) {
		out, err := touch(ctx, r)
		out.CutShort = true
		return out, err
	}
	first, err := m.Outs(t.Context(), nil, asked(), short)
	require.NoError(t, err)
	assert.True(t, first.CutShort)
	next, err := m.Outs(t.Context(), nil, asked(), touch)
	require.NoError(t, err)
	assert.False(t, next.CutShort)
}
