package mix_test

import (
	"fmt"

	"counterpour/flavor"
	"counterpour/flavor/mix"
)

// A daiquiri, from grams to glass.
func Example() {
	profile := func(name string, class flavor.Class, abv, sugar, acid float64) *flavor.Profile {
		p := &flavor.Profile{Name: name, Class: class, ABV: flavor.Figure{Value: abv},
			Sugar: flavor.Figure{Value: sugar}, Sugars: flavor.SugarBlend{Sucrose: 1},
			Acid: flavor.Figure{Value: acid}, Acids: flavor.AcidBlend{Citric: 1}}
		if err := mix.Complete(p); err != nil {
			fmt.Println(err)
		}
		return p
	}
	spec := &flavor.Spec{Name: "Daiquiri", Method: flavor.Shake, Service: flavor.Up, Pours: []flavor.Pour{
		{Profile: profile("Light rum", flavor.ClassRum, 40, 0, 0), Unit: flavor.Millilitre, ML: 60},
		{Profile: profile("Lime juice", flavor.ClassSourJuice, 0, 16, 60), Unit: flavor.Millilitre, ML: 22.5},
		{Profile: profile("Simple syrup", flavor.ClassSyrup, 0, 615, 0), Unit: flavor.Millilitre, ML: 22.5},
	}}
	mixer, err := mix.NewMixer()
	if err != nil {
		fmt.Println(err)
		return
	}
	drink, err := mixer.Mix(spec)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f mL, %.1f %% vol, %.1f g sugar and %.2f g acid in 100 mL\n", drink.VolumeML, drink.ABV, drink.SugarPer100, drink.AcidPer100)
	fill, err := mix.FillText(drink.ColdML, spec.Service, mix.Glass{Name: "coupe", ML: 180}, mix.Glass{Name: "coupe", ML: 150})
	fmt.Println(fill, err)
	// Output:
	// 159 mL, 15.1 % vol, 8.9 g sugar and 0.85 g acid in 100 mL
	// fills a 180 mL coupe to 88 %; spills a 150 mL one by 9 mL <nil>
}

// What to weigh for a litre of syrup of equal weights.
func ExampleMakeSyrup() {
	s, err := mix.MakeSyrup(50, 1000)
	fmt.Printf("%.0f g sugar, %.0f g water: %.1f g/L %v\n", s.SugarG, s.WaterG, s.SugarGPerL, err)
	// Output:
	// 615 g sugar, 615 g water: 614.8 g/L <nil>
}

// A spirit of 96 % brought to 40 %: the water exceeds what the volumes suggest.
func ExampleDilute() {
	d, err := mix.Dilute(500, 96, 40)
	fmt.Printf("add %.0f mL water for %.0f mL; the mixing took %.0f mL %v\n", d.WaterML, d.FinalML, d.ContractionML, err)
	// Output:
	// add 735 mL water for 1200 mL; the mixing took 35 mL <nil>
}
