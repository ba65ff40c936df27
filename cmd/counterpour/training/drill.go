package training

import (
	"bufio"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"counterpour/api/service"
	"counterpour/api/shape/training"
	"counterpour/cmd/counterpour/premises"
	"counterpour/cmd/counterpour/printed"
	"counterpour/cmd/counterpour/terminal"
	"counterpour/flavor"
	"counterpour/flavor/drill"
)

// newDrill plays training rounds.
//
//	counterpour drill --kind fault --size 3 --rounds 5
func newDrill(open premises.Kitchens) *cobra.Command {
	var asJSON *bool
	var where string
	var rounds int
	var body training.RoundBody
	cmd := &cobra.Command{
		Use:   "drill [--kind KIND] [--rounds N]",
		Short: "Train: what is wrong with this drink, and how is it mended?",
		Long: `Asks one question after another about drinks of the menu and proven ones, reads an
answer on a line, and says whether it is right and why. The end of the input ends the
sitting. Nothing is kept; the pages of a house keep how its people get on. Kinds, in the
order in which they are taught:

  family  read the family from the ratio
  fault   name what is wrong with a spoilt drink
  mend    put it right by changing one amount
  order   put three drinks in order
  guess   guess strength and volume
  cover   pick what is poured instead
  hand    tell from the glass how a drink was made wrong

With --json it prints one round as the API answers it.`,
		Args: cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if rounds < 1 || rounds > mostRounds {
				return terminal.Usagef("--rounds: %d is out of range; play 1 to %d", rounds, mostRounds)
			}
			if body.Kind != "" && !slices.Contains(drill.Kinds(), drill.Kind(body.Kind)) {
				return terminal.Usagef("--kind: %q is no kind of round; use one of %v", body.Kind, drill.Kinds())
			}
			house, done, err := premises.SnapshotOf(cmd.Context(), open, where)
			if err != nil {
				return err
			}
			defer done()
			if *asJSON {
				answer, err := training.AnswerRound(house, kindOf(body, 0))
				if err != nil {
					return terminal.Explain(err, "")
				}
				return terminal.Deliver(cmd, true, answer, nil)
			}
			return terminal.Explain(play(cmd, house, body, rounds), "")
		},
	}
	asJSON = terminal.AddJSON(cmd)
	cmd.Flags().StringVar(&body.Kind, "kind", "", "family, fault, mend, order, guess, cover or hand; one after another if empty")
	cmd.Flags().StringVar(&body.Axis, "axis", "", "strong, sweet, sour, bitter or long, for fault, mend and order; drawn if empty")
	cmd.Flags().Float64Var(&body.Size, "size", drill.StartSize, "how hard, in noticeable steps between right and wrong: 12 is easy, 1.5 hard")
	cmd.Flags().StringArrayVar(&body.Avoid, "avoid", nil, "an allergen that no drink may hold; may be repeated")
	cmd.Flags().StringVar(&body.Seed, "seed", "", "digits and letters; the same make the same rounds")
	cmd.Flags().IntVar(&rounds, "rounds", 1, "how many to play, 1 to 100")
	premises.AddFlag(cmd, &where)
	return cmd
}

// mostRounds is the most rounds of one sitting.
const mostRounds = 100

// kindOf returns the request for a round of a sitting, counted from 0.
func kindOf(body training.RoundBody, n int) training.RoundBody {
	if body.Kind == "" {
		body.Kind = string(drill.Kinds()[n%len(drill.Kinds())])
	}
	if body.Seed != "" && n > 0 {
		body.Seed += strconv.Itoa(n)
	}
	return body
}

// play asks the rounds of a sitting.
func play(cmd *cobra.Command, house *service.Snapshot, body training.RoundBody, rounds int) error {
	in, right, played := bufio.NewScanner(cmd.InOrStdin()), 0, 0
	for n := range rounds {
		round, err := training.AnswerRound(house, kindOf(body, n))
		if err != nil {
			return err
		}
		body.Seen = lastOf(append(body.Seen, round.Marks...))
		if err := onPage(cmd, func(p *terminal.Page) { showRound(p, round) }); err != nil {
			return err
		}
		grade, err := graded(cmd, house, round, in)
		if err != nil {
			return err
		}
		if grade == nil {
			break
		}
		if played++; grade.Right {
			right++
		}
		if err := onPage(cmd, func(p *terminal.Page) { showGrade(p, grade) }); err != nil {
			return err
		}
	}
	if err := in.Err(); err != nil {
		return fmt.Errorf("reading the answers: %w", err)
	}
	return terminal.Say(cmd, "%d of %d right", right, played)
}

// lastOf returns the last marks, as many as a request may have: a long sitting begins again.
func lastOf(seen []string) []string { return seen[max(0, len(seen)-training.MaxSeen):] }

func onPage(cmd *cobra.Command, show func(*terminal.Page)) error {
	p := terminal.NewPage(cmd.OutOrStdout())
	show(p)
	return p.Close()
}

// graded reads lines until one answers the round; nil at the end of the input.
func graded(cmd *cobra.Command, house *service.Snapshot, round *training.RoundAnswer, in *bufio.Scanner) (*training.GradeAnswer, error) {
	for in.Scan() {
		answer, err := answerIn(in.Text(), round)
		if err == nil {
			var g *training.GradeAnswer
			if g, err = training.AnswerGrade(house, training.GradeBody{Round: round.Round, Answer: answer}); err == nil {
				return g, nil
			}
		}
		faults := flavor.DataFaultsOf(err)
		if len(faults) == 0 {
			return nil, err
		}
		if err := terminal.Say(cmd, "%s", terminal.Legible(faults[0].Message)); err != nil {
			return nil, err
		}
	}
	return nil, nil
}

// howToAnswer says how the answer to each kind of round is typed.
var howToAnswer = map[drill.Kind]string{
	drill.KindFamily: "its number, or its name",
	drill.KindFault:  "the number of what a guest would say, or a word for it, such as sharp",
	drill.KindMend:   "one pour and its new amount, such as 2 3/4, or 3/4 oz lemon; 0 leaves it out",
	drill.KindOrder:  "the drinks, the least first, by number or name, such as 2 1 3",
	drill.KindGuess:  "strength in % vol and volume in mL, such as 14 150",
	drill.KindCover:  "its number, and the aromas that the drink loses, such as 2, nut, floral",
	drill.KindHand:   "its number, or words of it",
}

func showRound(p *terminal.Page, r *training.RoundAnswer) {
	p.Head("%s", r.Question)
	for i := range r.Drinks {
		d := &r.Drinks[i]
		name := d.Spec.Name
		if len(r.Drinks) > 1 {
			name = fmt.Sprintf("%d. %s", i+1, name)
		}
		p.Head("%s", strings.TrimSpace(name+" ("+d.Spec.Method+", "+d.Spec.Service+")"))
		for k, x := range d.Spec.Pours {
			p.Row(fmt.Sprintf("  %d.", k+1), printed.Amount(x.Amount, x.Unit), x.Name)
		}
		for _, l := range printed.AllergenLines(d.Allergens) {
			p.Line("     %s: %s", l[0], l[1])
		}
	}
	p.Line("")
	for i, o := range r.Options {
		p.Line("  %d. %s", i+1, o.Label)
		for _, l := range printed.AllergenLines(o.Allergens) {
			p.Line("     %s: %s", l[0], l[1])
		}
	}
	for i, s := range r.Sayings {
		p.Row(fmt.Sprintf("  %d.", i+1), s.Guest, s.Plain)
	}
	p.Line("Answer: %s", howToAnswer[drill.Kind(r.Round.Kind)])
}

func showGrade(p *terminal.Page, g *training.GradeAnswer) {
	said := "Not this time"
	if g.Right {
		said = "Right"
	}
	p.Head("%s, %s of 100 points: %s", said, terminal.Number(g.Points, 0), g.Solution)
	for _, text := range []string{g.Slip, g.Why, g.Text} {
		if text != "" {
			p.Line("%s", text)
		}
	}
}
