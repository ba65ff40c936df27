package training

import (
	"fmt"
	"math/rand/v2"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/drill/tasting"
	"counterpour/flavor/ratio"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

const flightPath = "/training/flight"

// flightForm is what the form of a flight sends, as it was typed.
type flightForm struct{ Drink, Text, Axis, Builds, Step, Tasters, Each, Seed string }

// ownText is the choice of the drink in the box.
const ownText = ""

func readFlightForm(sent url.Values) flightForm {
	f := form.Values(sent)
	return flightForm{Drink: f.Get("drink"), Text: strings.ReplaceAll(sent.Get("text"), "\r\n", "\n"), Axis: f.Get("axis"), Builds: f.Get("builds"),
		Step: f.Get("step"), Tasters: f.Get("tasters"), Each: f.Get("each"), Seed: f.Get("seed")}
}

// address is the form as an address, so that a plan can be opened again.
func (f flightForm) address(seed string) string {
	v := url.Values{"drink": {f.Drink}, "axis": {f.Axis}, "builds": {f.Builds}, "step": {f.Step}, "tasters": {f.Tasters}, "each": {f.Each}, "seed": {seed}}
	if f.Text != "" {
		v.Set("text", f.Text)
	}
	return flightPath + "?" + v.Encode()
}

// newSeed draws what codes and orders are drawn from; it is short enough to be
// read out.
func newSeed() string { return strconv.FormatUint(uint64(rand.Uint32()), 36) }

func readSeed(text string) (uint64, error) {
	seed, err := strconv.ParseUint(text, 36, 64)
	if err != nil {
		return 0, fmt.Errorf("%w: seed: %w", form.ErrUnreadable, err)
	}
	return seed, nil
}

// flight shows the form, and the plan if one is asked for. A plan without a seed
// is sent on to an address that has one.
func (p *pages) flight(w http.ResponseWriter, r *http.Request) error {
	if err := form.Parse(r); err != nil {
		return err
	}
	sent := readFlightForm(r.Form)
	asked := r.Form.Has("axis")
	if asked && sent.Seed == "" {
		http.Redirect(w, r, sent.address(newSeed()), http.StatusSeeOther)
		return nil
	}
	menu, err := p.house.Menu(r.Context())
	if err != nil {
		return err
	}
	v := flightViewOf(sent, menu, asked)
	if !asked {
		return p.Write(w, r, http.StatusOK, "flight", "layout", v)
	}
	request, err := p.flightRequest(sent, menu)
	if err == nil {
		var plan *tasting.Flight
		if plan, err = p.trainer.Flight(request); err == nil {
			v.Plan = p.flightPlan(&request, plan, sent)
			if v.Plan.Out, err = p.outOf(r.Context(), request.Spec); err != nil {
				return err
			}
		}
	}
	if faults := flavor.DataFaultsOf(err); len(faults) > 0 {
		for _, f := range part.LineFaultsOf(sent.Text, faults) {
			if v.Troubles = append(v.Troubles, words.Sentence(f.Message)); f.Line > 0 {
				v.Troubles[len(v.Troubles)-1] = say.It("training.line-fault", "Line", f.Line, "Trouble", words.Sentence(f.Message))
			}
		}
		return p.Write(w, r, http.StatusUnprocessableEntity, "flight", "layout", v)
	}
	if err != nil {
		return err
	}
	return p.Write(w, r, http.StatusOK, "flight", "layout", v)
}

// flightRequest reads what is asked for.
func (p *pages) flightRequest(sent flightForm, menu []behind.HouseSpec) (r tasting.FlightRequest, err error) {
	if r.Seed, err = readSeed(sent.Seed); err != nil {
		return r, err
	}
	var ok bool
	if r.Axis, ok = ratio.ParseAxis(sent.Axis); !ok {
		return r, fmt.Errorf("%w: no axis is called %q", form.ErrUnreadable, sent.Axis)
	}
	for _, x := range []struct {
		into                 *int
		typed, name, missing string
	}{{&r.Builds, sent.Builds, "builds", say.It("training.write-the-number-of-builds")}, {&r.Tasters, sent.Tasters, "tasters", say.It("training.write-the-number-of-tasters")}} {
		if *x.into, err = strconv.Atoi(x.typed); err != nil {
			return r, form.Missing(x.name, x.missing)
		}
	}
	f := form.Values{"step": {sent.Step}, "each": {sent.Each}}
	if r.Step, err = f.Number("step", say.It("training.the-step"), say.It("training.noticeable-steps")); err != nil {
		return r, err
	}
	if sent.Each != "" { // else as much as is safe
		if r.BuildML, err = f.Number("each", say.It("training.what-each-build-holds"), "mL"); err != nil {
			return r, err
		}
		if r.BuildML == 0 {
			return r, form.Missing("each", say.It("training.build-of-nothing"))
		}
	}
	r.Spec, err = p.flightSpec(sent, menu)
	return r, err
}

// flightSpec is the drink of the menu that is chosen, or the one in the box; both
// are one too many.
func (p *pages) flightSpec(sent flightForm, menu []behind.HouseSpec) (*flavor.Spec, error) {
	typed := strings.TrimSpace(sent.Text) != ""
	switch {
	case sent.Drink == ownText && !typed:
		return nil, form.Missing("drink", say.It("training.choose-a-drink"))
	case sent.Drink == ownText:
		spec, err := p.bar.Read(sent.Text)
		return &spec, err
	case typed:
		return nil, form.Missing("drink", say.It("training.two-drinks"))
	}
	at := slices.IndexFunc(menu, func(s behind.HouseSpec) bool { return s.Slug == sent.Drink })
	if at < 0 {
		return nil, form.Missing("drink", say.It("training.drink-is-gone", "Drink", strconv.Quote(sent.Drink)))
	}
	return &menu[at].Spec, nil
}
