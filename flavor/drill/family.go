package drill

import (
	"cmp"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/ratio"
	"counterpour/flavor/template"
)

// familyRound draws a family, shows the ratio of a classic that lies nearest to the centre
// of that, and offers others whose centres lie further by the size.
func (t *Trainer) familyRound(r RoundRequest, rng *rand.Rand) (*Round, error) {
	families, centres, err := t.centres()
	if err != nil {
		return nil, err
	}
	var best *reading
	for size := r.Size; best == nil && size >= MinSize*easier; size *= easier {
		for _, own := range rng.Perm(len(families)) {
			x := t.read(families, centres, own, size, r.Size, rng)
			if x != nil && (best == nil || x.off < best.off) {
				best = x
			}
			if best != nil && best.off <= readingTolerance {
				break
			}
		}
	}
	if best == nil {
		return nil, flavor.Invalid("kind", string(r.Kind), "no proven drink lies nearer to its own family than to three others; fit the families again")
	}
	return familyOptions(r, best.classic, best.ratio, families, centres, best.options, rng), nil
}

// reading is a classic whose ratio tells its family.
type reading struct {
	classic *classic
	ratio   ratio.Equivalents
	options []int   // families, its own first
	off     float64 // how far its margin is from the size wanted, as a logarithm
}

// readingTolerance is how far the margin may be from the size wanted, as a logarithm, for
// the family that was drawn to be asked: a wider one than that of a slip, or half of the
// rounds ask of the one family that has most neighbours.
const readingTolerance = 0.7

// read returns the classic of a family that tells it by a margin near to the size wanted,
// none of its options nearer than size; nil if none does.
func (t *Trainer) read(families []template.Family, centres []ratio.Equivalents, own int, size, wanted float64, rng *rand.Rand) (best *reading) {
	for _, i := range rng.Perm(len(t.classics)) {
		c := &t.classics[i]
		if c.family != families[own].ID {
			continue
		}
		x := reading{classic: c, ratio: shareOf(ratio.EquivalentsOf(&c.spec))}
		if x.options = nearFamilies(&x.ratio, centres, size); len(x.options) < optionsShown || x.options[0] != own {
			continue
		}
		x.off = math.Abs(math.Log(margin(&x.ratio, centres, x.options) / wanted))
		if best == nil || x.off < best.off {
			best = &x
		}
		if best.off <= readingTolerance {
			break
		}
	}
	return best
}

// centres returns the families and the middle of each, over all axes.
func (t *Trainer) centres() ([]template.Family, []ratio.Equivalents, error) {
	families, _ := t.set.Families()
	out := make([]ratio.Equivalents, len(families))
	for i := range families {
		c, err := t.set.Centre(families[i].ID)
		if err != nil {
			return nil, nil, err
		}
		for k, a := range families[i].Axes {
			out[i][a] = c[k]
		}
	}
	return families, out, nil
}

// margin is how much further the second option lies than the first.
func margin(ratio *ratio.Equivalents, centres []ratio.Equivalents, options []int) float64 {
	return gap(ratio, &centres[options[1]]) - gap(ratio, &centres[options[0]])
}

// typical is how far from the middle of its family a drink may lie and still be
// one to learn the ratio from, in just-noticeable differences.
const typical = 4.0

// nearFamilies returns the family whose centre is nearest, and the next ones
// that lie at least a size further, four in all; nil for a drink that is typical of
// none.
func nearFamilies(ratio *ratio.Equivalents, centres []ratio.Equivalents, size float64) []int {
	gaps := make([]float64, len(centres))
	near := make([]int, len(centres))
	for k := range near {
		near[k], gaps[k] = k, gap(ratio, &centres[k])
	}
	slices.SortStableFunc(near, func(x, y int) int { return cmp.Compare(gaps[x], gaps[y]) })
	if gaps[near[0]] > typical {
		return nil
	}
	options := near[:1:1]
	for _, k := range near[1:] {
		if gaps[k] >= gaps[near[0]]+size && len(options) < optionsShown {
			options = append(options, k)
		}
	}
	return options
}

func familyOptions(r RoundRequest, c *classic, ratio ratio.Equivalents, families []template.Family, centres []ratio.Equivalents, options []int, rng *rand.Rand) *Round {
	own := options[0]
	round := &Round{Request: r, Size: margin(&ratio, centres, options), Ratio: ratio,
		Question: fmt.Sprintf("Which family keeps this ratio: %s?", ratioText(&ratio)),
		key: key{classic: c, names: []string{families[own].Name, families[options[1]].Name, c.spec.Name, ratioText(&centres[own])},
			values: []float64{gap(&ratio, &centres[own]), gap(&ratio, &centres[options[1]])}}}
	round.key.after = centres[own]
	for place, i := range rng.Perm(len(options)) {
		round.Options = append(round.Options, Option{Label: families[options[i]].Name})
		if i == 0 {
			round.key.option = place
		}
	}
	return round
}

func gradeFamily(r *Round, a *Answer) (*Grade, error) {
	if err := checkOption(r, a); err != nil {
		return nil, err
	}
	k := &r.key
	g := &Grade{Right: a.Option == k.option, Before: r.Ratio, After: k.after, Solution: k.names[0]}
	if g.Right {
		g.Points = 1
	}
	g.Text = fmt.Sprintf("%s pours %s; the middle of that family is %s. It lies %.1f noticeable steps from there and %.1f from the next one offered, %s.",
		k.names[2], ratioText(&r.Ratio), k.names[3], k.values[0], k.values[1], k.names[1])
	return g, nil
}

func shareOf(e ratio.Equivalents) ratio.Equivalents {
	var total float64
	for _, v := range e {
		total += v
	}
	for a := range e {
		e[a] /= total
	}
	return e
}

// shareFloor is the share of a drink below which a part is as good as absent to
// somebody who reads a ratio.
const shareFloor = 0.02

// gap is how far apart two ratios are, in just-noticeable differences of each
// part, once the larger drink is poured down to the size of the other.
func gap(a, b *ratio.Equivalents) float64 {
	var logs ratio.Equivalents
	var mean float64
	for i := range a {
		logs[i] = math.Log((a[i] + shareFloor) / (b[i] + shareFloor))
		mean += logs[i] / float64(len(logs))
	}
	var sum float64
	for i := range logs {
		j := balance.JND(ratio.Axis(i), logs[i]-mean)
		sum += j * j
	}
	return math.Sqrt(sum)
}

// ratioText writes a ratio as the trade says it, the largest part as 8.
func ratioText(e *ratio.Equivalents) string {
	top := slices.Max(e[:])
	var parts []string
	for a, v := range e {
		if v >= shareFloor*top {
			parts = append(parts, fmt.Sprintf("%.1f %v", 8*v/top, ratio.Axis(a)))
		}
	}
	return strings.Join(parts, " : ")
}
