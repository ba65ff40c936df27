// Package datatest loads the embedded data for tests of packages that work on it, once for
// each test binary.
package datatest

import (
	"sync"

	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/mix"
	"counterpour/flavor/template"
	"counterpour/flavor/weigh"
)

// Data is the catalogue, the families with the proven drinks that they were fitted to, and
// a mixer. Tests share it and must not change it.
type Data struct {
	Catalogue *data.Catalogue
	Set       *weigh.Set
	Proven    []template.Labelled
	Mixer     *mix.Mixer
}

// Fit is data whose families were fitted anew, with the families and what the fit gave.
type Fit struct {
	Data
	Families []template.Family
	Fitted   []template.Fitted
}

var (
	calibrated = sync.OnceValues(loadCalibrated)
	refitted   = sync.OnceValues(loadRefitted)
)

// Calibrated returns the data with the families as they were last calibrated.
func Calibrated() (*Data, error) { return calibrated() }

// Refitted returns the data with the families fitted anew, so that a test does not depend
// on when the file of fitted values was last written.
func Refitted() (*Fit, error) { return refitted() }

// Spec reads a spec from text.
func (d *Data) Spec(t require.TestingT, text string) *flavor.Spec {
	s, err := d.Catalogue.ReadSpec("", text)
	require.NoError(t, err)
	return &s
}

func loadCalibrated() (*Data, error) {
	c, err := data.Embedded()
	if err != nil {
		return nil, err
	}
	set, proven, err := c.Set()
	if err != nil {
		return nil, err
	}
	mixer, err := mix.NewMixer()
	return &Data{c, set, proven, mixer}, err
}

func loadRefitted() (*Fit, error) {
	c, err := data.Embedded()
	if err != nil {
		return nil, err
	}
	rig, err := c.Rig(template.DefaultTuning())
	if err != nil {
		return nil, err
	}
	fitted, err := template.Learn(rig.Families, rig.Proven, rig.Tuning)
	if err != nil {
		return nil, err
	}
	set, err := weigh.NewSet(rig.Families, fitted, rig.Proven, rig.Tuning)
	if err != nil {
		return nil, err
	}
	mixer, err := mix.NewMixer()
	return &Fit{Data{c, set, rig.Proven, mixer}, rig.Families, fitted}, err
}
