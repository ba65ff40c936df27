package wording

import (
	"counterpour/flavor"
	"counterpour/flavor/technique"
)

// Method says what is wrong with how a drink is made by a method, and what comes of it.
func Method(m flavor.Method, x *technique.Misstep) string {
	name := x.Profile.Name
	switch x.Flaw {
	case technique.EggUnshaken:
		return name + " needs a hard shake: without it, it stays raw and stringy"
	case technique.Unshaken:
		return name + " is only stirred: shake it, or it stays flat and thin"
	case technique.Uniced:
		return name + " is built without ice: warm and not thinned"
	case technique.Curdled:
		return name + " curdles with this much " + x.With.Name
	case technique.HotOnIce:
		if m == flavor.Stir {
			return "hot " + name + " only melts the ice"
		}
		return "hot " + name + " bursts a closed tin: never shake or blend it"
	case technique.FatSet:
		return name + " sets in the cold and floats"
	case technique.Clouded:
		if m == flavor.Blend {
			return "nothing beside the " + name + " needs blending: stirred, it stays clear and silky"
		}
		return "nothing beside the " + name + " needs shaking: stirred, it stays clear and silky"
	}
	if m == flavor.Blend {
		return name + " goes flat in the blender: add it after"
	}
	return name + " goes flat in the shaker: add it after"
}

// Making says how else a drink is to be made; empty if no other way.
func Making(m *technique.Making) string {
	after := func() string { return "add the " + namesOf(m.After) + " after the shake" }
	switch m.Do {
	case technique.UseHot:
		return "use hot " + namesOf(m.Hot)
	case technique.AddAfterShake:
		return after()
	case technique.AddAfterBlend:
		return "blend the rest, and add the " + namesOf(m.After) + " after"
	case technique.AddHotAfterShake:
		return "shake the rest, and add the hot " + namesOf(m.After) + " after, in the mug"
	case technique.BuildInPlaceOfStir:
		return "build it hot, without ice"
	case technique.BuildInPlaceOfShake:
		return "build it hot, without shaking"
	case technique.StirIt:
		return "stir it"
	case technique.StirWithoutJuice:
		return "stir it, if no juice is meant to be in it"
	case technique.PourInto:
		if m.Service != "" {
			return "pour it into a " + m.Glass + ", over ice"
		}
		return "pour it into a " + m.Glass
	case technique.ShakeIt, technique.ShakeTwice:
		text := "shake it"
		if m.Do == technique.ShakeTwice {
			text = "shake it, first without ice, then with ice"
		}
		if len(m.After) > 0 {
			text += ", and " + after()
		}
		return text
	}
	return ""
}

func namesOf(of []*flavor.Profile) string {
	names := make([]string, len(of))
	for i, p := range of {
		names[i] = p.Name
	}
	return flavor.JoinAnd(names)
}
