package part_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover"
	"counterpour/flavor/cover/instead"
	"counterpour/flavor/measure"
	"counterpour/flavor/sense"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/part"
)

func TestLeftOutLine(t *testing.T) {
	left := func(steps float64) *cover.Cover {
		return &cover.Cover{Distance: steps, Notice: sense.NoticeOf(steps, false), Score: 80}
	}
	gone := []*flavor.Profile{{ID: "spare-bitters", Name: "spare bitters"}}
	for _, c := range []struct {
		name         string
		left, chosen *cover.Cover
		alone        bool
		want         string
	}{
		{"it does not keep the drink", nil, left(1), false, ""},
		{"nothing else does", left(3.5), nil, false, "Or pour it without spare bitters. A guest will notice; it scores 80."},
		{"nothing else is offered", left(3.5), nil, true, "Pour it without spare bitters. A guest will notice; it scores 80."},
		{"a guest may not notice", left(1.5), left(0.5), false, "Or pour it without spare bitters. A guest may notice; it scores 80."},
		{"a cover comes nearer", left(3.5), left(2), false, ""},
		{"a cover lies further", left(3.5), left(3.8), false, "Or pour it without spare bitters. A guest will notice; it scores 80."},
	} {
		assert.Equal(t, c.want, part.LeftOutLine(house.Settings{}, gone, c.left, c.chosen, c.alone), c.name)
	}
}

// The score is of the amounts as they are moved: they are told, in the units of the house.
func TestLeftOutLineTellsTheAmountsThatScoreSo(t *testing.T) {
	rye, honey, bitters := &flavor.Profile{ID: "rye", Name: "rye"}, &flavor.Profile{ID: "honey", Name: "honey"}, &flavor.Profile{ID: "bitters", Name: "bitters"}
	left := &cover.Cover{Distance: 3.2, Notice: sense.WillNotice, Score: 89, Changes: []balance.Change{
		{Profile: rye, Unit: flavor.Ounce, From: 1, To: 2, ToML: 59.1}, {Profile: honey, Unit: flavor.Ounce, From: 0.25, To: 0.5, ToML: 14.8}, {Profile: bitters, Unit: flavor.Dash, From: 1}}}
	gone := []*flavor.Profile{{ID: "amaro", Name: "amaro"}}
	for units, want := range map[measure.System]string{
		measure.Imperial: "Pour it without amaro: rye to 2\u00a0oz, honey to ½\u00a0oz, no bitters. A guest will notice; it scores 89.",
		measure.Metric:   "Pour it without amaro: rye to 60\u00a0mL, honey to 15\u00a0mL, no bitters. A guest will notice; it scores 89.",
	} {
		assert.Equal(t, want, part.LeftOutLine(house.Settings{Units: units}, gone, left, nil, true))
	}
}

func TestOfferLinksToItsCard(t *testing.T) {
	drink := flavor.Spec{Name: "Long One", Method: flavor.Build, Service: flavor.Rocks}
	o := &instead.Offered{Spec: &drink, Notice: sense.WillNotice}
	assert.Nil(t, part.OfferOf(house.Settings{}, nil, nil, &form.Guest{}))
	assert.Contains(t, part.OfferOf(house.Settings{}, nil, o, &form.Guest{}).Address, "/bench?text=")
	assert.Equal(t, "/specs/long-one", part.OfferOf(house.Settings{}, []behind.HouseSpec{{Slug: "long-one", Spec: drink}}, o, &form.Guest{}).Address)
}
