package kitchen

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"

	"counterpour/api/service/fault"
	"counterpour/flavor"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/meaning"
	"counterpour/flavor/measure/draft/names/dressing"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/reading"
	"counterpour/flavor/measure/draft/words/assumed"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/ratio"
)

// Fields is a spec in fields. A missing method or service is assumed as in a text.
type Fields struct {
	Name, Method, Service string
	Pours                 []Line
	HotC                  float64 // temperature of a hot drink, in °C; 0: not stated
	Glass, Garnish, Rim   string
	Steps                 []string
	LeftOff               []string // what was left off for a guest
}

// Line is one pour in fields. Without a unit the amount counts pieces. ID, Name and ML
// repeat what the other fields say, as answers do, and must agree with them where they
// are set.
type Line struct {
	Ingredient string // name, alias or id; if empty, ID or Name says it
	Amount     float64
	Unit       string
	ID         string
	Name       string
	ML         float64
	After      bool // added after the rest is mixed
}

// called returns the name by which the ingredient is looked up.
func (l *Line) called() string { return cmp.Or(l.Ingredient, l.ID, l.Name) }

// sameML is the tolerance between the millilitres of a line and those of its amount and
// unit, as a share. It allows for the rounding of answers.
const sameML = 0.01

// check finds contradictions between the fields of a line.
func (k *Kitchen) check(l *Line, pour *flavor.Pour, place string) (faults flavor.DataFaults) {
	if l.ID != "" && l.ID != pour.Profile.ID {
		faults = append(faults, flavor.Invalid(place+".id", l.ID, "%q is not the id of %s, which is %q; leave it out", fault.Quotable(l.ID), pour.Profile.Name, pour.Profile.ID))
	}
	if p, _, err := k.Index.Resolve(l.Name); l.Name != "" && (err != nil || p.ID != pour.Profile.ID) {
		faults = append(faults, flavor.Invalid(place+".name", fault.Quotable(l.Name), "%q is not the same ingredient as %s; leave it out", fault.Quotable(l.Name), pour.Profile.Name))
	}
	if l.ML != 0 && !(math.Abs(l.ML-pour.ML) <= max(sameML, sameML*pour.ML)) {
		faults = append(faults, flavor.Invalid(place+".ml", l.ML, "%v %s of %s are %.2f mL and not %v; leave ml out", pour.Amount, pour.Unit, pour.Profile.Name, pour.ML, l.ML))
	}
	return faults
}

// ReadText reads a spec from text, even if nothing in it can be weighed. Its faults name
// the line and the word.
func (k *Kitchen) ReadText(text string) (flavor.Spec, error) {
	spec, err := reading.Read(text, k.Index)
	if err != nil {
		return flavor.Spec{}, err
	}
	return spec, nil
}

// ReadPart reads the lines of a text that can be read; the reading holds the faults of the
// others. It fails only if the index does.
func (k *Kitchen) ReadPart(text string) (reading.Reading, error) {
	return reading.Resolve(draft.Parse(text), k.Index)
}

// ReadRest reads a text as ReadPart does. It fails if the lines that were read have nothing
// to weigh: with the faults of the others, or with that.
func (k *Kitchen) ReadRest(text string) (reading.Reading, error) {
	r, err := k.ReadPart(text)
	if err != nil {
		return reading.Reading{}, err
	}
	if err := CheckWeight(&r.Spec); err != nil {
		if len(r.Faults) > 0 {
			err = r.Faults
		}
		return reading.Reading{}, err
	}
	return r, nil
}

// CheckWeight returns a fault if the strength, sweetness, acid, bitterness and length of a
// drink are all zero.
func CheckWeight(s *flavor.Spec) error {
	var total float64
	for _, v := range ratio.EquivalentsOf(s) {
		total += v
	}
	if !(total > 0) {
		return flavor.Invalid("", "", "the drink has no strength, sweetness, acid, bitterness or length to weigh; add a pour that has")
	}
	return nil
}

// Known finds the ingredients behind written names.
func (k *Kitchen) Known() naming.Finder { return k.Index }

// ReadFields reads a spec from fields, with the same checks and assumptions as for a
// text.
func (k *Kitchen) ReadFields(in *Fields) (flavor.Spec, error) {
	var faults flavor.DataFaults
	out := flavor.Spec{Name: strings.Join(strings.Fields(in.Name), " "), HotC: in.HotC,
		Glass: in.Glass, Garnish: in.Garnish, Rim: in.Rim, Steps: slices.Clone(in.Steps), LeftOff: slices.Clone(in.LeftOff)}
	if strings.ContainsFunc(out.Name, unicode.IsControl) {
		faults = append(faults, flavor.Invalid("spec.name", in.Name, "the name holds a control character; delete it"))
	}
	if len(in.Pours) == 0 {
		faults = append(faults, flavor.Invalid("spec.pours", "", "there is no pour here; give at least one, such as 2 oz London dry gin"))
	}
	if len(in.Pours) > draft.MaxPours {
		return flavor.Spec{}, flavor.Invalid("spec.pours", "", "these are more than %d pours; leave some out", draft.MaxPours)
	}
	for i := range in.Pours {
		l, place := &in.Pours[i], fmt.Sprintf("spec.pours[%d]", i)
		pour, err := meaning.ResolvePour(l.Amount, l.Unit, l.called(), place, k.Index)
		if err == nil {
			faults = append(faults, k.check(l, &pour, place)...)
		} else if err := fault.Collect(&faults, err); err != nil {
			return flavor.Spec{}, err
		}
		pour.After = pour.After || l.After
		out.Pours = append(out.Pours, pour)
	}
	var ok bool
	if out.Method, ok = serving.ParseMethod(in.Method); !ok && strings.TrimSpace(in.Method) != "" {
		faults = append(faults, unknownWord("spec.method", in.Method, "method", flavor.Methods()))
	}
	if out.Service, ok = serving.ParseService(in.Service); !ok && strings.TrimSpace(in.Service) != "" {
		faults = append(faults, unknownWord("spec.service", in.Service, "service", flavor.Services()))
	}
	if len(faults) > 0 {
		return flavor.Spec{}, faults
	}
	if err := dressing.Dress(&out, k.Index); err != nil {
		return flavor.Spec{}, err
	}
	return assumed.Fill(out), nil
}

func unknownWord[T ~string](location, word, what string, known []T) *flavor.DataFault {
	f := flavor.Invalid(location, word, "%q is no %s; use %s", fault.Quotable(word), what, flavor.JoinOr(words(known)))
	f.Suggest = serving.NearestMethods(word)
	return f
}

func words[T ~string](list []T) []string {
	out := make([]string, len(list))
	for i, w := range list {
		out[i] = string(w)
	}
	return out
}
