package store

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
)

// What a later version of the program wrote into a record is there after an older
// one has changed it, put it back, and checked the house.
func TestFieldsOfALaterVersionStay(t *testing.T) {
	onEveryEngine(t, func(t *testing.T, e engine) {
		s := e.open(t)
		k := s.(*keeper)
		write(t, s, house.Put(gin(), 0))
		later := func() string {
			var body string
			require.NoError(t, k.db.read(t.Context(), func(c conn) error {
				r, _, err := record(t.Context(), c, k.venue, gin().Ref())
				body = r.body
				return err
			}))
			return body
		}
		// As a later version would write it: another field, sealed as everything is.
		require.NoError(t, k.db.write(t.Context(), func(c conn) error {
			w, err := k.begin(t.Context(), c, who, 1)
			if err != nil {
				return err
			}
			return w.put(t.Context(), gin().Ref(), gin(), `{"zest":{"of":["lime"]},"Name":"not this one"}`, 2, house.Changed)
		}))
		const want = `"zest":{"of":["lime"]}}`
		require.Contains(t, later(), want)
		assert.NotContains(t, later(), "not this one")

		renamed := gin()
		renamed.Name = "Navy gin"
		write(t, s, house.Put(renamed, 2))
		assert.Contains(t, later(), want)
		assert.Contains(t, later(), `"Navy gin"`)
		_, err := s.Undo(t.Context(), who, gin().Ref(), 3)
		require.NoError(t, err)
		assert.Contains(t, later(), want)
		got, err := house.Get[house.Bottle](t.Context(), s, gin().ID)
		require.NoError(t, err)
		assert.Equal(t, gin(), got.Item)
		require.NoError(t, s.Check(t.Context()))
	})
}
