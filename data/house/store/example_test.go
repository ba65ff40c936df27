package store_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"counterpour/data/house"
	"counterpour/data/house/store"
)

func Example() {
	ctx := context.Background()
	dir, _ := os.MkdirTemp("", "example")
	defer os.RemoveAll(dir)
	kept, err := store.Open(ctx, filepath.Join(dir, "house.db"), store.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	defer kept.Close()

	by := house.By{Actor: "ana", At: time.Date(2024, 5, 6, 18, 0, 0, 0, time.UTC)}
	bottle := house.Bottle{ID: "well-gin", Name: "Well gin", Ingredient: "london-dry-gin", SizeML: 700, Stock: 6}
	if _, err := kept.Write(ctx, by, house.Put(bottle, 0)); err != nil { // durable from here on
		fmt.Println(err)
		return
	}
	bottle.Stock = 5
	changes, _ := kept.Write(ctx, by, house.Put(bottle, 1))
	_, _ = kept.Undo(ctx, by, bottle.Ref(), changes[0].Version)

	now, _ := house.Get[house.Bottle](ctx, kept, "well-gin")
	fmt.Println(now.Item.Stock, "bottles at version", now.Version)
	history, _ := kept.History(ctx, bottle.Ref())
	for _, c := range history {
		fmt.Println(c.Version, c.Action, "by", c.Actor)
	}
	// Output:
	// 6 bottles at version 3
	// 1 added by ana
	// 2 changed by ana
	// 3 undone by ana
}
