package main

import (
	"fmt"
	"io/fs"
	"os"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"counterpour/api/shape"
	"counterpour/cmd/counterpour/terminal"
	"counterpour/data"
	"counterpour/flavor"
)

// newCheck validates a catalogue.
//
//	counterpour check my/catalogue
func newCheck() *cobra.Command {
	var asJSON *bool
	cmd := &cobra.Command{
		Use:   "check [PATH]",
		Short: "Validate a catalogue, and say what is in it",
		Long: `Validates the catalogue in a folder, or the embedded one: every record in full,
with its references. Each fault names the file, the record and the field, and
the exit code is then 2.`,
		Args: cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			path := ""
			if len(args) == 1 {
				path = args[0]
			}
			fsys, err := openCatalogue(path)
			if err != nil {
				return err
			}
			c, err := load(fsys)
			r := reportOf(path, c, err)
			if err == nil || *asJSON {
				if err := terminal.Deliver(cmd, *asJSON, r, showReport); err != nil {
					return err
				}
			}
			switch {
			case err == nil:
				return nil
			case *asJSON:
				return terminal.Usagef("faults: %d", len(r.Faults))
			}
			return terminal.Usagef("%w\nfaults: %d", err, len(r.Faults))
		},
	}
	asJSON = cmd.Flags().Bool("json", false, "print JSON instead of a table")
	return cmd
}

// openCatalogue opens the folder of a catalogue; nil stands for the embedded one.
func openCatalogue(path string) (fs.FS, error) {
	if path == "" {
		return nil, nil
	}
	info, err := os.Stat(path)
	if err != nil {
		return nil, terminal.WrongPath(err)
	}
	if !info.IsDir() {
		return nil, terminal.Usagef("%s is a file; name the folder of a catalogue", path)
	}
	return os.DirFS(path), nil
}

func load(fsys fs.FS) (*data.Catalogue, error) {
	if fsys == nil {
		return data.Embedded()
	}
	return data.Load(fsys)
}

// report is the result of checking a catalogue.
type report struct {
	Path        string             `json:"path"` // empty for the embedded catalogue
	Ingredients int                `json:"ingredients"`
	Classes     []shape.ClassCount `json:"classes"`
	Figures     int                `json:"figures"`
	Origins     []originShare      `json:"origins"`
	Tables      []tableShare       `json:"tables"` // comparison with published tables, by class
	Faults      []string           `json:"faults"`
}

// tableShare compares the records of a class with the published tables.
type tableShare struct {
	Class  string          `json:"class"`
	Given  int             `json:"given"`  // figures that a table has
	Taken  int             `json:"taken"`  // those that the record takes unchanged
	Beyond []departureLine `json:"beyond"` // those more than two of their standard deviations away
}

// departureLine is a figure that differs from a table, and the reason.
type departureLine struct {
	Ingredient string  `json:"ingredient"`
	Field      string  `json:"field"`
	Have       float64 `json:"have"`
	Table      float64 `json:"table"`
	Reason     string  `json:"reason"`
}

// originShare is the number of figures with an origin, and their share.
type originShare struct {
	Origin   string  `json:"origin"`
	Figures  int     `json:"figures"`
	SharePct float64 `json:"share_pct"`
}

func reportOf(path string, c *data.Catalogue, err error) *report {
	r := &report{Path: path, Classes: []shape.ClassCount{}, Origins: []originShare{}, Tables: []tableShare{}, Faults: []string{}}
	if err != nil {
		r.Faults = strings.Split(err.Error(), "\n")
		return r
	}
	classes := map[flavor.Class]int{}
	origins := map[flavor.Origin]int{}
	for _, p := range c.Profiles() {
		r.Ingredients++
		classes[p.Class]++
		for _, o := range originsOf(p) {
			origins[o]++
			r.Figures++
		}
	}
	for _, class := range flavor.Classes() {
		if n := classes[class]; n > 0 {
			r.Classes = append(r.Classes, shape.ClassCount{Class: string(class), Count: n})
		}
	}
	for _, o := range flavor.Origins() {
		share := 0.0
		if r.Figures > 0 {
			share = float64(1000*origins[o]/r.Figures) / 10
		}
		r.Origins = append(r.Origins, originShare{string(o), origins[o], share})
	}
	if err := r.againstTables(c); err != nil {
		r.Faults = append(r.Faults, err.Error())
	}
	return r
}

// againstTables adds the comparison with the published tables.
func (r *report) againstTables(c *data.Catalogue) error {
	classes, err := c.AgainstTables()
	if err != nil {
		return err
	}
	for _, k := range classes {
		share := tableShare{Class: string(k.Class), Given: k.Given, Taken: k.Taken, Beyond: []departureLine{}}
		for _, d := range k.Beyond {
			share.Beyond = append(share.Beyond, departureLine{d.Ingredient, d.Field, d.Have.Value, d.Table.Value, d.Reason})
		}
		r.Tables = append(r.Tables, share)
	}
	return nil
}

// originsOf lists the origins of all figures of a profile, including aroma and yields.
func originsOf(p *flavor.Profile) []flavor.Origin {
	out := []flavor.Origin{p.AromaOrigin}
	for _, f := range []flavor.Figure{p.ABV, p.Sugar, p.Acid, p.Bitter, p.Salt, p.Fat, p.Texture, p.Sweeteners, p.Caffeine, p.Tannin} {
		out = append(out, f.Origin)
	}
	for _, y := range p.Yields {
		out = append(out, y.Amount.Origin)
	}
	return slices.DeleteFunc(out, func(o flavor.Origin) bool { return o == "" })
}

func showReport(p *terminal.Page, r *report) {
	name := r.Path
	if name == "" {
		name = "the embedded catalogue"
	}
	p.Line("%s is sound: %d ingredients, %d figures", name, r.Ingredients, r.Figures)
	p.Head("Ingredients by class")
	for _, c := range r.Classes {
		p.Row(c.Class, fmt.Sprint(c.Count))
	}
	p.Head("Figures by origin")
	for _, o := range r.Origins {
		p.Row(o.Origin, fmt.Sprint(o.Figures), terminal.Number(o.SharePct, 1)+" %")
	}
	showTables(p, r.Tables)
}

// showTables prints, by class, how many figures the published tables have, how many are
// taken unchanged, and which differ much.
func showTables(p *terminal.Page, classes []tableShare) {
	if len(classes) == 0 {
		return
	}
	p.Head("Figures that a published table gives: taken from it, beyond two of their own spreads")
	given, taken, beyond := 0, 0, 0
	for _, k := range classes {
		p.Row(k.Class, fmt.Sprint(k.Given), fmt.Sprint(k.Taken), fmt.Sprint(len(k.Beyond)))
		given, taken, beyond = given+k.Given, taken+k.Taken, beyond+len(k.Beyond)
	}
	p.Row("all", fmt.Sprint(given), fmt.Sprint(taken), fmt.Sprint(beyond))
	for _, k := range classes {
		for _, d := range k.Beyond {
			p.Line("  %s, %s: %g where the table has %g: %s", d.Ingredient, d.Field, d.Have, d.Table, terminal.OrNone([]string{d.Reason}))
		}
	}
}
