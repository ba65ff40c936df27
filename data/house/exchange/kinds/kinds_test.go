package kinds_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/data/house"
	"counterpour/data/house/exchange/kinds"
	"counterpour/flavor"
)

// speller suggests the same names for whatever is written.
type speller struct {
	*house.Shelf
	near []string
}

func (s speller) Named(written string) (*flavor.Profile, flavor.MatchHow, bool) {
	p, m, err := s.Resolve(written)
	return p, m.How, err == nil
}

func (s speller) Slip(string, func(*flavor.Profile) bool) (*flavor.Profile, bool) { return nil, false }

func (s speller) Suggest(string, func(*flavor.Profile) bool) []string { return s.near }

// What the name on the bottle says comes first among the kinds that were near.
func TestTheNameOnTheBottleOrdersWhatIsNear(t *testing.T) {
	near := []string{"honey-herb liqueur", "green herbal liqueur", "yellow herbal liqueur"}
	k := kinds.New(speller{house.NewShelf(nil), near})
	assert.Equal(t, []string{"green herbal liqueur", "yellow herbal liqueur", "honey-herb liqueur"}, k.Near("herbal liqeur", "Green herbal"))
	assert.Equal(t, near, k.Near("herbal liqeur", "Hawse"))
	assert.Equal(t, []string{"honey-herb liqueur"}, k.Near("", "Hawse honeyherb hony-herb"), "by the name, where no kind is written")
	assert.Empty(t, k.Near("", "Hawse"), "what only looks a little alike is not offered")
	assert.Empty(t, k.Near("", ""))
	assert.Equal(t, "honey-herb liqueur", near[0], "what was suggested is not changed")
}

// A whole name that is the ingredient's own leaves nothing to ask; a longer label, and a word
// for several, do.
func TestAWholeNameIsNotSupposed(t *testing.T) {
	gin := &flavor.Profile{ID: "london-dry-gin", Name: "London dry gin", Class: flavor.ClassGin, Aliases: []string{"gin"}}
	tom := &flavor.Profile{ID: "old-tom-gin", Name: "old tom gin", Class: flavor.ClassGin}
	k := kinds.New(speller{house.NewShelf([]*flavor.Profile{gin, tom}), nil})
	for name, supposed := range map[string]bool{"London Dry Gin": false, "London dry gin 70 cl": false, "Hawse London dry gin": true, "Hawse gin": true, "gin": true} {
		found := k.Find("", "", name)
		if assert.NotNil(t, found, name) {
			assert.Equal(t, gin, found.Profile, name)
			assert.Equal(t, supposed, found.Supposed, name)
		}
	}
}

// A name of another tongue is the kind that all of its translated words name, and is asked about; a part
// of them is another thing.
func TestNamesOfOtherTongues(t *testing.T) {
	shelf := house.NewShelf([]*flavor.Profile{
		{ID: "orange-liqueur", Name: "orange liqueur", Class: flavor.ClassLiqueur},
		{ID: "orange-juice", Name: "orange juice", Class: flavor.ClassJuice},
		{ID: "strawberry-juice", Name: "strawberry juice", Aliases: []string{"strawberry"}, Class: flavor.ClassJuice},
	})
	k := kinds.New(speller{shelf, nil})
	for name, want := range map[string]string{"Orangenlikör 40%": "orange-liqueur", "Hafen Orangenlikör": "orange-liqueur", "Jus d'orange 1 l": "orange-juice",
		"Zumo de naranja": "orange-juice", "Erdbeerlikör": "", "Halyard No 3": ""} {
		found := k.Find("", "", name)
		if want == "" {
			assert.Nil(t, found, name)
			continue
		}
		if assert.NotNil(t, found, name) {
			assert.Equal(t, want, found.Profile.ID, name)
			assert.True(t, found.Supposed, "a translation is shown: %s", name)
		}
	}
}
