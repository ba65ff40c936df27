package bench

import (
	"net/http"
	"strings"

	"counterpour/api/service"
	"counterpour/api/service/remedy"
	"counterpour/flavor"
	"counterpour/webui/access"
	"counterpour/webui/frame"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// namedView says what a word of the house means from now on, or why not.
type namedView struct {
	Words, Kind string
	Forgotten   bool
	Fault       string
}

// named keeps what a name that nobody knew is in this house, or forgets it; nil if
// nothing of the kind was asked.
func (p *pages) named(r *http.Request, f *benchForm) (*namedView, error) {
	if f.Means == "" && f.Forget == "" || r.Method != http.MethodPost {
		return nil, nil
	}
	if !access.May(r.Context(), access.Lead) {
		t := frame.TroubleOf(frame.ErrNotTheirs)
		return &namedView{Fault: t.Title + ". " + t.Text}, nil
	}
	id, said, _ := strings.Cut(f.Means, " ")
	request := service.NameRequest{Words: strings.TrimSpace(said), Kind: id}
	if f.Forget != "" {
		request = service.NameRequest{Words: f.Forget, Undo: true}
	}
	v := &namedView{Words: request.Words, Forgotten: request.Undo}
	if profile, known := p.house.Shelf().ByID(id); known {
		v.Kind = profile.Name
		if !request.Undo && !remedy.Keeps(request.Words, profile, f.Guest.Limits()) {
			v.Fault = say.It("bench.not-kept-at-one-tap", "Words", request.Words)
			return v, nil
		}
	}
	err := p.house.Name(r.Context(), frame.By(r), request)
	if faults := flavor.DataFaultsOf(err); len(faults) > 0 {
		v.Fault, err = words.Sentence(faults[0].Message), nil
	}
	return v, err
}
