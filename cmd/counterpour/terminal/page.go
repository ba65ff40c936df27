package terminal

import (
	"fmt"
	"io"
	"strconv"
	"strings"
	"text/tabwriter"

	"github.com/spf13/cobra"

	"counterpour/api/wire"
)

// AddJSON adds the flag for printing the answer of the endpoint as JSON.
func AddJSON(cmd *cobra.Command) *bool {
	return cmd.Flags().Bool("json", false, "print JSON instead of a table: the same as the matching endpoint, if there is one")
}

// Deliver prints an answer as JSON, or with show.
func Deliver[T any](cmd *cobra.Command, asJSON bool, answer T, show func(*Page, T)) error {
	if asJSON {
		return wire.WriteJSON(cmd.OutOrStdout(), answer)
	}
	p := NewPage(cmd.OutOrStdout())
	show(p, answer)
	return p.Close()
}

// Page writes headings and tables for people. It keeps the first error and writes nothing
// after it.
type Page struct {
	w     io.Writer
	table *tabwriter.Writer
	err   error
}

// NewPage returns a new page. Close it to write its last table.
func NewPage(w io.Writer) *Page {
	return &Page{w: w, table: tabwriter.NewWriter(w, 0, 4, 2, ' ', 0)}
}

// Close writes the rest, and returns the first error of the page.
func (p *Page) Close() error {
	p.flush()
	return p.err
}

func (p *Page) flush() {
	if err := p.table.Flush(); p.err == nil {
		p.err = err
	}
}

// Line writes a line outside tables.
func (p *Page) Line(format string, args ...any) {
	p.flush()
	if p.err == nil {
		_, p.err = fmt.Fprintf(p.w, format+"\n", args...)
	}
}

// Head writes a heading.
func (p *Page) Head(format string, args ...any) { p.Line("\n"+format, args...) }

// Row writes a row of a table, with its cells aligned. Empty cells at the end are left
// out.
func (p *Page) Row(cells ...string) {
	for len(cells) > 0 && cells[len(cells)-1] == "" {
		cells = cells[:len(cells)-1]
	}
	if p.err != nil {
		return
	}
	_, p.err = fmt.Fprintln(p.table, "  "+strings.Join(cells, "\t"))
}

// Number formats a number with a fixed number of decimals.
func Number(v float64, digits int) string { return strconv.FormatFloat(v, 'f', digits, 64) }

// OrNone joins words, or returns "none".
func OrNone(words []string) string {
	if len(words) == 0 {
		return "none"
	}
	return strings.Join(words, ", ")
}

// Say prints a line of its own.
func Say(cmd *cobra.Command, format string, args ...any) error {
	_, err := fmt.Fprintln(cmd.OutOrStdout(), Legible(fmt.Sprintf(format, args...)))
	return err
}

// Drinks says how many drinks there are.
func Drinks(n int) string {
	if n == 1 {
		return "1 drink"
	}
	return strconv.Itoa(n) + " drinks"
}
