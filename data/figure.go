package data

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"counterpour/flavor"
)

// parseFigure reads "value ± spread | origin | source". The source may be absent where
// [flavor.Figure.Check] allows it.
func parseFigure(text string) (flavor.Figure, error) {
	fields := strings.SplitN(text, "|", 3)
	if len(fields) < 2 {
		return flavor.Figure{}, fmt.Errorf("%q is not a figure; write \"value ± spread | origin | source\"", text)
	}
	value, spread, ok := strings.Cut(fields[0], "±")
	if !ok {
		return flavor.Figure{}, fmt.Errorf("%q has no spread; write \"value ± spread\"", strings.TrimSpace(fields[0]))
	}
	f := flavor.Figure{Origin: flavor.Origin(strings.TrimSpace(fields[1]))}
	var err error
	if f.Value, err = parseNumber(value); err != nil {
		return flavor.Figure{}, err
	}
	if f.Spread, err = parseNumber(spread); err != nil {
		return flavor.Figure{}, err
	}
	if len(fields) == 3 {
		f.Source = strings.TrimSpace(fields[2])
	}
	return f, f.Check()
}

// parseNumber reads a finite number.
func parseNumber(text string) (float64, error) {
	n, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
	if err != nil || math.IsNaN(n) || math.IsInf(n, 0) {
		return 0, fmt.Errorf("%q is not a number", strings.TrimSpace(text))
	}
	return n, nil
}

// share is a named number in a list such as "juniper 10, lemon peel 2".
type share struct {
	name  string
	value float64
}

// parseShares reads a comma-separated list of names, each followed by a number.
func parseShares(text string) ([]share, error) {
	var out []share
	for item := range strings.SplitSeq(text, ",") {
		item = strings.TrimSpace(item)
		cut := strings.LastIndexByte(item, ' ')
		if cut < 0 {
			return nil, fmt.Errorf("%q needs a name and a number, such as \"juniper 10\"", item)
		}
		n, err := parseNumber(item[cut:])
		if err != nil || n < 0 {
			return nil, fmt.Errorf("%q must end in a number, zero or more", item)
		}
		out = append(out, share{strings.TrimSpace(item[:cut]), n})
	}
	return out, nil
}

// parseSmells reads "material intensity, … | ± 25 % | origin".
func parseSmells(text string) (list []share, spread float64, origin flavor.Origin, err error) {
	fields := strings.SplitN(text, "|", 3)
	if len(fields) < 3 {
		return nil, 0, "", fmt.Errorf("%q is not a list of smells; write \"material intensity, … | ± 25 %% | origin\"", text)
	}
	percent := strings.TrimSpace(fields[1])
	percent = strings.TrimSpace(strings.TrimSuffix(strings.TrimPrefix(percent, "±"), "%"))
	if spread, err = parseNumber(percent); err != nil || spread < 0 || spread > 100 {
		return nil, 0, "", fmt.Errorf("spread %q must be between ± 0 %% and ± 100 %%", strings.TrimSpace(fields[1]))
	}
	originWord, _, _ := strings.Cut(fields[2], "|")
	origin = flavor.Origin(strings.TrimSpace(originWord))
	if !origin.Valid() {
		return nil, 0, "", fmt.Errorf("origin %q must be one of %v", origin, flavor.Origins())
	}
	if strings.TrimSpace(fields[0]) == "none" {
		return nil, spread / 100, origin, nil
	}
	list, err = parseShares(fields[0])
	return list, spread / 100, origin, err
}
