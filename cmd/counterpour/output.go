package main

import (
	"counterpour/api/wire"
	"fmt"
	"io"
	"strconv"
	"strings"
	"text/tabwriter"

	"github.com/spf13/cobra"
)

// addJSON adds the flag that prints what the endpoint would answer.
func addJSON(cmd *cobra.Command) *bool {
	return cmd.Flags().Bool("json", false, "print JSON instead of a table: the same as the matching endpoint, if there is one")
}

// deliver writes an answer as JSON, or as show shows it.
func deliver[T any](cmd *cobra.Command, asJSON bool, answer T, show func(*page, T)) error {
	if asJSON {
		return wire.WriteJSON(cmd.OutOrStdout(), answer)
	}
	p := newPage(cmd.OutOrStdout())
	show(p, answer)
	return p.close()
}

// page writes a page for people: headings, and tables under them. The first
// error is kept and ends the writing.
type page struct {
	w     io.Writer
	table *tabwriter.Writer
	err   error
}

func newPage(w io.Writer) *page {
	return &page{w: w, table: tabwriter.NewWriter(w, 0, 4, 2, ' ', 0)}
}

func (p *page) close() error {
	p.flush()
	return p.err
}

func (p *page) flush() {
	if err := p.table.Flush(); p.err == nil {
		p.err = err
	}
}

// line writes a line that belongs to no table.
func (p *page) line(format string, args ...any) {
	p.flush()
	if p.err == nil {
		_, p.err = fmt.Fprintf(p.w, format+"\n", args...)
	}
}

// head begins a part of the page.
func (p *page) head(format string, args ...any) { p.line("\n"+format, args...) }

// row writes a row of a table, its cells aligned with those above; empty ones
// at its end are left out.
func (p *page) row(cells ...string) {
	for len(cells) > 0 && cells[len(cells)-1] == "" {
		cells = cells[:len(cells)-1]
	}
	if p.err != nil {
		return
	}
	_, p.err = fmt.Fprintln(p.table, "  "+strings.Join(cells, "\t"))
}

// number writes a number with so many decimals.
func number(v float64, digits int) string { return strconv.FormatFloat(v, 'f', digits, 64) }

// orNone joins words, or says that there are none.
func orNone(words []string) string {
	if len(words) == 0 {
		return "none"
	}
	return strings.Join(words, ", ")
}
