package mix

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor"
)

// heatDrinks are the drinks on which equations and energy balance are compared.
var heatDrinks = []struct {
	name   string
	method flavor.Method
	parts  []part
}{
	{"daiquiri", flavor.Shake, bookDrinks[0].parts},
	{"strong sour", flavor.Shake, []part{{60, 50, 0, 0}, {15, 40, 250, 0}, {22.5, 0, 16, 60}}},
	{"three to one sour", flavor.Shake, []part{{45, 40, 0, 0}, {30, 0, 615, 0}, {30, 0, 16, 60}}},
	{"shaken vermouth", flavor.Shake, []part{{75, 17, 150, 5}, {15, 0, 16, 60}}},
	{"shaken juices", flavor.Shake, []part{{90, 0, 90, 10}, {15, 0, 615, 0}}},
	{"manhattan", flavor.Stir, bookDrinks[1].parts},
	{"negroni", flavor.Stir, bookDrinks[2].parts},
	{"dry martini", flavor.Stir, []part{{60, 47, 0, 0}, {10, 18, 20, 5}}},
	{"bamboo", flavor.Stir, []part{{45, 16, 2, 4}, {45, 17, 100, 5}}},
	{"thrown vermouth", flavor.Throw, []part{{60, 17, 150, 5}, {30, 40, 0, 0}}},
	{"swizzle", flavor.Swizzle, []part{{60, 45, 0, 0}, {22.5, 0, 615, 0}, {22.5, 0, 16, 60}}},
	{"blended sour", flavor.Blend, []part{{60, 40, 0, 0}, {22.5, 0, 615, 0}, {22.5, 0, 16, 60}}},
}

// How far the two ways of working out dilution lie apart, measured over
// heatDrinks: 11.9 % of the added water, for the shaken vermouth, and 1.7 °C, for it
// and for the bamboo. Both are weaker than any drink that the equations were fitted to.
const (
	balanceBound  = 0.125
	balanceBoundC = 2.0 // °C
)

func TestEnergyBalanceAgainstEquations(t *testing.T) {
	m := mixer(t)
	for _, c := range heatDrinks {
		s := specOf(t, c.name, c.method, flavor.Rocks, c.parts...)
		d, err := m.Mix(s)
		require.NoError(t, err)
		b, err := m.Balance(s)
		require.NoError(t, err)
		apart := b.IceWaterG/d.IceWaterG - 1
		t.Logf("%-18s %-8s start %4.1f %% vol: equation %5.1f g, balance %5.1f g (%+3.0f %%); equation %5.1f °C, balance %5.1f °C",
			c.name, c.method, d.Before.ABV(), d.IceWaterG, b.IceWaterG, 100*apart, d.TemperatureC, b.TemperatureC)
		assert.Less(t, math.Abs(apart), balanceBound, c.name)
		assert.InDelta(t, b.TemperatureC, d.TemperatureC, balanceBoundC, c.name)
	}
}

// The ends of the lines below the equations' drinks are what the balance says.
func TestDilutionWithoutAlcohol(t *testing.T) {
	m := mixer(t)
	for method, want := range map[flavor.Method]float64{flavor.Stir: stirredWithoutAlcohol, flavor.Shake: shakenWithoutAlcohol} {
		b, err := m.Balance(specOf(t, "", method, flavor.Up, part{100, 0, 80, 10}))
		require.NoError(t, err)
		assert.InDelta(t, 100*want, b.DilutionPct, 1.5, "%s", method)
	}
}

// How cold drinks are served: common practice, no source. Where a thermometer
// reads in the glass a minute after mixing.
func TestServingTemperaturesOfPractice(t *testing.T) {
	m := mixer(t)
	water, tonic := made(t, 0, 0, 0), made(t, 0, 80, 4)
	water.Carbonated, tonic.Carbonated = true, true
	sour := []part{{60, 40, 0, 0}, {22.5, 0, 615, 0}, {22.5, 0, 16, 60}}
	for _, c := range []struct {
		name      string
		method    flavor.Method
		service   flavor.Service
		parts     []part
		top       *flavor.Profile
		topML     float64
		low, high float64 // °C
	}{
		{"spirit and sugar built on cubes", flavor.Build, flavor.Rocks, []part{{60, 45, 0, 0}, {7.5, 0, 615, 0}}, nil, 0, 0, 4},
		{"equal parts built on cubes", flavor.Build, flavor.Rocks, bookDrinks[2].parts, nil, 0, 0, 4},
		{"spirit and tonic", flavor.Build, flavor.Long, []part{{50, 40, 0, 0}}, tonic, 120, 0, 3},
		{"spirit and soda", flavor.Build, flavor.Long, []part{{50, 40, 0, 0}}, water, 120, 0, 3},
		{"spirit and juice", flavor.Build, flavor.Long, []part{{45, 40, 0, 0}, {120, 0, 90, 10}}, nil, 0, 0, 3},
		{"shaken, lengthened", flavor.Shake, flavor.Long, sour, water, 90, -2, 3},
		{"stirred dry drink", flavor.Stir, flavor.Up, []part{{60, 47, 0, 0}, {12, 18, 20, 5}}, nil, 0, -4, 0},
		{"stirred with sweet vermouth", flavor.Stir, flavor.Up, bookDrinks[1].parts, nil, 0, -4, 0},
		{"stirred on the rocks", flavor.Stir, flavor.Rocks, bookDrinks[2].parts, nil, 0, -4, 0},
		{"shaken sour", flavor.Shake, flavor.Up, sour, nil, 0, -7, -4},
		{"swizzle", flavor.Swizzle, flavor.Crushed, sour, nil, 0, -6, -2},
		{"julep", flavor.Build, flavor.Crushed, []part{{60, 45, 0, 0}, {10, 0, 615, 0}}, nil, 0, -4, 1},
		{"blended sour", flavor.Blend, flavor.Up, sour, nil, 0, -6, -1},
		{"blended with juice and cream", flavor.Blend, flavor.Up, []part{{60, 40, 0, 0}, {90, 0, 120, 5}, {30, 0, 300, 2}}, nil, 0, -4, -1},
	} {
		s := specOf(t, c.name, c.method, c.service, c.parts...)
		if c.top != nil {
			s.Pours = append(s.Pours, pour(c.top, c.topML))
		}
		d, err := m.Mix(s)
		require.NoError(t, err)
		t.Logf("%-32s %5.1f °C, %2.0f %% of water, freezes at %5.1f °C", c.name, d.TemperatureC, d.DilutionPct, d.FreezingC)
		assert.GreaterOrEqual(t, d.TemperatureC, c.low, c.name)
		assert.LessOrEqual(t, d.TemperatureC, c.high, c.name)
	}
}

// What stands on ice melts what its heat takes, and nothing if it comes frozen.
func TestServedOnIce(t *testing.T) {
	cold := settingFor(flavor.Build, flavor.Long, Ice{})
	dry := cold
	dry.wet = 0
	p := parts{water: 200}
	water, c := dry.stand(&p, 20, 20, 200, 1)
	assert.InDelta(t, 200*waterHeat*(20-c), water*(LatentHeat+waterHeat*c), 1e-4, "what it gave up is what melting took")
	assert.InDelta(t, 20*leftOnIce, c, 0.02)
	less, warmer := dry.stand(&p, 20, 20, 200, 0.5)
	assert.InDelta(t, water/2, less, 1e-9)
	assert.InDelta(t, 200*waterHeat*(20-warmer), less*(LatentHeat+waterHeat*warmer), 0.02*200*waterHeat*20, "half the water, half the cooling")
	wet, _ := cold.stand(&p, 20, 20, 200, 1)
	assert.Greater(t, wet, water)
	strained := settingFor(flavor.Shake, flavor.Rocks, Ice{})
	water, c = strained.stand(&parts{water: 100, ethanol: 15}, -4, -5, 100, 1)
	assert.InDelta(t, 0, water, 0.1, "a drink from the shaker is colder than the ice")
	assert.InDelta(t, -4, c, 0.1)
	up := settingFor(flavor.Shake, flavor.Up, Ice{})
	water, c = up.stand(&p, 10, 10, 200, 1)
	assert.Zero(t, water)
	assert.InDelta(t, 10, c, 0)
	freezer := settingFor(flavor.Build, flavor.Rocks, Ice{TemperatureC: -18})
	colder, end := freezer.stand(&p, 20, 20, 200, 1)
	assert.Less(t, colder, wet, "cold ice melts less")
	left := freezer.perML*200 - colder
	assert.InDelta(t, 200*waterHeat*(20-end), colder*(LatentHeat+waterHeat*end+18*iceHeat)+left*freezer.cools*18*iceHeat, 1e-3,
		"what it gave up melted some of the ice and warmed the rest")
	large := settingFor(flavor.Build, flavor.Rocks, Ice{Kind: LargeCube})
	_, slow := large.stand(&p, 20, 20, 200, 1)
	_, quick := cold.stand(&p, 20, 20, 200, 1)
	assert.Greater(t, slow, quick+2, "one large cube cools slowly")
}

// Nothing gets cold but by melting: with ice at 0 °C, what the drink gave up is
// no more than what melting took, and without ice it stays as warm as the bar.
func TestNoChillingWithoutDilution(t *testing.T) {
	m := mixer(t)
	bare, err := m.WithIce(Ice{Kind: NoIce})
	require.NoError(t, err)
	rapid.Check(t, func(rt *rapid.T) {
		s := drawSpec(rt, t)
		d, err := m.Mix(s)
		require.NoError(t, err)
		p := d.Before.parts()
		assert.LessOrEqual(t, p.heatCapacity()*(usualBarC-d.TemperatureC),
			d.IceWaterG*LatentHeat+1e-6, "chilled by more than the ice that melted")
		if d.TemperatureC < usualBarC-1e-9 {
			assert.Positive(t, d.IceWaterG)
		}
		n, err := bare.Mix(s)
		require.NoError(t, err)
		assert.Zero(t, n.IceWaterG)
		warm := usualBarC
		if s.Service == flavor.Hot {
			warm = usualHotC
		}
		assert.InDelta(t, warm, n.TemperatureC, 1e-9)
		assert.Equal(t, n.Before, n.After)
	})
}

// A hot drink and a neat one meet no ice, unless it takes ice to mix them; a
// pour that goes in afterwards does not meet it either.
func TestServedWithoutIce(t *testing.T) {
	m := mixer(t)
	mixed := func(method flavor.Method, service flavor.Service, change func(*flavor.Spec)) *Drink {
		s := specOf(t, "", method, service, part{60, 40, 0, 0}, part{120, 0, 20, 0})
		change(s)
		d, err := m.Mix(s)
		require.NoError(t, err)
		return d
	}
	same := func(*flavor.Spec) {}
	for _, method := range flavor.Methods() {
		hot := mixed(method, flavor.Hot, same)
		assert.Zero(t, hot.IceWaterG, "%s, hot", method)
		assert.InDelta(t, usualHotC, hot.TemperatureC, 1e-9, "%s, hot", method)
		neat := mixed(method, flavor.Neat, same)
		assert.Equal(t, method == flavor.Build || method == flavor.Stir, neat.IceWaterG == 0, "%s, neat", method)
	}
	stated := mixed(flavor.Build, flavor.Hot, func(s *flavor.Spec) { s.HotC = 72 })
	assert.InDelta(t, 72, stated.TemperatureC, 1e-9)
	after := mixed(flavor.Shake, flavor.Long, func(s *flavor.Spec) { s.Pours[1].After = true })
	assert.Less(t, after.IceWaterG, mixed(flavor.Shake, flavor.Long, same).IceWaterG, "less meets the ice")
	cooled := mixed(flavor.Build, flavor.Hot, func(s *flavor.Spec) { s.Pours[1].After = true })
	assert.Less(t, cooled.TemperatureC, usualHotC, "what is floated comes from the refrigerator")
}

func TestMoreWaterIsColder(t *testing.T) {
	p := parts{ethanol: 19, water: 60, sugar: 14, acid: 1.4}
	v := p.volumeML()
	set := settingFor(flavor.Shake, flavor.Up, Ice{})
	last := math.Inf(1)
	for water := 0.0; water < 120; water++ {
		c := set.settles(&p, v, water, set.vesselJ)
		assert.Less(t, c, last, "%v g", water)
		last = c
	}
}

// settles is the root of surplus.
func TestSettlesBalancesTheHeat(t *testing.T) {
	p := parts{ethanol: 19, water: 60, sugar: 14, acid: 1.4}
	v := p.volumeML()
	for _, ice := range []Ice{{}, {Kind: LargeCube}, {TemperatureC: -12}, {Wetness: 0.2, BarC: 30}} {
		set := settingFor(flavor.Shake, flavor.Up, ice)
		for _, water := range []float64{10, 40, 80} {
			c := set.settles(&p, v, water, set.vesselJ)
			clinging := min(set.wet*set.perML*v, water)
			assert.InDelta(t, 0, set.surplus(&p, water-clinging, clinging, v, c), 1e-6, "%+v, %v g", ice, water)
		}
	}
}

// Sugar Technologists Manual, 1995 (from memory): 4.1868 − B (0.0297 − 4.6e-5 P)
// + 7.5e-5 B t, at P = 100 and 10 °C.
func TestHeatOfSyrup(t *testing.T) {
	for _, brix := range []float64{10, 30, 50, 65} {
		want := 4.1868 - brix*(0.0297-4.6e-3) + 7.5e-5*brix*10
		p := parts{sugar: brix, water: 100 - brix}
		assert.InDelta(t, want, p.heatCapacity()/100, 0.01, "%v °Bx", brix)
	}
}

// Perry's Chemical Engineers' Handbook (from memory): ethanol in water by mass,
// J/(g K) near 15 °C.
func TestHeatOfEthanolAndWater(t *testing.T) {
	for _, r := range [][2]float64{{0, 4.19}, {10, 4.33}, {24.9, 4.29}, {60, 3.48}, {100, 2.44}} {
		p := parts{ethanol: r[0], water: 100 - r[0]}
		assert.InDelta(t, r[1], p.heatCapacity()/100, 0.06, "%v %%", r[0])
	}
	spirit := parts{ethanol: 33, water: 67}
	assert.Positive(t, spirit.dilutionHeat(20), "mixing with water warms")
}

// Where nothing of the way to the freezing point is left and nothing clings, what melts
// is the heat of what cools over the latent heat.
func TestBalanceToFreezing(t *testing.T) {
	m := mixer(t)
	melt := func(p parts, vesselJ float64) (g, c float64) {
		return m.balance(&p, &setting{startC: usualBarC, barC: usualBarC, vesselJ: vesselJ, perML: usualIcePerML})
	}
	g, c := melt(parts{water: 100}, 0)
	assert.InDelta(t, 100*20*waterHeat/LatentHeat, g, 1e-6)
	assert.InDelta(t, 0, c, 1e-9)
	g, _ = melt(parts{water: 100}, 150)
	assert.InDelta(t, (100*waterHeat+150)*20/LatentHeat, g, 1e-6, "the vessel cools too")
	_, c = melt(parts{water: 100, ethanol: 30}, 0)
	assert.Less(t, c, -5.0, "a drink cools to its own freezing point")
	g, _ = melt(parts{}, 0)
	assert.Zero(t, g, "nothing is there to cool")
}

// What other ice does to a daiquiri, in the directions that heat demands.
func TestIce(t *testing.T) {
	m := mixer(t)
	s := specOf(t, "daiquiri", flavor.Shake, flavor.Up, bookDrinks[0].parts...)
	water := func(i Ice) float64 {
		iced, err := m.WithIce(i)
		require.NoError(t, err)
		d, err := iced.Mix(s)
		require.NoError(t, err)
		t.Logf("%+v: %.1f g, %.1f °C", i, d.IceWaterG, d.TemperatureC)
		assert.GreaterOrEqual(t, d.TemperatureC, d.FreezingC)
		return d.IceWaterG
	}
	usual := water(Ice{})
	assert.InDelta(t, usual, water(Ice{Kind: Cubes, BarC: usualBarC, GramsPerML: usualIcePerML, Vessel: SteelShaker, Wetness: Cubes.info().film}), 1e-9,
		"the defaults written out")
	assert.Less(t, water(Ice{Kind: LargeCube}), usual, "less wet, and its core stays behind")
	assert.Greater(t, water(Ice{Kind: CrushedIce}), usual, "wetter")
	assert.Less(t, water(Ice{TemperatureC: -18}), usual, "dry and cold")
	assert.Greater(t, water(Ice{Wetness: 0.15}), usual)
	assert.Greater(t, water(Ice{BarC: 30}), usual)
	assert.Less(t, water(Ice{BarC: 5}), usual)
	assert.Greater(t, water(Ice{Vessel: GlassAndTin}), usual)
	assert.Less(t, water(Ice{Vessel: NoVessel}), usual)

	stirred := specOf(t, "negroni", flavor.Stir, flavor.Up, bookDrinks[2].parts...)
	cubes, err := m.Mix(stirred)
	require.NoError(t, err)
	large, err := m.WithIce(Ice{Kind: LargeCube})
	require.NoError(t, err)
	slow, err := large.Mix(stirred)
	require.NoError(t, err)
	assert.Less(t, slow.IceWaterG, 0.9*cubes.IceWaterG, "one large cube stirs slowly")
	assert.Greater(t, slow.TemperatureC, cubes.TemperatureC)
}

func TestIceRefuses(t *testing.T) {
	m := mixer(t)
	for _, i := range []Ice{
		{Kind: "snow"}, {Vessel: "boot"}, {TemperatureC: 1}, {TemperatureC: -41}, {TemperatureC: math.NaN()},
		{Wetness: -0.1}, {Wetness: 0.6}, {GramsPerML: 0.1}, {GramsPerML: math.Inf(1)}, {BarC: 50}, {BarC: -3},
	} {
		_, err := m.WithIce(i)
		assert.ErrorIs(t, err, flavor.ErrInvalid, "%+v", i)
	}
	for _, k := range IceKinds() {
		require.NoError(t, Ice{Kind: k}.Check())
	}
	for _, v := range Vessels() {
		require.NoError(t, Ice{Vessel: v}.Check())
		assert.Equal(t, v == NoVessel, v.heatJPerK() == 0)
	}
	assert.Zero(t, Vessel("boot").heatJPerK())
}

func TestBalanceRefusesAndRests(t *testing.T) {
	m := mixer(t)
	_, err := m.Balance(&flavor.Spec{})
	assert.ErrorIs(t, err, flavor.ErrInvalid)
	b, err := m.Balance(specOf(t, "", flavor.Build, flavor.Up, part{100, 40, 0, 0}))
	require.NoError(t, err)
	assert.Zero(t, b.IceWaterG)
	assert.InDelta(t, usualBarC, b.TemperatureC, 0)
}

// What is hot melts more ice: as much as the heat that it brings beyond the bar's
// 20 °C melts, but for what stirring, which ends sooner, leaves in the drink.
func TestHotPoursMeltMore(t *testing.T) {
	m := mixer(t)
	vodka, coffee := made(t, 40, 0, 0), made(t, 0, 0, 0)
	coffee.Class = flavor.ClassCoffee
	mix := func(method flavor.Method, service flavor.Service, heat flavor.Heat) *Drink {
		hot := pour(coffee, 30)
		hot.Heat = heat
		d, err := m.Mix(&flavor.Spec{Method: method, Service: service, Pours: []flavor.Pour{pour(vodka, 60), hot}})
		require.NoError(t, err)
		return d
	}
	extra := 30 * waterHeat * (flavor.ClassCoffee.HotC() - usualBarC)
	for _, c := range []struct {
		method    flavor.Method
		service   flavor.Service
		low, high float64 // of what the heat melts
	}{{flavor.Shake, flavor.Up, 0.9, 1.1}, {flavor.Build, flavor.Rocks, 0.9, 1.1}, {flavor.Shake, flavor.Rocks, 0.9, 1.1}, {flavor.Stir, flavor.Up, 0.4, 0.7}} {
		cold, hot := mix(c.method, c.service, ""), mix(c.method, c.service, flavor.HeatHot)
		melted := hot.IceWaterG - cold.IceWaterG
		assert.Greater(t, melted, c.low*extra/LatentHeat, "%s, %s", c.method, c.service)
		assert.Less(t, melted, c.high*extra/LatentHeat, "%s, %s", c.method, c.service)
		assert.GreaterOrEqual(t, hot.TemperatureC, cold.TemperatureC)
		assert.Less(t, hot.TemperatureC, cold.TemperatureC+10)
		assert.Positive(t, hot.PlusMinus.TemperatureC)
		assert.Equal(t, cold.IceWaterG, mix(c.method, c.service, flavor.HeatCold).IceWaterG, "juice from the refrigerator is in the equations")
	}
	neat := mix(flavor.Build, flavor.Up, flavor.HeatHot)
	assert.Zero(t, neat.IceWaterG)
	hot := pour(coffee, 30)
	hot.Heat = flavor.HeatHot
	assert.InDelta(t, MixedC(&flavor.Spec{Pours: []flavor.Pour{pour(vodka, 60), hot}}, nil), neat.TemperatureC, 1e-9)

	// A hot top is as hot as it is poured: all of the drink where nothing else is in it.
	hot.After = true
	top, err := m.Mix(&flavor.Spec{Method: flavor.Build, Service: flavor.Up, Pours: []flavor.Pour{hot}})
	require.NoError(t, err)
	assert.InDelta(t, flavor.ClassCoffee.HotC(), top.TemperatureC, 1e-9)
	onIce, err := m.Mix(&flavor.Spec{Method: flavor.Build, Service: flavor.Rocks, Pours: []flavor.Pour{pour(vodka, 60), hot}})
	require.NoError(t, err)
	assert.InEpsilon(t, mix(flavor.Build, flavor.Rocks, flavor.HeatHot).IceWaterG, onIce.IceWaterG, 0.08, "the ice takes the same heat, and less of its film goes in with less to mix")
}
