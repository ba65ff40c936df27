// Package stocksheet is the page where a house's bottles come in from a sheet that
// somebody keeps, a step at a time, and the file that they go out to.
package stocksheet
