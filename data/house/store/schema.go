package store

import (
	"context"
	"database/sql"
	"fmt"
	"maps"
	"slices"
)

// schemaDamage compares the tables of a file with those that its version of the schema
// creates. A changed byte in a definition damages no row, but it may remove a constraint
// or prevent writing.
func schemaDamage(ctx context.Context, c conn, version int) (places []string, err error) {
	wanted, err := madeSchema(ctx, version)
	if err != nil {
		return nil, err
	}
	found, err := definitions(ctx, c)
	if err != nil {
		return nil, err
	}
	for _, name := range slices.Sorted(maps.Keys(wanted)) {
		if found[name] != wanted[name] {
			places = append(places, fmt.Sprintf("%s is not defined as it was", name))
		}
		delete(found, name)
	}
	for _, name := range slices.Sorted(maps.Keys(found)) {
		places = append(places, fmt.Sprintf("%s is no part of a house", name))
	}
	return places, nil
}

// madeSchema creates the schema in memory and reads it back.
func madeSchema(ctx context.Context, version int) (map[string]string, error) {
	steps, err := migrationsOf("sqlite")
	if err != nil {
		return nil, err
	}
	db, err := sql.Open("sqlite", ":memory:")
	if err != nil {
		return nil, err
	}
	defer db.Close()
	db.SetMaxOpenConns(1) // each connection would get a database of its own
	c := sqliteConn{db}
	for _, s := range steps[:min(version, len(steps))] {
		if err := c.exec(ctx, s.text); err != nil {
			return nil, err
		}
	}
	return definitions(ctx, c)
}

// definitions returns the SQL text of each table, index and trigger.
func definitions(ctx context.Context, c conn) (map[string]string, error) {
	out := map[string]string{}
	err := each(ctx, c, func(rs rows) error {
		var kind, name, table, text string
		if err := rs.Scan(&kind, &name, &table, &text); err != nil {
			return err
		}
		out[kind+" "+name] = table + ": " + text
		return nil
	}, `SELECT type, name, tbl_name, coalesce(sql, '') FROM sqlite_schema ORDER BY type, name`)
	return out, err
}
