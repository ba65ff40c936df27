package store

import (
	"context"
	"os"
	"strings"
	"testing"

	"github.com/jackc/pgx/v5"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/data/house/pgtest"
)

// roleIn makes a role of a database, which may do nothing yet.
func roleIn(t *testing.T, dsn string, with ...string) (role string, run func(string)) {
	t.Helper()
	role = strings.ReplaceAll("role_"+pgtest.Venue(), "-", "_")
	c, err := pgx.Connect(t.Context(), dsn)
	require.NoError(t, err)
	run = func(text string) {
		t.Helper()
		_, err := c.PgConn().Exec(context.Background(), text).ReadAll()
		require.NoError(t, err)
	}
	run("CREATE ROLE " + role + " LOGIN PASSWORD 'pours well' " + strings.Join(with, " "))
	t.Cleanup(func() {
		run("DROP OWNED BY " + role)
		run("DROP ROLE " + role)
		assert.NoError(t, c.Close(context.Background()))
	})
	return role, run
}

// as is the address of a database for another role.
func as(t *testing.T, dsn, role string) string {
	t.Helper()
	config, err := pgx.ParseConfig(dsn)
	require.NoError(t, err)
	return strings.Replace(dsn, "user='"+config.User+"'", "user='"+role+"' password='pours well'", 1)
}

// A role with the rights of one-venue.sql can use its venue, creates nothing, and sees no
// other venue.
func TestRoleOfOneVenue(t *testing.T) {
	dsn := freshDatabase(t)
	owner, other := openVenue(t, dsn, "bar"), openVenue(t, dsn, "dock")
	write(t, owner, putAll(every())...)
	write(t, other, house.Put(gin(), 0))
	role, run := roleIn(t, dsn)
	text, err := os.ReadFile("one-venue.sql")
	require.NoError(t, err)
	run(strings.ReplaceAll(string(text), "bar_role", role))

	s := openVenue(t, as(t, dsn, role), "bar")
	list, err := s.List(t.Context())
	require.NoError(t, err)
	assert.Len(t, list, len(every()))
	write(t, s, house.Put(house.WithID(cover(), "cover-b"), 0), house.Remove(house.Right{Spec: "halyard-sour"}.Ref(), 1))
	_, err = s.Undo(t.Context(), who, house.Ref{Kind: house.KindRight, ID: "halyard-sour"}, 2)
	require.NoError(t, err)
	require.NoError(t, s.Check(t.Context()))

	_, err = OpenPostgres(t.Context(), as(t, dsn, role), Options{Venue: "dock", Existing: true})
	assert.ErrorIs(t, err, house.ErrNotFound, "it does not see the other venue")
	_, err = OpenPostgres(t.Context(), as(t, dsn, role), Options{Venue: "quay"})
	assert.ErrorIs(t, err, house.ErrReadOnly, "it makes no venue")
	assert.ErrorContains(t, err, "lacks a right")
	k := s.(*keeper)
	require.NoError(t, k.db.read(t.Context(), func(c conn) error {
		var n int
		_, err := one(t.Context(), c, []any{&n}, `SELECT count(*) FROM record WHERE venue <> 'bar'`)
		assert.Zero(t, n)
		return err
	}))
}

// A server's refusal keeps its own message, and is never reported as a full disk.
func TestRefusalsOfAServer(t *testing.T) {
	dsn := freshDatabase(t)
	openVenue(t, dsn, "bar")
	role, _ := roleIn(t, dsn)
	crowded, _ := roleIn(t, dsn, "CONNECTION LIMIT 0")
	config, err := pgx.ParseConfig(dsn)
	require.NoError(t, err)
	for name, c := range map[string]struct {
		dsn  string
		kind error
		want string
	}{
		"too many clients": {as(t, dsn, crowded), house.ErrUnavailable, "too many clients"},
		"no rights":        {as(t, dsn, role), house.ErrReadOnly, "permission denied for schema"},
		"no such role":     {as(t, dsn, "nobody_"+role), house.ErrUnavailable, "does not let this role in"},
		"no such database": {strings.Replace(dsn, "dbname="+config.Database, "dbname=none_"+role, 1), house.ErrUnavailable, "no such database"},
	} {
		_, err := OpenPostgres(t.Context(), c.dsn, Options{Venue: "bar"})
		require.ErrorIs(t, err, c.kind, name)
		assert.ErrorContains(t, err, c.want, name)
		assert.NotContains(t, err.Error(), "disk", name)
		assert.NotContains(t, err.Error(), "pours well", name)
	}
}
