package store

import (
	"errors"
	"fmt"
	"net"

	"counterpour/data/house"

	"github.com/jackc/pgx/v5/pgconn"
)

// classifyPostgres follows
// https://www.postgresql.org/docs/current/errcodes-appendix.html.
func classifyPostgres(err error) error {
	var e *pgconn.PgError
	var connect *pgconn.ConnectError
	var network net.Error
	switch {
	case !errors.As(err, &e):
		if errors.As(err, &connect) || errors.As(err, &network) || pgconn.SafeToRetry(err) || pgconn.Timeout(err) {
			return house.ErrUnavailable
		}
		return classifySQLite(err) // a backup is written to an SQLite file
	case e.Code == "53100" || e.Code == "53200":
		return house.ErrFull
	case e.Code == "25006" || e.Code == "42501":
		return house.ErrReadOnly
	case e.Code == "55P03":
		return house.ErrBusy
	case e.Code == "40001" || e.Code == "40P01":
		return house.ErrConflict
	}
	switch e.Code[:2] {
	case "08", "57", "53", "28", "3D":
		return house.ErrUnavailable
	case "23":
		return house.ErrInvalid
	case "XX":
		if e.Code != "XX000" {
			return house.ErrDamaged
		}
	}
	return nil
}

// refusals are messages for errors of a PostgreSQL server that the user can mend, by
// SQLSTATE code.
var refusals = map[string]string{
	"25006": "the database takes no writes: it is a standby, or its sessions are set to read only; name the primary server, or lift the setting",
	"28000": "the database server does not let this role in; check the role in the address, and what the server's pg_hba.conf allows",
	"28P01": "the database server does not let this role in: the password is wrong; check the address",
	"3D000": "the server has no such database; make it, or check the address",
	"53100": "there is no room left on the disk of the database server; nothing of this write was kept, what was kept before is unharmed",
	"53200": "the database server has run out of memory; nothing of this write was kept",
	"53300": "the database server has too many clients and takes no more; close some, or raise its max_connections or the role's connection limit",
	"55P03": "another program holds what this needs locked in the database; try again",
	"57P03": "the database server is starting or stopping; try again in a moment",
}

// refusalOf returns the message for a server's error; "" if the message for its kind is
// enough.
func refusalOf(err error) string {
	var e *pgconn.PgError
	switch {
	case !errors.As(err, &e):
		return ""
	case e.Code == "42501":
		return fmt.Sprintf("the role of the database lacks a right (%s); grant it, or open the house with the role that made it", e.Message)
	}
	return refusals[e.Code]
}
