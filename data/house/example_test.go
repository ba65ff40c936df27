package house_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"counterpour/data/house"
)

func Example() {
	ctx := context.Background()
	dir, _ := os.MkdirTemp("", "example")
	defer os.RemoveAll(dir)
	store, err := house.Open(ctx, filepath.Join(dir, "house.db"), house.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	defer store.Close()

	by := house.By{Actor: "ana", At: time.Date(2024, 5, 6, 18, 0, 0, 0, time.UTC)}
	bottle := house.Bottle{ID: "well-gin", Name: "Well gin", Ingredient: "london-dry-gin", SizeML: 700, Stock: 6}
	if _, err := store.Write(ctx, by, house.Put(bottle, 0)); err != nil { // durable from here on
		fmt.Println(err)
		return
	}
	bottle.Stock = 5
	changes, _ := store.Write(ctx, by, house.Put(bottle, 1))
	_, _ = store.Undo(ctx, by, bottle.Ref(), changes[0].Version)

	kept, _ := house.Get[house.Bottle](ctx, store, "well-gin")
	fmt.Println(kept.Item.Stock, "bottles at version", kept.Version)
	history, _ := store.History(ctx, bottle.Ref())
	for _, c := range history {
		fmt.Println(c.Version, c.Action, "by", c.Actor)
	}
	// Output:
	// 6 bottles at version 3
	// 1 added by ana
	// 2 changed by ana
	// 3 undone by ana
}
