package data

import (
	"embed"
	"errors"
	"fmt"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/template"
)

//go:embed customs.toml usual-bar.toml wishes.toml serves.toml
var trade embed.FS

const (
	customsFile  = "customs.toml"
	usualBarFile = "usual-bar.toml"
)

// kinshipPlace is the rank of a related ingredient among substitutes: after a custom's
// first choice, equal to its second.
const kinshipPlace = 1

// eachPlace is that of the first thing poured for every member of a kinship: after the other
// members, as a third choice.
const eachPlace = 2

// mostPoured is the most ingredients that a custom pours together.
const mostPoured = 3

type customsRecords struct {
	Version  int             `toml:"version"`
	Source   string          `toml:"source"`
	Kinships []kinshipRecord `toml:"kinship"`
	Customs  []customRecord  `toml:"custom"`
	Lighter  []lighterRecord `toml:"lighter"`
	Dry      []lighterRecord `toml:"dry"`
	Apart    []apartRecord   `toml:"apart"`
}

type kinshipRecord struct {
	Name string   `toml:"name"`
	Any  []string `toml:"any"`
}

// customRecord is a custom for one thing that is out, or for each member of a kinship.
type customRecord struct {
	Out  string   `toml:"out"`
	Each string   `toml:"each"` // the name of a kinship
	Pour []string `toml:"pour"`
	Both bool     `toml:"both"`
}

type lighterRecord struct {
	Of   []flavor.Class `toml:"of"`
	Pour []string       `toml:"pour"`
}

type apartRecord struct {
	Of     []flavor.Class `toml:"of"`
	Beside []string       `toml:"beside"`
}

type usualBarRecord struct {
	Version int      `toml:"version"`
	Source  string   `toml:"source"`
	Stock   []string `toml:"stock"`
}

// Customs reads the customary substitutes of the trade. Every id must be in the
// catalogue. The error joins all faults; each names the custom.
func (c *Catalogue) Customs() (*flavor.Customs, error) {
	var file customsRecords
	if err := decodeStrict(trade, customsFile, &file); err != nil {
		return nil, err
	}
	out, faults := &flavor.Customs{}, checkTable(customsFile, file.Version, file.Source)
	for _, k := range file.Kinships {
		faults = append(faults, c.addKinship(out, k)...)
	}
	seen := map[[2]string]bool{}
	for _, r := range file.Customs {
		what := [2]string{r.Out, r.Each}
		if seen[what] {
			faults = append(faults, fmt.Errorf("data: %s: custom for %q: is written twice; keep one", customsFile, r.Out+r.Each))
		}
		seen[what] = true
		if r.Each != "" {
			faults = append(faults, c.addForEach(out, r, file.Kinships)...)
			continue
		}
		faults = append(faults, c.addCustom(out, r, 0)...)
	}
	for _, r := range file.Lighter {
		faults = append(faults, c.addLighter(out, r)...)
	}
	for _, r := range file.Dry {
		faults = append(faults, c.addDry(out, r)...)
	}
	for _, r := range file.Apart {
		faults = append(faults, c.addApart(out, r)...)
	}
	if len(faults) > 0 {
		return nil, errors.Join(faults...)
	}
	return out, nil
}

// UsualBar returns the ingredients that most bars stock, in the order of the list.
func (c *Catalogue) UsualBar() ([]*flavor.Profile, error) {
	var file usualBarRecord
	if err := decodeStrict(trade, usualBarFile, &file); err != nil {
		return nil, err
	}
	out, faults := c.stocked("data: "+usualBarFile, file.Stock)
	if err := errors.Join(append(checkTable(usualBarFile, file.Version, file.Source), faults...)...); err != nil {
		return nil, err
	}
	return out, nil
}

// stocked returns the ingredients that a list names by id, in its order. An unknown or
// repeated id is a fault, and place says where the list stands.
func (c *Catalogue) stocked(place string, ids []string) (out []*flavor.Profile, faults []error) {
	for _, id := range ids {
		p, found := c.ByID(id)
		switch {
		case !found:
			faults = append(faults, fmt.Errorf("%s: %q is not in the catalogue; use the id of an ingredient", place, id))
		case slices.Contains(out, p):
			faults = append(faults, fmt.Errorf("%s: %q is there twice; keep one", place, id))
		default:
			out = append(out, p)
		}
	}
	return out, faults
}

// Commonness returns how common every ingredient is, by the number of proven drinks that
// pour it and by the list of what most bars stock.
func (c *Catalogue) Commonness(proven []template.Labelled) (*flavor.Commonness, error) {
	usual, err := c.UsualBar()
	if err != nil {
		return nil, err
	}
	ids := make([]string, len(usual))
	for i, p := range usual {
		ids[i] = p.ID
	}
	specs := make([]*flavor.Spec, len(proven))
	for i := range proven {
		specs[i] = &proven[i].Spec
	}
	return flavor.NewCommonness(specs, ids), nil
}

func checkTable(file string, version int, source string) (faults []error) {
	if version != FormatVersion {
		faults = append(faults, fmt.Errorf("data: %s: version is %d; this program reads version %d", file, version, FormatVersion))
	}
	if source == "" {
		faults = append(faults, fmt.Errorf("data: %s: source is not given; say where the table comes from", file))
	}
	return faults
}

func (c *Catalogue) addKinship(to *flavor.Customs, k kinshipRecord) (faults []error) {
	place := fmt.Sprintf("data: %s: kinship %q", customsFile, k.Name)
	if k.Name == "" || len(k.Any) < 2 {
		return []error{fmt.Errorf("%s: needs a name and two members or more", place)}
	}
	for _, id := range k.Any {
		if _, found := c.ByID(id); !found {
			faults = append(faults, fmt.Errorf("%s: %q is not an id of the catalogue", place, id))
		}
		for _, other := range k.Any {
			if id != other {
				to.Add(id, []string{other}, kinshipPlace)
			}
		}
	}
	to.AddKin(k.Any)
	return faults
}

// addForEach adds a custom for each member of a kinship; it must pour none of them.
func (c *Catalogue) addForEach(to *flavor.Customs, r customRecord, kinships []kinshipRecord) (faults []error) {
	at := slices.IndexFunc(kinships, func(k kinshipRecord) bool { return k.Name == r.Each })
	if at < 0 || r.Out != "" || r.Both {
		return []error{fmt.Errorf("data: %s: custom for each of %q: needs the name of a kinship, and neither out nor both", customsFile, r.Each)}
	}
	for _, id := range kinships[at].Any {
		faults = append(faults, c.addCustom(to, customRecord{Out: id, Pour: r.Pour}, eachPlace)...)
	}
	return faults
}

// addCustom adds what is poured for one thing that is out; first is the place of the first
// choice.
func (c *Catalogue) addCustom(to *flavor.Customs, r customRecord, first int) (faults []error) {
	place := fmt.Sprintf("data: %s: custom for %q", customsFile, r.Out)
	if _, found := c.ByID(r.Out); !found {
		faults = append(faults, fmt.Errorf("%s: is not an id of the catalogue", place))
	}
	if len(r.Pour) == 0 {
		faults = append(faults, fmt.Errorf("%s: pour is empty; name what is poured", place))
	}
	for n, written := range r.Pour {
		parts := strings.Split(written, "+")
		for k := range parts {
			parts[k] = strings.TrimSpace(parts[k])
			if _, found := c.ByID(parts[k]); !found || parts[k] == r.Out {
				faults = append(faults, fmt.Errorf("%s: %q must be another id of the catalogue", place, parts[k]))
			}
		}
		if len(parts) > mostPoured {
			faults = append(faults, fmt.Errorf("%s: %q pours %d ingredients; at most %d are poured together", place, written, len(parts), mostPoured))
		}
		to.Add(r.Out, parts, first+n)
		if r.Both && len(parts) == 1 {
			to.Add(parts[0], []string{r.Out}, first+n)
		}
	}
	return faults
}

// addLighter adds what is poured for the spirits of some classes where a guest wants less
// alcohol.
func (c *Catalogue) addLighter(to *flavor.Customs, r lighterRecord) []error {
	return c.ofSpirits(fmt.Sprintf("lighter than %q", r.Of), r.Of, r.Pour, to.AddLighter)
}

// addDry adds what is poured for the spirits of some classes where a guest drinks no alcohol.
func (c *Catalogue) addDry(to *flavor.Customs, r lighterRecord) (faults []error) {
	for _, id := range r.Pour {
		if p, found := c.ByID(id); found && p.ABV.Value > flavor.NoAlcoholABV {
			faults = append(faults, fmt.Errorf("data: %s: dry for %q: %q holds alcohol", customsFile, r.Of, id))
		}
	}
	return append(faults, c.ofSpirits(fmt.Sprintf("dry for %q", r.Of), r.Of, r.Pour, to.AddDry)...)
}

// addApart adds what nobody pours the spirits of some classes beside.
func (c *Catalogue) addApart(to *flavor.Customs, r apartRecord) []error {
	return c.ofSpirits(fmt.Sprintf("%q apart", r.Of), r.Of, r.Beside, to.KeepApart)
}

// ofSpirits adds ingredients for each of some classes of spirits, or of liqueurs, bitters and
// wines that drinks are made on; what names the record.
func (c *Catalogue) ofSpirits(what string, classes []flavor.Class, ids []string, add func(flavor.Class, []string)) (faults []error) {
	place := fmt.Sprintf("data: %s: %s", customsFile, what)
	if len(classes) == 0 || len(ids) == 0 {
		return []error{fmt.Errorf("%s: needs a class of spirits and ingredients", place)}
	}
	for _, id := range ids {
		if _, found := c.ByID(id); !found {
			faults = append(faults, fmt.Errorf("%s: %q is not an id of the catalogue", place, id))
		}
	}
	for _, of := range classes {
		if of.Part() != flavor.PartBase && of.Part() != flavor.PartModifier {
			faults = append(faults, fmt.Errorf("%s: %q is no class of what drinks are made on", place, of))
		}
		add(of, ids)
	}
	return faults
}
