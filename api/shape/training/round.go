package training

import (
	"encoding/hex"
	"errors"
	"fmt"
	"math/rand/v2"
	"slices"
	"strconv"

	"counterpour/api/service"
	"counterpour/api/service/coaching"
	"counterpour/api/service/kitchen"
	"counterpour/api/shape"
	"counterpour/api/shape/figure"
	"counterpour/flavor"
	"counterpour/flavor/drill"
	"counterpour/flavor/ratio"
)

// RoundBody asks for a training round.
type RoundBody struct {
	Kind  string   `json:"kind" enum:"family,fault,mend,order,guess,cover,hand" doc:"fault: name what is wrong with a spoilt drink; mend: fix it in one move; order: put three drinks in order; guess: strength and volume; cover: pick what is poured instead; family: read it off the ratio; hand: tell how a drink was made wrong"`
	Axis  string   `json:"axis,omitempty" enum:"strong,sweet,sour,bitter,long" doc:"For fault, mend and order; left out, one is drawn"`
	Size  float64  `json:"size_jnd,omitempty" minimum:"0.5" maximum:"24" doc:"How hard: just-noticeable steps between right and wrong, 12 easy, 1.5 hard; left out, 6"`
	Avoid []string `json:"avoid,omitempty" maxItems:"50" doc:"Allergens that no drink of the round may hold; what is unknown counts as present"`
	Seed  string   `json:"seed,omitempty" maxLength:"13" doc:"Digits and letters; the same seed makes the same round; left out, one is drawn"`
	Seen  []string `json:"seen,omitempty" maxItems:"24" doc:"Marks of the rounds before, whose drinks are not drawn again while others are left"`
}

// MaxSeen is the most marks of rounds before that a request may have.
const MaxSeen = 24

// RoundAnswer is a training round. Everything but round may be shown to whoever plays.
type RoundAnswer struct {
	Round    RoundKey      `json:"round" doc:"Send it back with the answer. It tells what is asked for, so keep it from whoever plays"`
	Marks    []string      `json:"marks" doc:"Of its drinks; sent as seen, other drinks are drawn. They tell nothing of the answer"`
	Question string        `json:"question"`
	SizeJND  float64       `json:"size_jnd" doc:"How hard it came out"`
	Drinks   []RoundDrink  `json:"drinks" doc:"Numbered from 0; without names where those would tell"`
	Options  []RoundOption `json:"options" doc:"Answers to choose from, numbered from 0"`
	Sayings  []RoundSaying `json:"sayings,omitempty" doc:"What a guest may say of a drink that is off: the answers to a fault"`
}

// RoundKey is what a round is made again from.
type RoundKey struct {
	Kind    string   `json:"kind" enum:"family,fault,mend,order,guess,cover,hand"`
	Axis    string   `json:"axis,omitempty" enum:"strong,sweet,sour,bitter,long"`
	SizeJND float64  `json:"size_jnd" minimum:"0" maximum:"24"`
	Seed    string   `json:"seed" maxLength:"13"`
	Avoid   []string `json:"avoid,omitempty" maxItems:"50"`
	Menu    bool     `json:"menu" doc:"It is of the house's own menu"`
	Look    string   `json:"look" maxLength:"32" doc:"Tells whether the round is still made as it was shown"`
}

// RoundDrink is a drink of a round.
type RoundDrink struct {
	Spec      shape.Spec       `json:"spec"`
	Allergens []shape.Allergen `json:"allergens"`
}

// RoundOption is one answer to choose from.
type RoundOption struct {
	Label     string           `json:"label"`
	Allergens []shape.Allergen `json:"allergens" doc:"Of what the option pours"`
}

// RoundSaying is one thing that a guest may say.
type RoundSaying struct {
	Axis  string   `json:"axis"`
	High  bool     `json:"high" doc:"There is too much of it"`
	Plain string   `json:"plain" doc:"The axis: too much acid"`
	Guest string   `json:"guest" doc:"In the words of a guest: sharp"`
	Also  []string `json:"also" doc:"Other words for it: tart"`
}

// GradeBody answers a training round. Which fields of the answer count depends on the kind.
type GradeBody struct {
	Round  RoundKey    `json:"round" doc:"As the round was answered"`
	Answer GuessedBody `json:"answer"`
}

// GuessedBody is what a learner says.
type GuessedBody struct {
	Axis     string   `json:"axis,omitempty" enum:"strong,sweet,sour,bitter,long" doc:"fault: what is off"`
	High     bool     `json:"high,omitempty" doc:"fault: there is too much of it"`
	Pour     int      `json:"pour,omitempty" minimum:"0" maximum:"39" doc:"mend: which pour to change, from 0"`
	Amount   float64  `json:"amount,omitempty" minimum:"0" doc:"mend: its new amount, in its unit"`
	Order    []int    `json:"order,omitempty" maxItems:"3" doc:"order: the drinks, the least first"`
	ABVPct   float64  `json:"abv_pct,omitempty" minimum:"0" maximum:"100" doc:"guess"`
	VolumeML float64  `json:"volume_ml,omitempty" minimum:"0" doc:"guess"`
	Option   int      `json:"option,omitempty" minimum:"0" maximum:"39" doc:"cover, family, hand: which option, from 0"`
	Lost     []string `json:"lost,omitempty" maxItems:"40" doc:"cover: the families of aroma that the drink has less of with it"`
}

// GradeAnswer is what became of an answer.
type GradeAnswer struct {
	Right    bool        `json:"right"`
	Points   float64     `json:"points" doc:"0 to 100, with part of them for half an answer"`
	Solution string      `json:"solution"`
	Text     string      `json:"text" doc:"The arithmetic"`
	Why      string      `json:"why,omitempty" doc:"Why a wrong answer is wrong"`
	Slip     string      `json:"slip,omitempty" doc:"Of a fault and a mend: what the hand did wrong"`
	Proper   *RoundDrink `json:"proper,omitempty" doc:"Of a fault and a mend: the drink poured properly"`
}

// Digits of points, which are of a hundred.
const digitsPoints = 0

// AnswerRound makes a training round.
func AnswerRound(house *service.Snapshot, body RoundBody) (*RoundAnswer, error) {
	var faults flavor.DataFaults
	avoid, found := kitchen.Avoided(body.Avoid)
	faults = append(faults, found...)
	seed := seedOf(body.Seed, &faults)
	wish := coaching.RoundWish{Kind: drill.Kind(body.Kind), Size: body.Size, Avoid: avoid}
	for i, word := range body.Seen {
		mark, ok := drill.ParseMark(word)
		if !ok {
			faults = append(faults, flavor.Invalid(fmt.Sprintf("seen[%d]", i), word, "%q is no mark; send the marks of an earlier round", word))
		}
		wish.Seen = append(wish.Seen, mark)
	}
	if body.Axis != "" {
		wish.Axis, wish.HasAxis = axisOf("axis", body.Axis, &faults)
	}
	if wish.HasAxis && !hasAxis(wish.Kind, body.Axis) {
		faults = append(faults, flavor.Invalid("axis", body.Axis, "a round of kind %s is not of that axis; use one of %v, or leave the axis out", body.Kind, axesFor(wish.Kind)))
	}
	if len(faults) > 0 {
		return nil, faults
	}
	round, err := house.Round(coaching.RoundRequest{Wish: wish, Rand: rand.New(rand.NewPCG(seed, seed))})
	if err != nil {
		return nil, moved(err, roundPlaces)
	}
	return answerOf(round), nil
}

// roundPlaces are the fields of the API for the places where a round has its faults.
var roundPlaces = map[string]string{"size": "size_jnd", "abv": "answer.abv_pct", "volume": "answer.volume_ml", "pour": "answer.pour", "amount": "answer.amount", "option": "answer.option", "order": "answer.order", "lost": "answer.lost"}

func answerOf(r *drill.Round) *RoundAnswer {
	a := &RoundAnswer{Round: keyOf(r), Question: r.Question, SizeJND: figure.Round(r.Size, figure.JND),
		Marks:  figure.List(r.Marks(), drill.Mark.String),
		Drinks: figure.List(r.Specs, roundDrink),
		Options: figure.List(r.Options, func(o drill.Option) RoundOption {
			return RoundOption{o.Label, shape.AllergensOf(&flavor.Spec{Pours: o.Pours})}
		})}
	if r.Request.Kind == drill.KindFault {
		a.Sayings = figure.List(drill.Sayings(), func(s drill.Complaint) RoundSaying {
			return RoundSaying{s.Axis.String(), s.High, s.Plain, s.Guest, s.Also}
		})
	}
	return a
}

func roundDrink(s flavor.Spec) RoundDrink { return RoundDrink{shape.SpecOf(&s), shape.AllergensOf(&s)} }

func keyOf(r *drill.Round) RoundKey {
	q := &r.Request
	k := RoundKey{Kind: string(q.Kind), SizeJND: q.Size, Seed: strconv.FormatUint(q.Seed, seedBase), Menu: q.Menu, Look: hex.EncodeToString(coaching.Looks(r))}
	if len(axesFor(q.Kind)) > 0 {
		k.Axis = q.Axis.String()
	}
	for _, a := range q.Avoid.List() {
		k.Avoid = append(k.Avoid, string(a))
	}
	return k
}

// seedBase is the base of seeds as text: digits and letters.
const seedBase = 36

// axesFor names the axes of a kind of round; none for a kind without.
func axesFor(k drill.Kind) (out []string) {
	for _, s := range drill.Skills() {
		if s.Kind == k && s.Axis != "" {
			out = append(out, s.Axis)
		}
	}
	return out
}

func hasAxis(k drill.Kind, axis string) bool { return slices.Contains(axesFor(k), axis) }

// AnswerGrade grades the answer to a training round.
func AnswerGrade(house *service.Snapshot, body GradeBody) (*GradeAnswer, error) {
	avoid, faults := kitchen.Avoided(body.Round.Avoid)
	request := drill.RoundRequest{Kind: drill.Kind(body.Round.Kind), Size: body.Round.SizeJND, Menu: body.Round.Menu,
		Seed: seedOf(body.Round.Seed, &faults), Avoid: drill.AvoidedOf(avoid)}
	if body.Round.Axis != "" {
		request.Axis, _ = axisOf("axis", body.Round.Axis, &faults)
	}
	looked, err := hex.DecodeString(body.Round.Look)
	if err != nil {
		faults = append(faults, flavor.Invalid("look", body.Round.Look, "this is no look of a round; send back the whole round as it was answered"))
	}
	for _, f := range faults {
		f.Location = "round." + f.Location
	}
	answer := answered(&body.Answer, &faults)
	if len(faults) > 0 {
		return nil, faults
	}
	round, err := house.RoundAgain(request, looked)
	if errors.Is(err, coaching.ErrChanged) {
		return nil, flavor.Invalid("round", body.Round.Seed, "this round cannot be graded any more, since the program, its drinks or the stock have changed; ask for another")
	}
	if err != nil {
		return nil, err
	}
	g, err := house.Grade(round, answer)
	if err != nil {
		return nil, moved(err, roundPlaces)
	}
	return gradeOf(g), nil
}

func answered(b *GuessedBody, faults *flavor.DataFaults) drill.Answer {
	a := drill.Answer{High: b.High, Pour: b.Pour, Amount: b.Amount, Order: b.Order, ABV: b.ABVPct, Volume: b.VolumeML, Option: b.Option}
	if b.Axis != "" {
		a.Axis, _ = axisOf("answer.axis", b.Axis, faults)
	}
	for i, word := range b.Lost {
		family, ok := flavor.ParseAromaFamily(word)
		if !ok {
			*faults = append(*faults, flavor.Unknown("answer.lost["+strconv.Itoa(i)+"]", word, nil, "no aroma is called %q; use one of the families of an ingredient's aroma", word))
		}
		a.Lost = append(a.Lost, family)
	}
	return a
}

func gradeOf(g *drill.Grade) *GradeAnswer {
	a := &GradeAnswer{Right: g.Right, Points: figure.Round(100*g.Points, digitsPoints), Solution: g.Solution, Text: g.Text, Why: g.Why, Slip: g.Slip}
	if g.Proper != nil {
		proper := roundDrink(*g.Proper)
		a.Proper = &proper
	}
	return a
}

// seedOf reads a seed; an empty one is drawn.
func seedOf(text string, faults *flavor.DataFaults) uint64 {
	if text == "" {
		return rand.Uint64()
	}
	seed, err := strconv.ParseUint(text, seedBase, 64)
	if err != nil {
		*faults = append(*faults, flavor.Invalid("seed", text, "%q is no seed; write up to 12 digits and letters", text))
	}
	return seed
}

// axisOf reads an axis of a ratio.
func axisOf(location, word string, faults *flavor.DataFaults) (ratio.Axis, bool) {
	a, ok := ratio.ParseAxis(word)
	if !ok {
		*faults = append(*faults, flavor.Invalid(location, word, "%q is no axis; use one of %v", word, ratio.Axes()))
	}
	return a, ok
}

// moved returns err with the places of its faults as the fields of a body are called.
func moved(err error, places map[string]string) error {
	return flavor.Relocated(err, func(f *flavor.DataFault) {
		if to, ok := places[f.Location]; ok {
			f.Location = to
		}
	})
}
