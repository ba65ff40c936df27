package board

import (
	"context"
	"net/http"
	"slices"
	"time"

	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// wallPath is the address of tonight as one sheet.
const wallPath = "/tonight/wall"

// onAWall is how many drinks a sheet holds; more cannot be read at a glance.
const onAWall = 300

// wallView is the menu as it can be poured now, to hang up: everything that tonight keeps
// behind a tap stands open, and nothing can be tapped.
type wallView struct {
	*tonightView
	When  string // as of when
	Stamp string // the same, for machines
	Lists []wallList
}

// wallList is the drinks in one state.
type wallList struct {
	ID, Title string
	Drinks    []tonightDrink
}

// Here is the address of the sheet, for whom it is shown.
func (v *wallView) Here() string { return v.Guest.Address(wallPath) }

// Path is the address of the sheet for everyone.
func (v *wallView) Path() string { return wallPath }

// Back is the address of tonight, for the same guest.
func (v *wallView) Back() string { return v.Guest.Address(TonightPath) }

// Flight is the address of a flight, for the same guest.
func (v *wallView) Flight() string { return v.Guest.Address(flightPath) }

// wall shows all of tonight on a sheet for the wall, on paper or on a screen.
func (p *pages) wall(w http.ResponseWriter, r *http.Request) error {
	guest, err := form.ParseGuest(r)
	if err != nil {
		return err
	}
	v, err := p.wallOf(r.Context(), guest)
	if err != nil {
		return err
	}
	part := "layout"
	if frame.IsFragment(r) {
		part = "board"
	}
	return p.Write(w, r, http.StatusOK, "tonight-wall", part, v)
}

// wallOf works out the sheet: what can be poured first, each list in the order of names,
// since on a wall a drink is looked up.
func (p *pages) wallOf(ctx context.Context, guest form.Guest) (*wallView, error) {
	s, err := behind.ShiftOf(ctx, p.house)
	if err != nil {
		return nil, err
	}
	all, err := p.listOf(ctx, s, wish{guest: guest, page: 1}, onAWall)
	if err != nil {
		return nil, err
	}
	now := time.Now()
	v := &wallView{tonightView: all, When: words.Moment(now), Stamp: now.UTC().Format(time.RFC3339)}
	for _, list := range []wallList{{ID: "covered", Title: say.It("board.with-a-cover")}, {ID: "ready", Title: say.It("board.ready")}, {ID: "missing", Title: say.It("board.missing-something")}} {
		for i := range v.Drinks {
			if v.Drinks[i].State == list.ID {
				list.Drinks = append(list.Drinks, v.Drinks[i])
			}
		}
		if len(list.Drinks) > 0 {
			v.Lists = append(v.Lists, list)
		}
	}
	slices.SortStableFunc(v.NotFor, byName)
	for _, list := range v.Lists {
		slices.SortStableFunc(list.Drinks, byName)
	}
	return v, nil
}
