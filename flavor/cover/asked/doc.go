// Package asked is what may be asked of a search for covers, and what a cover must earn.
package asked
