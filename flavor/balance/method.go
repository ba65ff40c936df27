package balance

import (
	"cmp"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/ratio"
	"counterpour/flavor/technique"
	"counterpour/flavor/weigh"
)

// methodFaults tells what is wrong with how a drink is made, the worst first.
func methodFaults(s *flavor.Spec, j *weigh.Judgement) []Fault {
	var out []Fault
	for _, x := range j.Method {
		if x.Edges < 1 || slices.ContainsFunc(out, func(f Fault) bool { return f.Method == x.Fault }) {
			continue
		}
		out = append(out, Fault{Axis: ratio.Method, High: !neglects(x.Fault), Odds: 1, Deviation: leastDeviation * x.Edges,
			Profile: x.Profile, Method: x.Fault, Text: methodText(s, &x), with: x.With})
	}
	slices.SortStableFunc(out, func(a, b Fault) int { return cmp.Compare(b.Deviation, a.Deviation) })
	return out
}

// neglects reports whether a fault of method is that something was not done.
func neglects(f technique.Fault) bool {
	return f == technique.EggUnshaken || f == technique.Unshaken || f == technique.Uniced
}

// methodText says a fault of method and what comes of it.
func methodText(s *flavor.Spec, x *technique.Slip) string {
	name := x.Profile.Name
	switch x.Fault {
	case technique.EggUnshaken:
		return name + " needs a hard shake: without it, it stays raw and stringy"
	case technique.Unshaken:
		return name + " is only stirred: shake it, or it stays flat and thin"
	case technique.Uniced:
		return name + " is built without ice: warm and not thinned"
	case technique.Curdled:
		return name + " curdles with this much " + x.With.Name
	case technique.HotOnIce:
		if s.Method == flavor.Stir {
			return "hot " + name + " only melts the ice"
		}
		return "hot " + name + " bursts a closed tin: never shake or blend it"
	case technique.FatSet:
		return name + " sets in the cold and floats"
	case technique.Clouded:
		if s.Method == flavor.Blend {
			return "nothing beside the " + name + " needs blending: stirred, it stays clear and silky"
		}
		return "nothing beside the " + name + " needs shaking: stirred, it stays clear and silky"
	}
	if s.Method == flavor.Blend {
		return name + " goes flat in the blender: add it after"
	}
	return name + " goes flat in the shaker: add it after"
}

// Word says a fault in a word or two, as bars do: "too sweet", "curdles".
func (f *Fault) Word() string {
	switch f.Method {
	case technique.EggUnshaken, technique.Unshaken:
		return "not shaken"
	case technique.Uniced:
		return "not chilled"
	case technique.Curdled:
		return "curdles"
	case technique.Flat:
		return "goes flat"
	case technique.HotOnIce:
		return "too hot to shake"
	case technique.FatSet:
		return "sets"
	case technique.Clouded:
		return "clouded"
	}
	if f.foreign {
		return "out of place"
	}
	words := axisWords[f.Axis]
	if f.High {
		return words[0]
	}
	return words[1]
}

// axisWords says of each axis that there is too much and too little of it.
var axisWords = map[ratio.Axis][2]string{
	ratio.Strong: {"too strong", "too weak"}, ratio.Sweet: {"too sweet", "not sweet enough"}, ratio.Sour: {"too sour", "not sour enough"},
	ratio.Bitter: {"too bitter", "not bitter enough"}, ratio.Long: {"too thin", "too short"},
	ratio.Salty: {"too salty", "not salty enough"}, ratio.Umami: {"too savoury", "not savoury enough"}, ratio.Pungent: {"too fiery", "not fiery enough"},
	ratio.Aroma: {"takes over", "too plain"}, ratio.Fat: {"too rich", "too lean"}, ratio.Foam: {"too much egg", "too little egg"},
	ratio.Volume: {"too big", "too small"}, ratio.Temperature: {"too hot", "too cold"}, ratio.Method: {"badly made", "badly made"},
}
