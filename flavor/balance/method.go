package balance

import (
	"cmp"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/template"
)

// methodFaults tells what is wrong with how a drink is made, the worst first.
func methodFaults(s *flavor.Spec, j *template.Judgement) []Fault {
	var out []Fault
	for _, x := range j.Method {
		if x.Edges < 1 || slices.ContainsFunc(out, func(f Fault) bool { return f.Method == x.Fault }) {
			continue
		}
		out = append(out, Fault{Axis: template.Method, High: !neglects(x.Fault), Odds: 1, Deviation: leastDeviation * x.Edges,
			Profile: x.Profile, Method: x.Fault, Text: methodText(s, &x), with: x.With})
	}
	slices.SortStableFunc(out, func(a, b Fault) int { return cmp.Compare(b.Deviation, a.Deviation) })
	return out
}

// neglects reports whether a fault of method is that something was not done.
func neglects(f template.MethodFault) bool {
	return f == template.EggUnshaken || f == template.Unshaken || f == template.Uniced
}

// methodText says a fault of method and what comes of it.
func methodText(s *flavor.Spec, x *template.MethodSlip) string {
	name := x.Profile.Name
	switch x.Fault {
	case template.EggUnshaken:
		return name + " needs a hard shake: without it, it stays raw and stringy"
	case template.Unshaken:
		return name + " is only stirred: shake it, or it stays flat and thin"
	case template.Uniced:
		return name + " is built without ice: warm and not thinned"
	case template.Curdled:
		return name + " curdles with this much " + x.With.Name
	case template.HotOnIce:
		if s.Method == flavor.Stir {
			return "hot " + name + " only melts the ice"
		}
		return "hot " + name + " bursts a closed tin: never shake or blend it"
	case template.FatSet:
		return name + " sets in the cold and floats"
	case template.Clouded:
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
	case template.EggUnshaken, template.Unshaken:
		return "not shaken"
	case template.Uniced:
		return "not chilled"
	case template.Curdled:
		return "curdles"
	case template.Flat:
		return "goes flat"
	case template.HotOnIce:
		return "too hot to shake"
	case template.FatSet:
		return "sets"
	case template.Clouded:
		return "clouded"
	}
	words := axisWords[f.Axis]
	if f.High {
		return words[0]
	}
	return words[1]
}

// axisWords says of each axis that there is too much and too little of it.
var axisWords = map[template.Axis][2]string{
	template.Strong: {"too strong", "too weak"}, template.Sweet: {"too sweet", "not sweet enough"}, template.Sour: {"too sour", "not sour enough"},
	template.Bitter: {"too bitter", "not bitter enough"}, template.Long: {"too thin", "too short"},
	template.Salty: {"too salty", "not salty enough"}, template.Umami: {"too savoury", "not savoury enough"}, template.Pungent: {"too fiery", "not fiery enough"},
	template.Aroma: {"takes over", "too plain"}, template.Fat: {"too rich", "too lean"}, template.Foam: {"too much egg", "too little egg"},
	template.Volume: {"too big", "too small"}, template.Temperature: {"too hot", "too cold"}, template.Method: {"badly made", "badly made"},
}
