package service

import (
	"counterpour/flavor"
	"counterpour/flavor/mix"
)

// glassesFor returns the glasses that a service is usually poured into, a
// smaller one after the usual where bars keep both; common practice.
func glassesFor(s flavor.Service) []mix.Glass {
	switch s {
	case flavor.Rocks:
		return []mix.Glass{{Name: "rocks glass", ML: 300}}
	case flavor.Long:
		return []mix.Glass{{Name: "highball glass", ML: 350}, {Name: "collins glass", ML: 400}}
	case flavor.Crushed:
		return []mix.Glass{{Name: "julep cup", ML: 350}}
	case flavor.Hot:
		return []mix.Glass{{Name: "mug", ML: 250}}
	case flavor.Neat:
		return []mix.Glass{{Name: "rocks glass", ML: 300}}
	}
	return []mix.Glass{{Name: "coupe", ML: 150}, {Name: "coupe", ML: 240}}
}
