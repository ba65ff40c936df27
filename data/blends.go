package data

import (
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"math"
	"slices"

	"counterpour/flavor"
)

const blendsFile = "blends.toml"

type blends struct {
	sugars map[string]flavor.SugarBlend
	acids  map[string]flavor.AcidBlend
}

type blendsSchema struct {
	Version int                           `toml:"version"`
	Sugars  map[string]map[string]float64 `toml:"sugars"`
	Acids   map[string]map[string]float64 `toml:"acids"`
}

func loadBlends(fsys fs.FS) (*blends, error) {
	var f blendsSchema
	if err := decodeStrict(fsys, blendsFile, &f); err != nil {
		return nil, err
	}
	if f.Version != FormatVersion {
		return nil, fmt.Errorf("data: %s: version is %d; this program reads version %d", blendsFile, f.Version, FormatVersion)
	}
	b := &blends{sugars: map[string]flavor.SugarBlend{}, acids: map[string]flavor.AcidBlend{}}
	var faults []error
	for _, name := range sortedKeys(f.Sugars) {
		s := flavor.SugarBlend{Name: name}
		faults = append(faults, fillBlend("sugars."+name, f.Sugars[name], map[string]*float64{"sucrose": &s.Sucrose,
			"glucose": &s.Glucose, "fructose": &s.Fructose, "maltose": &s.Maltose, "lactose": &s.Lactose, "dextrin": &s.Dextrin}))
		b.sugars[name] = s
	}
	for _, name := range sortedKeys(f.Acids) {
		a := flavor.AcidBlend{Name: name}
		faults = append(faults, fillBlend("acids."+name, f.Acids[name], map[string]*float64{"citric": &a.Citric,
			"malic": &a.Malic, "tartaric": &a.Tartaric, "lactic": &a.Lactic, "acetic": &a.Acetic,
			"phosphoric": &a.Phosphoric, "ascorbic": &a.Ascorbic, "quinic": &a.Quinic}))
		b.acids[name] = a
	}
	return b, errors.Join(faults...)
}

// fillBlend writes shares into the fields that they name. Shares must sum to one; an
// empty blend stays zero.
func fillBlend(place string, shares map[string]float64, fields map[string]*float64) error {
	var sum float64
	for _, kind := range sortedKeys(shares) {
		into, ok := fields[kind]
		if !ok || !(shares[kind] >= 0 && shares[kind] <= 1) {
			return fmt.Errorf("data: %s: %s: share %q is not known, or is not from 0 to 1", blendsFile, place, kind)
		}
		*into = shares[kind]
		sum += shares[kind]
	}
	if len(shares) > 0 && math.Abs(sum-1) > 1e-9 {
		return fmt.Errorf("data: %s: %s: the shares sum to %v; they must sum to 1", blendsFile, place, sum)
	}
	return nil
}

// sortedKeys returns the keys of m in order.
func sortedKeys[K cmp.Ordered, V any](m map[K]V) []K {
	return slices.Sorted(maps.Keys(m))
}
