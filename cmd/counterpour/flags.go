package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"counterpour/api/service"
	"counterpour/cmd/counterpour/terminal"
)

// guestFlags are the flags about the guest.
type guestFlags struct {
	avoid, diet *[]string
	maxABV      *float64
	maxCost     *float64
}

// add registers the flags whose fields are not nil.
func (g guestFlags) add(cmd *cobra.Command) {
	cmd.Flags().StringArrayVar(g.avoid, "avoid", nil, "an allergen that the guest must not have, or caffeine, coconut, grapefruit, liquorice or quinine; may be repeated")
	cmd.Flags().StringArrayVar(g.diet, "diet", nil, "what the guest keeps to: vegan, vegetarian, no egg, no dairy, no honey, alcohol-free (up to 0.5 % vol) or 0.0 % alcohol; may be repeated")
	if g.maxABV != nil {
		cmd.Flags().Float64Var(g.maxABV, "max-abv", 0, "highest strength of the finished drink, in % vol; 0 for any")
	}
	if g.maxCost != nil {
		cmd.Flags().Float64Var(g.maxCost, "max-cost", 0, "highest cost of all pours of one drink, by the house's prices; 0 for any")
	}
}

const (
	houseOrNoneFlag     = "file that the house is kept in, or a postgres:// address; no house if empty"
	substitutesCostFlag = "highest cost of the substitutes of one drink, by the house's prices; 0 for any"
	seedFlag            = "another number gives another list of much the same quality"
)

// stockFrom reads the ids of a stock file; nil if path is empty. It warns of each line that
// means no bottle, which is not poured, and says of each that is not written as the catalogue has it what it is read as.
func stockFrom(cmd *cobra.Command, house *service.Snapshot, path string) ([]string, error) {
	if path == "" {
		return nil, nil
	}
	text, err := terminal.ReadFile(path)
	if err != nil {
		return nil, err
	}
	listed, err := house.StockList(text)
	if err != nil {
		return nil, terminal.Explain(err, path)
	}
	for _, told := range listed.Told {
		if _, err := fmt.Fprintf(cmd.ErrOrStderr(), "%s, %s\n", path, told); err != nil {
			return nil, err
		}
	}
	for _, fault := range listed.Unread {
		if _, err := fmt.Fprintf(cmd.ErrOrStderr(), "%v (not poured; the rest of the list is)\n", terminal.Explain(fault, path)); err != nil {
			return nil, err
		}
	}
	return listed.IDs, nil
}
