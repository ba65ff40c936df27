package station

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/data/datatest"
	"counterpour/flavor"
	"counterpour/flavor/riff/precedent"
	"counterpour/flavor/template"
)

// keeper works out pairs as a job does.
func keeper(proven []template.Labelled, c *data.Catalogue) *Job {
	return &Job{Station: &Station{companions: precedent.NewCompanions(proven, c.Space())}, keeps: map[string]*precedent.Kept{}, pairs: map[[2]string]*precedent.Pair{}}
}

func provenBook(t *testing.T) (*data.Catalogue, []template.Labelled) {
	t.Helper()
	d, err := datatest.Calibrated()
	require.NoError(t, err)
	return d.Catalogue, d.Proven
}

// Proven drinks keep the company that the other proven drinks keep: each is judged
// by a book without it and without every fifth other, so the share is on the high
// side. Room for a change of a few drinks.
func TestProvenDrinksKeepCompany(t *testing.T) {
	c, book := provenBook(t)
	const folds = 5
	shunned := 0
	for fold := range folds {
		var rest []template.Labelled
		for i := range book {
			if i%folds != fold {
				rest = append(rest, book[i])
			}
		}
		j := keeper(rest, c)
		for i := fold; i < len(book); i += folds {
			if _, bad := j.company(&book[i].Spec, nil); bad {
				shunned++
			}
		}
	}
	share := float64(shunned) / float64(len(book))
	t.Logf("%.1f %% of proven drinks would be shunned by the others", 100*share)
	assert.Less(t, share, 0.26)
	own := keeper(book, c)
	for i := range book {
		_, bad := own.company(&book[i].Spec, nil)
		assert.False(t, bad, "%s is shunned by the book that it is in", book[i].Spec.Name)
	}
}

// Pairs that somebody brought are not questioned.
func TestGivenCompanyIsNotQuestioned(t *testing.T) {
	c, book := provenBook(t)
	s, err := c.ReadSpec("", "2 oz bourbon\n1 oz lemon juice\n2 oz whole milk\nshake, up")
	require.NoError(t, err)
	j := keeper(book, c)
	_, bad := j.company(&s, nil)
	assert.True(t, bad)
	j.Given = []*flavor.Spec{&s}
	odd, bad := j.company(&s, nil)
	assert.False(t, bad)
	assert.Zero(t, odd)
}
