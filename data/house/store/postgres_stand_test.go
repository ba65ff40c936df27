package store

import (
	"testing"

	"counterpour/data/house"

	"github.com/stretchr/testify/require"
)

func openVenue(t *testing.T, dsn, venue string) house.Store {
	t.Helper()
	s, err := OpenPostgres(t.Context(), dsn, Options{Venue: venue})
	require.NoError(t, err)
	closeAtEnd(t, s)
	return s
}
