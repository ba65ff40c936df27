package board_test

import (
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/webui/webuitest"
)

// silent is a house that is known, and whose store can be asked nothing.
type silent struct {
	*webuitest.House
	closed house.Store // nil until the store falls silent
}

func (s *silent) Store() house.Store {
	if s.closed != nil {
		return s.closed
	}
	return s.House.Store()
}

// The pages of a shift are shown while the store does not answer: what is out is known
// without it, and only since when is not.
func TestTheShiftIsShownWhileTheStoreIsSilent(t *testing.T) {
	closed := webuitest.NewHouse().Store()
	require.NoError(t, closed.Close())
	for _, told := range []bool{false, true} { // before it is noticed, and after
		h := &silent{House: webuitest.NewHouse()}
		h.Dry = []string{"falernum"}
		pages := webuitest.PagesOf(t, h)
		h.closed, h.Old = closed, told
		for _, path := range []string{"/board", "/tonight"} {
			w := webuitest.Get(pages, path, "")
			require.Equal(t, http.StatusOK, w.Code, path)
			assert.Contains(t, w.Body.String(), "falernum", path)
			assert.Equal(t, told, strings.Contains(w.Body.String(), "The store of the house"), "%s says whether it may be old", path)
		}
	}
}
