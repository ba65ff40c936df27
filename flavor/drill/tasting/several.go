package tasting

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/drill/wording"
	"counterpour/flavor/mix"
)

// SeveralRequest asks for a little of several drinks for each guest.
type SeveralRequest struct {
	Drinks []Poured
	EachML float64 // finished, of each drink for each guest: 10 to 120
	Guests int     // 1 to 60
}

// Poured is a drink as it is poured now, finished.
type Poured struct {
	Name  string
	Drink *mix.Drink
}

// Several is a flight of several drinks, in the order of tasting.
type Several struct {
	Shares   []Share
	EthanolG float64 // that one guest takes in who drinks all of it
	Cautions []string
}

// Share is one drink of such a flight: so many are made, and shared out.
type Share struct {
	At     int // among the drinks that were asked for
	Make   int
	MadeML float64
	LeftML float64 // when everyone has theirs
}

// Sizes of a flight of several drinks; common practice, no source.
const (
	LeastSeveral, MostSeveral = 2, 6
	UsualShareML              = 40.0
)

// PlanSeveral puts several drinks in the order of tasting and says how many of each to
// make. It fails with every fault of the request, one of them if a guest would take in
// more alcohol than a flight may hold.
func PlanSeveral(r SeveralRequest) (*Several, error) {
	if faults := r.faults(); len(faults) > 0 {
		return nil, faults
	}
	var out Several
	for i, p := range r.Drinks {
		want := r.EachML * float64(r.Guests)
		s := Share{At: i, Make: int(math.Ceil(want/p.Drink.VolumeML - 1e-9))}
		s.MadeML = p.Drink.VolumeML * float64(s.Make)
		s.LeftML = max(0, s.MadeML-want)
		out.Shares = append(out.Shares, s)
		out.EthanolG += p.Drink.After.Ethanol * r.EachML / p.Drink.VolumeML
	}
	drinks := out.EthanolG / USDrinkG
	if drinks > MaxTasterDrinks {
		remedy := "tick fewer or weaker drinks"
		if fits := buildGrain * math.Floor(r.EachML*MaxTasterDrinks/drinks/buildGrain); fits >= leastBuildML {
			remedy = flavor.JoinOr([]string{fmt.Sprintf("pour %.0f ml each", fits), remedy})
		}
		return nil, flavor.DataFaults{flavor.Invalid("each_ml", r.EachML, "that is %.1f standard drinks (United States) for each guest, and a flight holds %.0f at most: %s", drinks, MaxTasterDrinks, remedy)}
	}
	out.Cautions = wording.Cautions(out.EthanolG, drinks)
	slices.SortStableFunc(out.Shares, func(a, b Share) int { return lighterFirst(&r.Drinks[a.At], &r.Drinks[b.At]) })
	return &out, nil
}

// faults lists what is out of range.
func (r *SeveralRequest) faults() flavor.DataFaults {
	var out flavor.DataFaults
	if !(r.EachML >= leastBuildML && r.EachML <= mostBuildML) {
		out = append(out, flavor.Invalid("each_ml", r.EachML, "a glass of a flight holds %v to %v ml", leastBuildML, mostBuildML))
	}
	if r.Guests < 1 || r.Guests > mostTasters {
		out = append(out, flavor.Invalid("guests", r.Guests, "write how many guests there are, 1 to %d, in digits", mostTasters))
	}
	if n := len(r.Drinks); n < LeastSeveral || n > MostSeveral {
		out = append(out, flavor.Invalid("drinks", n, "take %d to %d drinks that can be poured now", LeastSeveral, MostSeveral))
	}
	for _, p := range r.Drinks {
		if p.Drink == nil || !(p.Drink.VolumeML > 0) {
			out = append(out, flavor.Invalid("drinks", p.Name, "%s has no volume; write its pours", p.Name))
		}
	}
	return out
}

// lighterFirst orders what is tasted: the lighter before the stronger, in whole % vol, the
// less bitter before the more, the drier before the sweeter, since what is strong, bitter or
// sweet dulls what comes after; common practice, no source.
func lighterFirst(a, b *Poured) int {
	whole := func(x, y float64) int { return cmp.Compare(math.Round(x), math.Round(y)) }
	return cmp.Or(whole(a.Drink.ABV, b.Drink.ABV), whole(a.Drink.Bitter, b.Drink.Bitter), whole(a.Drink.SugarPer100, b.Drink.SugarPer100), strings.Compare(a.Name, b.Name))
}
