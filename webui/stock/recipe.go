package stock

import (
	"context"
	"errors"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"counterpour/data/house"
	"counterpour/data/house/prep"
	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/edit"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/reading"
	"counterpour/webui/behind"
	"counterpour/webui/desk"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// readRecipe reads the parts of something house-made as the pours of a spec are
// read, one a line.
func readRecipe(text string, f naming.Finder) ([]house.Pour, []house.Steeped, error) {
	text, steeped := steepedIn(text)
	pours, err := readPours(text, f)
	return pours, steeped, err
}

// weighed matches a line with a weight.
var weighed = regexp.MustCompile(`^\s*([0-9]+(?:[.,][0-9]+)?)\s*(g|gr|gram|grams|kg)\.?\s+(?:of\s+)?(\S.*?)\s*$`)

// steepedIn takes what steeps and is strained out of the lines of a recipe; those are left blank,
// so that the others keep their numbers.
func steepedIn(text string) (rest string, steeped []house.Steeped) {
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		m := weighed.FindStringSubmatch(line)
		if m == nil || house.SolidIn(m[3]) == "" {
			continue
		}
		grams, err := strconv.ParseFloat(strings.ReplaceAll(m[1], ",", "."), 64)
		if err != nil {
			continue
		}
		if m[2] == "kg" {
			grams *= 1000
		}
		lines[i], steeped = "", append(steeped, house.Steeped{Name: m[3], Grams: grams})
	}
	return strings.Join(lines, "\n"), steeped
}

func readPours(text string, f naming.Finder) ([]house.Pour, error) {
	for i, line := range strings.Split(text, "\n") {
		if strings.HasPrefix(strings.TrimSpace(line), "#") {
			return nil, lineFault(i+1, line, say.It("stock.no-remarks"))
		}
	}
	parts := draft.ParsePours(text)
	if slices.ContainsFunc(parts.Entries, func(e draft.Entry) bool { return e.Kind != draft.KindPour && e.Kind != draft.KindUnread }) {
		return nil, lineFault(0, text, say.It("stock.no-method-here"))
	}
	read, err := reading.Resolve(parts, f)
	if err == nil {
		err = read.Err()
	}
	if err != nil {
		return nil, err
	}
	return house.FromSpec("recipe", read.Spec).Pours, nil
}

func lineFault(line int, value, message string) error {
	f := &flavor.DataFault{Kind: flavor.ErrInvalid, Value: strings.TrimSpace(value), Message: message}
	if line > 0 {
		f.Location = "line " + strconv.Itoa(line)
	}
	return f
}

// recipeText writes parts as readRecipe reads them.
func recipeText(m *house.Made, shelf *house.Shelf) string {
	var out []string
	for _, x := range m.Steeped {
		out = append(out, measure.FormatAmount(x.Grams, flavor.Gram)+" "+x.Name)
	}
	for _, poured := range m.Parts {
		named := flavor.Profile{Name: part.ShelfName(shelf, poured.Ingredient)}
		if p, ok := shelf.ByID(poured.Ingredient); ok {
			named.Yields = p.Yields
		}
		out = append(out, edit.FormatPour(flavor.Pour{Profile: &named, Amount: poured.Amount, Unit: poured.Unit}))
	}
	return strings.Join(out, "\n")
}

// recipeSpec is a recipe as a drink, so that its allergens can be told from
// their parts. A part that is not known has nothing stated.
func recipeSpec(m *house.Made, shelf *house.Shelf) *flavor.Spec {
	s := &flavor.Spec{}
	for _, p := range m.StrainedProfiles() {
		s.Pours = append(s.Pours, flavor.Pour{Profile: p, Amount: 1, Unit: flavor.Gram})
	}
	for _, poured := range m.Parts {
		profile, ml, err := shelf.Pour(poured)
		if profile == nil {
			profile = &flavor.Profile{ID: poured.Ingredient, Name: poured.Ingredient}
		}
		if err != nil {
			ml = 0
		}
		s.Pours = append(s.Pours, flavor.Pour{Profile: profile, Amount: poured.Amount, Unit: poured.Unit, ML: ml})
	}
	return s
}

// madeSide is what is worked out of a recipe.
type madeSide struct {
	Rows      []part.Row
	Allergens *part.Allergens
	Cautions  []behind.Caution
	Keeps     string
	Longer    bool // the house keeps it longer than the trade does
	Notes     []string
	Trouble   string
}

func (p *pages) madeFacts(ctx context.Context, m house.Made) (any, error) {
	v := &madeSide{}
	if len(m.Parts) == 0 {
		return v, nil
	}
	shelf := p.house.Shelf()
	spec := recipeSpec(&m, shelf)
	marks := part.AllergensOf(spec, nil)
	v.Allergens, v.Cautions = &marks, p.bar.Cautions(spec)
	profile, err := m.Profile(shelf)
	if err != nil {
		_, message := desk.FieldOf(err)
		v.Trouble = words.Sentence(message)
		return v, nil
	}
	v.Allergens.AddBeyond(profile)
	yield, err := m.VolumeML(shelf)
	if err != nil {
		return nil, err // Profile would have said so
	}
	makes := words.Joined(words.Figure(yield, 0), "mL")
	if m.YieldML == 0 {
		makes = say.It("stock.makes-if-nothing-is-lost", "Volume", makes)
	}
	if len(m.Steeped) > 0 {
		v.Notes = append(v.Notes, say.It("stock.steeped-and-strained", "Names", words.SentenceStart(words.List(steepedNames(m.Steeped))), "Yield", m.YieldML > 0))
	}
	v.Rows = append(profileRows(profile), part.Row{Name: say.It("stock.makes"), Amount: makes})
	made, err := house.All[house.Made](ctx, p.house.Store())
	if err != nil {
		return nil, err
	}
	v.keeping(m, profile, spec, house.Items(made))
	if p.standsIn(m.ID) {
		v.Notes = append(v.Notes, say.It("stock.name-of-the-catalogue"))
	}
	return v, nil
}

// profileRows is what a maker asks of a profile.
func profileRows(p *flavor.Profile) []part.Row {
	return []part.Row{{Name: say.It("stock.sugar"), Amount: measuredAs(p.Sugar, "g/L")}, {Name: say.It("stock.acid"), Amount: measuredAs(p.Acid, "g/L")}, {Name: say.It("stock.strength"), Amount: measuredAs(p.ABV, "% vol")}}
}

// keeping says how long the trade keeps it.
func (v *madeSide) keeping(m house.Made, profile *flavor.Profile, spec *flavor.Spec, made []house.Made) {
	kept := prep.KeepOfMade(&m, profile, *spec, made)
	switch {
	case kept.Steeped:
		v.Keeps = say.It("stock.nut-milk-keeps", "Days", kept.Days)
	case kept.Syrup != nil:
		v.Keeps = say.It("stock.trade-keeps", "From", kept.Syrup.FromDays, "To", kept.Syrup.ToDays, "How", kept.Syrup.Text)
	default:
		v.Keeps = kept.Text
	}
	v.Longer = m.KeepsDays > kept.Days
}

func steepedNames(list []house.Steeped) (out []string) {
	for _, x := range list {
		out = append(out, x.Name)
	}
	return out
}

// keyOf is the record that an error of the house is about.
func keyOf(err error) string {
	var own *house.Error
	if errors.As(err, &own) {
		return own.Key
	}
	return ""
}
