package main

import (
	"context"
	"fmt"

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

// ingredients opens the embedded catalogue and its index: what does not ask for drinks need
// not wait for what they teach.
func ingredients(ctx context.Context) (*kitchen.Ingredients, error) {
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	c, err := data.Embedded()
	if err != nil {
		return nil, err
	}
	x, err := index.Build(ctx, c.Profiles(), nil)
	if err != nil {
		return nil, fmt.Errorf("making the index: %w", err)
	}
	return &kitchen.Ingredients{Catalogue: c, Index: x}, nil
}
