// Package behind declares what the pages ask of the house and of the science: a
// bar that scores and covers, the house with its menu and stock, and a trainer.
// The pages know nothing else of who answers.
package behind
