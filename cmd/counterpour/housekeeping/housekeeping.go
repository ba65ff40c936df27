package housekeeping

import (
	"context"
	"fmt"
	"io"
	"os"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"counterpour/api/service"
	"counterpour/api/service/specbook"
	"counterpour/cmd/counterpour/premises"
	"counterpour/cmd/counterpour/terminal"
	"counterpour/data/house"
	"counterpour/data/house/exchange"
	"counterpour/data/house/exchange/kinds"
	"counterpour/data/house/store"
	"counterpour/flavor"
)

// New returns the command that manages a house.
//
//	counterpour house backup --house bar.house monday.backup
//	counterpour house import --house bar.house --as stock stock.csv
func New(open premises.Kitchens) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "house",
		Short: "Keep a house: stock, specs, costs, batches, palate, backups, and who may enter",
		Long: `A house is a bar's own records: its bottles, syrups, specs, what has run
out and how covers were received. It is kept in a file, or in a PostgreSQL
database with an address such as postgres://….`,
		Args: cobra.NoArgs,
	}
	var where string
	cmd.PersistentFlags().StringVar(&where, "house", "", "file that the house is kept in, or a postgres:// address")
	cmd.AddCommand(newBackup(&where), newRestore(&where), newHouseCheck(&where), newExport(open, &where), newImport(open, &where), newMark(open, &where), newTasted(open, &where), newCost(open, &where),
		newBatch(open, &where), newRight(open, &where), newName(open, &where), newPasscode(), newToken())
	for _, c := range cmd.Commands() {
		c.Args = terminal.WrongArgs(c.Args)
	}
	return cmd
}

func newBackup(where *string) *cobra.Command {
	return &cobra.Command{
		Use:   "backup FILE --house PATH",
		Short: "Copy the house to a file while it is in use, and verify the copy",
		Args:  cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) (err error) {
			s, _, err := premises.OpenHouse(cmd.Context(), *where, premises.ToRead)
			if err != nil {
				return err
			}
			defer func() { err = premises.Closing(s, err) }()
			if err := s.Backup(cmd.Context(), args[0]); err != nil {
				return err
			}
			report, err := store.Verify(cmd.Context(), args[0])
			if err != nil {
				return err
			}
			return terminal.Say(cmd, "backed up to %s and verified: %s", args[0], reportText(report))
		},
	}
}

func newRestore(where *string) *cobra.Command {
	var replace bool
	cmd := &cobra.Command{
		Use:   "restore FILE --house PATH",
		Short: "Put a backup in the place of a house that nobody has open, or into an empty venue of a database",
		Args:  cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			switch {
			case *where == premises.Demo:
				return premises.ErrNoHouse
			case premises.IsDatabase(*where):
				return restoreVenue(cmd, args[0], *where)
			}
			report, err := store.Verify(cmd.Context(), args[0])
			if err != nil {
				return err
			}
			aside, err := store.Restore(cmd.Context(), args[0], *where, store.RestoreOptions{Replace: replace, At: time.Now()})
			if err != nil {
				return err
			}
			if report.NoWAL {
				if err := terminal.Say(cmd, "%s is no backup but a copy of a house in use, without its log: the last changes may be missing", args[0]); err != nil {
					return err
				}
			}
			if aside != "" {
				return terminal.Say(cmd, "restored %s; the house that was there is now %s", *where, aside)
			}
			return terminal.Say(cmd, "restored %s", *where)
		},
	}
	cmd.Flags().BoolVar(&replace, "replace", false, "move aside a house that is there already; not for a database")
	return cmd
}

func restoreVenue(cmd *cobra.Command, backup, where string) (err error) {
	if _, err := store.Verify(cmd.Context(), backup); err != nil { // before a venue is created for it
		return err
	}
	s, made, err := premises.OpenHouse(cmd.Context(), where, premises.ToMake)
	if err != nil {
		return err
	}
	defer func() { err = premises.Closing(s, err) }()
	if err := store.RestoreVenue(cmd.Context(), backup, s); err != nil {
		return err
	}
	if made {
		return terminal.Say(cmd, "restored %s, in a venue made for it", premises.NameOf(where))
	}
	return terminal.Say(cmd, "restored %s", premises.NameOf(where))
}

func newHouseCheck(where *string) *cobra.Command {
	return &cobra.Command{
		Use:   "check --house PATH",
		Short: "Check a whole house for damage, even while it is in use",
		Args:  cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			switch {
			case *where == premises.Demo:
				return premises.ErrNoHouse
			case premises.IsDatabase(*where):
				return checkVenue(cmd, *where)
			}
			report, err := store.Verify(cmd.Context(), *where)
			if err != nil {
				return err
			}
			if err := report.NeedsWAL(*where); err != nil {
				return err
			}
			return terminal.Say(cmd, "%s is sound: %s", *where, reportText(report))
		},
	}
}

func checkVenue(cmd *cobra.Command, where string) (err error) {
	s, _, err := premises.OpenHouse(cmd.Context(), where, premises.ToRead)
	if err != nil {
		return err
	}
	defer func() { err = premises.Closing(s, err) }()
	if err := s.Check(cmd.Context()); err != nil {
		return err
	}
	return terminal.Say(cmd, "%s is sound", premises.NameOf(where))
}

func reportText(r store.Report) string {
	text := fmt.Sprintf("%d records, %d changes, schema %d", r.Records, r.Changes, r.Schema)
	if r.Program != "" {
		text += ", backed up by " + r.Program
	}
	return text
}

// formsText names the formats of import and export.
const formsText = "json (everything), stock or specs (CSV), recipes (schema.org JSON-LD) or text"

func newExport(open premises.Kitchens, where *string) *cobra.Command {
	var form string
	cmd := &cobra.Command{
		Use:   "export [FILE] --house PATH --as FORM",
		Short: "Write a house as JSON, CSV, recipes or text",
		Args:  cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) (err error) {
			v, done, err := premises.AtOwnHouse(cmd.Context(), open, &premises.Place{Where: *where})
			if err != nil {
				return err
			}
			defer done()
			if len(args) == 0 || args[0] == "-" {
				return export(cmd.Context(), v, form, cmd.OutOrStdout())
			}
			f, err := os.OpenFile(args[0], os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
			if err != nil {
				return terminal.WrongPath(err)
			}
			if err := export(cmd.Context(), v, form, f); err != nil {
				_ = f.Close() // the first error matters more
				return err
			}
			return f.Close()
		},
	}
	cmd.Flags().StringVar(&form, "as", "json", formsText)
	return cmd
}

func export(ctx context.Context, v *service.Venue, form string, w io.Writer) error {
	s := v.Store()
	switch form {
	case "json":
		return exchange.WriteJSON(ctx, s, w)
	case "stock":
		bottles, err := house.All[house.Bottle](ctx, s)
		if err != nil {
			return err
		}
		names, err := house.All[house.Name](ctx, s)
		if err != nil {
			return err
		}
		return exchange.WriteStock(w, house.Items(bottles), house.Items(names)...)
	case "specs", "recipes", "text":
		return exportSpecs(ctx, v, form, w)
	}
	return terminal.Usagef("--as %s is no form; use %s", form, formsText)
}

func exportSpecs(ctx context.Context, v *service.Venue, form string, w io.Writer) error {
	kept, err := house.All[house.Spec](ctx, v.Store())
	if err != nil {
		return err
	}
	specs := house.Items(kept)
	switch form {
	case "specs":
		return exchange.WriteSpecs(w, specs)
	case "recipes":
		return exchange.WriteRecipes(w, specs, v.Now().Shelf)
	}
	if err := premises.Whole(v); err != nil {
		return err
	}
	drinks := make([]flavor.Spec, len(specs))
	for i, d := range v.Now().Menu {
		drinks[i] = d.Spec
	}
	return exchange.WriteText(w, drinks)
}

// sayImported prints what an import assumed, what is bad and what it wrote.
func sayImported(cmd *cobra.Command, reading *exchange.Reading, r *exchange.Result) error {
	for _, note := range reading.Notes {
		if err := terminal.Say(cmd, "%s", note); err != nil {
			return err
		}
	}
	if len(r.Bad) > 0 {
		if err := terminal.Say(cmd, "%s", reading.Faults()); err != nil {
			return err
		}
	}
	return terminal.Say(cmd, "%d added, %d changed, %d the same, %d bad and left out", r.Added+r.Words, r.Changed, r.Same, len(r.Bad))
}

func newImport(open premises.Kitchens, where *string) *cobra.Command {
	var form, actor, currency string
	var keepGood bool
	cmd := &cobra.Command{
		Use:   "import FILE --house PATH --as FORM",
		Short: "Read records into a house from JSON, CSV, recipes or text",
		Long: `Reads records into a house, which is made if it is not there. It names bad rows by number.
If a row is bad it writes nothing; with --keep-good it writes the good rows.`,
		Args: cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) (err error) {
			f, err := os.Open(args[0])
			if err != nil {
				return terminal.WrongPath(err)
			}
			defer f.Close()
			at := &premises.Place{Where: *where, Why: premises.ToMake}
			v, done, err := premises.AtOwnHouse(cmd.Context(), open, at)
			if err != nil {
				return err
			}
			defer done()
			if at.Made {
				if err := terminal.Say(cmd, "there was no house; made %s", premises.NameOf(*where)); err != nil {
					return err
				}
			}
			doneReading := terminal.Saying(cmd.ErrOrStderr(), "reading "+args[0])
			reading, err := readForm(cmd.Context(), f, form, strings.ToUpper(currency), v)
			doneReading()
			if err != nil {
				return err
			}
			mode := exchange.AllOrNone
			if keepGood {
				mode = exchange.KeepGood
			}
			specs := specbook.Editor{Store: v.Store(), Shelf: v.Now().Shelf}
			doneWriting := terminal.Saying(cmd.ErrOrStderr(), fmt.Sprintf("writing %d records", len(reading.Items)))
			r, err := specs.TakeIn(cmd.Context(), house.By{Actor: actor, At: time.Now()}, reading, mode)
			doneWriting()
			if err != nil {
				return err
			}
			return sayImported(cmd, reading, &r)
		},
	}
	cmd.Flags().StringVar(&form, "as", "json", formsText)
	cmd.Flags().StringVar(&currency, "currency", "", "currency of prices that state none, in a file of stock; three letters, such as EUR")
	cmd.Flags().StringVar(&actor, "by", "import", "name to note in the log")
	cmd.Flags().BoolVar(&keepGood, "keep-good", false, "write the good records even if others are bad")
	return cmd
}

func readForm(ctx context.Context, r io.Reader, form, currency string, v *service.Venue) (*exchange.Reading, error) {
	names := v.Now().Index
	switch form {
	case "json":
		return exchange.ReadJSON(r)
	case "stock":
		there, err := house.All[house.Bottle](ctx, v.Store())
		if err != nil {
			return nil, err
		}
		sheet, err := exchange.ReadSheet(r, kinds.Listed{Finder: names, All: v.Now().Shelf.Profiles()}, house.Items(there), exchange.Settled{Currency: currency, House: v.Now().Settings.Currency}) // fields without a column are kept
		if err != nil {
			return nil, err
		}
		return sheet.Reading(), nil
	case "specs":
		return exchange.ReadSpecs(r, names)
	case "recipes":
		return exchange.ReadRecipes(r, names)
	case "text":
		return exchange.ReadText(r, names)
	}
	return nil, terminal.Usagef("--as %s is no form; use %s", form, formsText)
}
