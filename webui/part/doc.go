// Package part makes the parts that several pages share, each with a template in
// templates/parts or a value that pages show: allergens, covers, costs, drawings, faults
// of a draft, and differences between specs.
package part
