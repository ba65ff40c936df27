package mix

import "counterpour/flavor"

// Keep is how long the trade keeps a syrup.
type Keep struct {
	FromDays, ToDays int // in a closed, clean bottle in a refrigerator
	Origin           flavor.Origin
	Text             string
}

// keepCaution ends every answer: a day count is no safety limit.
const keepCaution = " Common practice, not a safety limit: local food-safety law comes first. Date the bottle, keep it at 5 °C or below, and throw it away if it clouds, fizzes, smells off or moulds."

// KeptFromBrix is the brix from which its own sugar keeps a syrup.
const KeptFromBrix = 30

// keepings are upper limits of brix and what holds below them.
var keepings = []struct {
	below    float64
	from, to int
	text     string
}{
	{KeptFromBrix, 1, 3, "Too thin for its sugar to keep it; treat it as fresh juice."},
	{55, 14, 28, "A thin syrup, such as one of equal weights, ferments and moulds in time."},
	{64, 21, 42, "A medium syrup keeps better than a thin one, but still moulds."},
	{maxBrix, 30, 90, "A rich syrup keeps longest; warm it gently if it crystallises."},
}

// Keeping returns how long the trade keeps a plain syrup of brix per cent sugar
// by mass, in a refrigerator. With fresh, it holds juice, fruit, herbs, egg or
// milk, and its sugar is not counted on. It fails for a brix outside 0 to 85.
func Keeping(brix float64, fresh bool) (Keep, error) {
	if err := within("brix", brix, 0, maxBrix, " °Bx"); err != nil {
		return Keep{}, err
	}
	k := keepings[len(keepings)-1]
	for i := len(keepings) - 1; i >= 0; i-- {
		if brix < keepings[i].below {
			k = keepings[i]
		}
	}
	keep := Keep{FromDays: k.from, ToDays: k.to, Origin: flavor.OriginPractice, Text: k.text + keepCaution}
	if fresh {
		keep.FromDays, keep.ToDays = min(k.from, 2), min(k.to, 7)
		keep.Text = "What is fresh in it spoils first, whatever the sugar." + keepCaution
	}
	return keep, nil
}
