package webui

import (
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"slices"

	"counterpour/flavor"
	"counterpour/webui/words"
)

// parseForm reads the form of a request, whichever way it came.
func parseForm(r *http.Request) error {
	err := r.ParseForm()
	var long *http.MaxBytesError
	switch {
	case errors.As(err, &long):
		return errTooLong
	case err != nil:
		return fmt.Errorf("%w: %w", errBadForm, err)
	}
	return nil
}

// readAvoid reads what the guest must not have. An allergen that is not known
// is refused, since a word passed over would be a guest unprotected.
func readAvoid(form url.Values) ([]flavor.Allergen, error) {
	var avoid []flavor.Allergen
	for _, word := range form["avoid"] {
		a, err := flavor.ParseAllergen(word)
		if err != nil {
			return nil, fmt.Errorf("%w: %w", errBadForm, err)
		}
		if !slices.Contains(avoid, a) {
			avoid = append(avoid, a)
		}
	}
	return avoid, nil
}

// withAvoid returns an address that keeps the guest in mind.
func withAvoid(path string, avoid []flavor.Allergen) string {
	if len(avoid) == 0 {
		return path
	}
	return path + "?" + url.Values{"avoid": words.Of(avoid)}.Encode()
}

// guestBox is one allergen that a guest may avoid.
type guestBox struct {
	Allergen flavor.Allergen
	Ticked   bool
}

func guestBoxes(avoid []flavor.Allergen) []guestBox {
	var out []guestBox
	for _, a := range flavor.Allergens() {
		out = append(out, guestBox{a, slices.Contains(avoid, a)})
	}
	return out
}
