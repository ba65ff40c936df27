package drill

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance/threshold"
	"counterpour/flavor/drill/wording"
	"counterpour/flavor/ratio"
	"counterpour/flavor/template"
)

// familyRound shows the ratio, as it is poured, of a classic that lies nearest to the centre
// of its family, and offers others whose centres lie further by about the size.
func (t *Trainer) familyRound(r RoundRequest, rng *rand.Rand) (*Round, error) {
	families, centres, err := t.centres()
	if err != nil {
		return nil, err
	}
	for size := r.Size; size >= MinSize*easier; size *= easier {
		if x := drawn(t.readings(centres, size, &r, families), rng); x != nil {
			return familyOptions(r, x, families, centres, rng), nil
		}
	}
	return nil, flavor.Invalid("kind", string(r.Kind), "no proven drink lies nearer to its own family than to three others; %s", r.Avoid.remedy("fit the families again"))
}

// reading is a classic whose ratio tells its family.
type reading struct {
	classic *classic
	ratio   ratio.Equivalents
	options []int // families, its own first
}

// readings lists, by family, the classics that tell it by a margin of a size, and of
// nearTimes it at most.
func (t *Trainer) readings(centres []ratio.Equivalents, size float64, r *RoundRequest, families []template.Family) [][]reading {
	out := make([][]reading, len(families))
	for _, i := range t.served(r) {
		c := &t.classics[i]
		x := reading{classic: c, ratio: shareOf(ratio.EquivalentsOf(&c.spec))}
		x.options = nearFamilies(&x.ratio, centres, size, func(k int) bool { return slices.Contains(c.fits, families[k].ID) })
		if len(x.options) < optionsShown || families[x.options[0]].ID != c.family || margin(&x.ratio, centres, x.options) > nearTimes*size {
			continue
		}
		out[x.options[0]] = append(out[x.options[0]], x)
	}
	return out
}

// mostWeight is the number of drinks from which a family is drawn as often as any larger one, so
// that no family comes again and again. A family with fewer drinks is drawn less often, so that none
// of its drinks comes again and again.
const mostWeight = 6

// drawn draws a family, and one of its drinks; nil if there is none.
func drawn(by [][]reading, rng *rand.Rand) *reading {
	total := 0
	for _, of := range by {
		total += min(len(of), mostWeight)
	}
	if total == 0 {
		return nil
	}
	at := rng.IntN(total)
	for _, of := range by {
		if weight := min(len(of), mostWeight); at >= weight {
			at -= weight
			continue
		}
		return &of[rng.IntN(len(of))]
	}
	return nil
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
// none. A family in which the drink is balanced too is nobody's wrong answer.
func nearFamilies(ratio *ratio.Equivalents, centres []ratio.Equivalents, size float64, fits func(int) bool) []int {
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
		if gaps[k] >= gaps[near[0]]+size && len(options) < optionsShown && !fits(k) {
			options = append(options, k)
		}
	}
	return options
}

func familyOptions(r RoundRequest, x *reading, families []template.Family, centres []ratio.Equivalents, rng *rand.Rand) *Round {
	round := &Round{Request: r, Size: margin(&x.ratio, centres, x.options), Ratio: x.ratio,
		Question: wording.ToRead(&x.classic.spec),
		key:      key{classic: x.classic, after: centres[x.options[0]]}}
	for place, i := range rng.Perm(len(x.options)) {
		f := &families[x.options[i]]
		round.key.offered = append(round.key.offered, f)
		round.Options = append(round.Options, Option{Label: f.Name})
		switch i {
		case 0:
			round.key.option = place
		case 1:
			round.key.next = place
		}
	}
	return round
}

func gradeFamily(r *Round, a *Answer) (*Grade, error) {
	if err := checkOption(r, a); err != nil {
		return nil, err
	}
	k := &r.key
	own, next, said := k.offered[k.option], k.offered[k.next], k.offered[a.Option]
	g := &Grade{Right: a.Option == k.option, Before: r.Ratio, After: k.after, Solution: own.Name}
	g.Text = wording.Read(&k.classic.spec, own.Name, own.Mark, own.Poured)
	if g.Right {
		g.Points = 1
		g.Text = wording.Beside(g.Text, wording.OtherFamily(next.Name, next.Mark))
	} else {
		g.Why = wording.OtherFamily(said.Name, said.Mark)
	}
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

// logsOf are how far each part of a ratio is from that of another, as logarithms, and the mean
// of them.
func logsOf(a, b *ratio.Equivalents) (logs ratio.Equivalents, mean float64) {
	for i := range a {
		logs[i] = math.Log((a[i] + shareFloor) / (b[i] + shareFloor))
		mean += logs[i] / float64(len(logs))
	}
	return logs, mean
}

// gap is how far apart two ratios are, in just-noticeable differences of each
// part, once the larger drink is poured down to the size of the other.
func gap(a, b *ratio.Equivalents) float64 {
	logs, mean := logsOf(a, b)
	var sum float64
	for i := range logs {
		j := threshold.JND(ratio.Axis(i), logs[i]-mean)
		sum += j * j
	}
	return math.Sqrt(sum)
}
