package main

import (
	"context"

	"counterpour/api/service/kitchen"
	"counterpour/data"
	"counterpour/index"
)

// embedded opens a kitchen over the embedded catalogue.
func embedded(ctx context.Context) (*kitchen.Kitchen, func(), error) {
	if err := ctx.Err(); err != nil {
		return nil, nil, err
	}
	c, err := data.Embedded()
	if err != nil {
		return nil, nil, err
	}
	k, err := kitchen.New(c, index.New)
	if err != nil {
		return nil, nil, err
	}
	return k, func() { _ = k.Close() }, nil // an index in memory has nothing to flush
}
