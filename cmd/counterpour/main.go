// Command counterpour scores and fixes drafts of drinks, and finds what to pour when a
// bottle is out. Run it with --help for its commands.
package main

import (
	"os"
)

func main() {
	collectLater(os.Args[1:])
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}
