package likeness

import (
	"net/url"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/chart"
	"counterpour/webui/behind"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// nearest is how many neighbours of a bottle are listed.
const nearest = 8

// nearView is the neighbours of a bottle.
type nearView struct {
	Name string
	Rows []nearRow
}

// nearRow is one neighbour.
type nearRow struct {
	Name, Address string
	Differs       string // how it differs
	Distance      string // in standard deviations of one taste
	Out           bool

	id string
}

// nearOf lists what in the stock is most like a bottle; nil if the house does not
// keep it.
func nearOf(s *behind.Shift, id string) *nearView {
	at := slices.IndexFunc(s.Stock, func(b *flavor.Profile) bool { return b.ID == id })
	if at < 0 {
		return nil
	}
	v := &nearView{Name: s.Stock[at].Name}
	for _, n := range chart.Neighbours(s.Stock, s.Stock[at], nearest) {
		row := nearRow{Name: n.Profile.Name, Address: nearAddress(n.Profile), Differs: say.It("likeness.much-the-same"), Distance: words.Figure(n.Distance, 1), Out: s.IsOut(n.Profile), id: n.Profile.ID}
		if len(n.Differs) > 0 {
			row.Differs = words.List(n.Differs)
		}
		v.Rows = append(v.Rows, row)
	}
	return v
}

func nearAddress(b *flavor.Profile) string {
	return "/map?" + url.Values{"bottle": {b.ID}}.Encode() + "#near"
}
