package premises

import (
	"context"
	"errors"
	"fmt"
	"net/url"

	"counterpour/cmd/counterpour/terminal"
	"counterpour/data/house"
	"counterpour/data/house/store"
)

// ErrNoHouse: no house was named.
var ErrNoHouse = terminal.Usagef("--house is not given; name the file that the house is kept in, or a postgres:// address")

// Purpose is what a house is opened for.
type Purpose int

// What a house is opened for.
const (
	ToRead  Purpose = iota // beside a process that may write to it
	ToWrite                // exclusively, if it is a file
	ToMake                 // to write, creating it if it does not exist
	ToServe                // as ToMake, or read only if a later version wrote it
)

// OpenHouse opens the house in a file, or a venue of a PostgreSQL database. made reports
// whether it was created.
func OpenHouse(ctx context.Context, where string, why Purpose) (s house.Store, made bool, err error) {
	s, err = openAs(ctx, where, store.Options{ReadOnly: why == ToRead, Existing: true})
	if !errors.Is(err, house.ErrNotFound) {
		return s, false, err
	}
	if why != ToMake && why != ToServe {
		return nil, false, fmt.Errorf("%w; only serve, house import and house restore make one", err)
	}
	s, err = openAs(ctx, where, store.Options{})
	return s, err == nil, err
}

func openAs(ctx context.Context, where string, o store.Options) (house.Store, error) {
	if where == Demo {
		return nil, ErrNoHouse
	}
	if !IsDatabase(where) {
		if o.Existing && !o.ReadOnly { // nothing is added to a damaged house
			report, err := store.Verify(ctx, where)
			if err == nil {
				err = report.NeedsWAL(where)
			}
			if err != nil {
				return nil, err
			}
		}
		return store.Open(ctx, where, o)
	}
	address, venue, err := venueOf(where)
	if err != nil {
		return nil, err
	}
	o.Venue = venue
	return store.OpenPostgres(ctx, address, o)
}

// venueOf removes the venue from the address of a database, where ?venue=dock selects one
// of several bars.
func venueOf(where string) (address, venue string, err error) {
	u, err := url.Parse(where)
	if err != nil { // its message would contain the password
		return "", "", terminal.Usagef("--house: the address of the database cannot be read; write it as postgres://user@host:port/database?venue=bar")
	}
	q := u.Query()
	venue = q.Get("venue")
	q.Del("venue")
	u.RawQuery = q.Encode()
	return u.String(), venue, nil
}

// Closing closes a house and returns err or, if that is nil, the error of closing.
func Closing(s house.Store, err error) error {
	if closeErr := s.Close(); err == nil {
		return closeErr
	}
	return err
}
