package main

import (
	"context"

	"counterpour/api/service"
	"counterpour/data"
	"counterpour/index"
)

// embedded opens a kitchen over the embedded catalogue.
func embedded(ctx context.Context) (*service.Kitchen, func(), error) {
	if err := ctx.Err(); err != nil {
		return nil, nil, err
	}
	c, err := data.Embedded()
	if err != nil {
		return nil, nil, err
	}
	k, err := service.NewKitchen(c, index.New)
	if err != nil {
		return nil, nil, err
	}
	return k, func() { _ = k.Close() }, nil // an index in memory has nothing to lose
}
