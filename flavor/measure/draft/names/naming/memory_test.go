package naming_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/drafttest"
	"counterpour/flavor/measure/draft/names/naming"
)

// counted counts what its finder is asked.
type counted struct {
	naming.Finder
	asked map[string]int
}

func (c counted) Resolve(written string) (*flavor.Profile, flavor.Match, error) {
	c.asked[written]++
	return c.Finder.Resolve(written)
}

// Resolvers of one reading find what another does, in each place, and ask for it once; the
// faults of unknown names say the same once they are completed.
func TestBooksOfOneReadingShareWhatTheyFound(t *testing.T) {
	c := counted{drafttest.Bar(), map[string]int{}}
	f := naming.Remembering(c)
	var faults, want flavor.DataFaults
	for range 2 {
		b := naming.NewResolver(f)
		for _, name := range []string{"lemon", "London dry gn", "aromatic", "rum or lemon juice", "nothing of the kind"} {
			for _, u := range []flavor.Unit{flavor.Ounce, flavor.Dash} {
				pl := naming.PlaceOf(u, 1, false)
				got, fresh := b.Find(name, pl), naming.NewResolver(drafttest.Bar()).Find(name, pl)
				require.Equal(t, fresh.Fault == nil, got.Fault == nil, name)
				if got.Fault != nil {
					faults, want = append(faults, b.Copied(got.Fault)), append(want, fresh.Fault)
					got.Fault, fresh.Fault = nil, nil
				}
				require.Equal(t, fresh.As, got.As, name)
				require.Equal(t, fresh.How, got.How, name)
			}
		}
		require.NoError(t, b.Err())
	}
	once := c.asked["nothing of the kind"]
	naming.NewResolver(f).Find("nothing of the kind", naming.PlaceOf(flavor.Ounce, 1, false))
	assert.Equal(t, once, c.asked["nothing of the kind"])
	require.NoError(t, naming.Complete(faults, f))
	assert.Equal(t, want, faults)
}

// A part of a reading that begins a reading of its own shares what was found.
func TestRememberingAgain(t *testing.T) {
	f := naming.Remembering(drafttest.Bar())
	assert.Same(t, f, naming.Remembering(f))
}

// What is said behind an unknown name stays there.
func TestCompleteKeepsWhatWasAdded(t *testing.T) {
	f := naming.Remembering(drafttest.Bar())
	b := naming.NewResolver(f)
	own := b.Copied(b.Find("dry gim", naming.PlaceOf(flavor.Ounce, 1, false)).Fault)
	require.Empty(t, own.Suggest)
	own.Message += "; or not"
	require.NoError(t, naming.Complete(flavor.DataFaults{own}, f))
	assert.Equal(t, []string{"London dry gin"}, own.Suggest)
	assert.Equal(t, `unknown ingredient "dry gim"; nearest: London dry gin; or not`, own.Message)
}

// A finder that does not answer is asked again.
func TestAFailureIsNotRemembered(t *testing.T) {
	f := naming.Remembering(drafttest.Bar())
	for range 2 {
		b := naming.NewResolver(f)
		b.Find("broken", naming.Place{Unit: flavor.Ounce})
		require.ErrorContains(t, b.Err(), "closed")
	}
}

// What a name is asked about is kept from one reading to the next, and each reading has a fault of its own,
// with what is nearest to the name.
func TestWhatIsAskedIsKept(t *testing.T) {
	x, err := loadIndex()
	require.NoError(t, err)
	pl := naming.Place{Unit: flavor.Ounce, Amount: 1}
	for _, name := range []string{"vermouth", "oregat nothing", "unheard of"} {
		var said []*flavor.DataFault
		for range 2 {
			f := naming.Remembering(x)
			hit := naming.NewResolver(f).Find(name, pl)
			require.NotNil(t, hit.Fault, name)
			require.NoError(t, naming.Complete(flavor.DataFaults{hit.Fault}, f))
			said = append(said, hit.Fault)
		}
		assert.Equal(t, said[0], said[1], name)
		assert.NotSame(t, said[0], said[1], name)
	}
}
