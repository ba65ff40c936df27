package index

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	"counterpour/flavor/lookup"

	"github.com/stretchr/testify/require"
)

// judged is what a bartender types and the ingredient that is meant.
var judged = []struct {
	group   string
	queries []string // "typed > wanted id"
}{
	{"names and aliases", []string{
		"gin > london-dry-gin", "rye > rye-whiskey", "bourbon > bourbon", "tequila > blanco-tequila", "bitters > aromatic-bitters",
		"simple > simple-syrup", "sweet vermouth > sweet-vermouth", "dry vermouth > dry-vermouth", "triple sec > triple-sec",
		"lime juice > lime-juice", "soda > soda-water", "tonic > tonic-water", "egg white > egg-white", "aquafaba > chickpea-water",
		"champagne > brut-champagne", "scotch > blended-scotch", "oat milk > oat-drink", "ginger beer > ginger-beer"}},
	{"as you type", []string{
		"bour > bourbon", "mara > maraschino-liqueur", "oran bit > orange-bitters", "creme de c > creme-de-cassis", "elderf liq > elderflower-liqueur",
		"gren > grenadine", "pineap ju > pineapple-juice", "ginger b > ginger-beer", "orge > orgeat", "absin > absinthe", "fino > fino-sherry",
		"lemon j > lemon-juice", "worcestersh > worcestershire-style-sauce", "coconut cr > coconut-cream", "peych > peach-liqueur"}},
	{"typing errors", []string{
		"burbon > bourbon", "tequlia > blanco-tequila", "vokda > vodka", "mezcla > mezcal", "lemno juice > lemon-juice", "simpel syrup > simple-syrup",
		"tripl sec > triple-sec", "maraschno liqueur > maraschino-liqueur", "grenadeen > grenadine", "orgeet > orgeat", "amareto > amaretto",
		"cinammon syrup > cinnamon-syrup", "vanila syrup > vanilla-syrup", "elderflwr liqueur > elderflower-liqueur", "absinht > absinthe",
		"orange bittrs > orange-bitters", "sweet vermuth > sweet-vermouth", "pinapple juice > pineapple-juice", "grapfruit juice > grapefruit-juice",
		"falernm > falernum", "campagne > brut-champagne", "proseco > prosecco", "gingerbeer > ginger-beer", "expresso > espresso",
		"worchestershire > worcestershire-style-sauce", "creme de casis > creme-de-cassis", "limonchello > limoncello", "congac > cognac",
		"simpel sy > simple-syrup", "lodnon dry > london-dry-gin"}},
	{"accents", []string{
		"créme de cassis > creme-de-cassis", "CRÈME DE CACAO > creme-de-cacao", "anejo tequila > anejo-tequila", "curacao > orange-curacao",
		"cachaca > cachaca", "kummel > kummel", "raki > raki", "pedro ximenez > pedro-ximenez-sherry", "genepi > genepy", "mistra > mistra"}},
	{"plurals", []string{
		"limes > lime", "cherries > cherry", "peaches > peach", "eggs > whole-egg", "mint leaves > mint", "orange bitter > orange-bitters",
		"strawberries > strawberry", "green olives > green-olive", "sugar cubes > sugar-cube", "lemon peels > lemon-peel"}},
	{"two spellings", []string{
		"irish whisky > irish-whiskey", "japanese whiskey > japanese-whisky", "licorice syrup > liquorice-syrup", "chile liqueur > chilli-liqueur",
		"chili bitters > chilli-bitters", "yogurt > yoghurt", "chamomile tea > chamomile-tea", "camomile tea > chamomile-tea",
		"colorless bitter > white-bitter-aperitif", "jenever > young-genever", "savory gin > savoury-gin"}},
	{"other words", []string{
		"smoky whisky > peated-malt", "bitters aromatic > aromatic-bitters", "juice of lime > lime-juice", "freshly squeezed lemon juice > lemon-juice",
		"almond liqueur > amaretto", "coffee liqueur > coffee-liqueur", "vegan foam > chickpea-water", "organic maple syrup > maple-syrup",
		"dry white wine > dry-white-wine", "non alcoholic gin > alcohol-free-juniper", "salt solution > saline", "blackcurrant liqueur > creme-de-cassis"}},
}

// rankDepth is how far down a wanted ingredient is looked for.
const rankDepth = 20

// TestRanking holds the quality of the search over the whole catalogue: a
// change of ranking is a change of the golden file, to be looked at.
func TestRanking(t *testing.T) {
	x := build(t, catalogue(t))
	var b strings.Builder
	fmt.Fprintf(&b, "# rank of the wanted ingredient among the first %d; - is not there\n", rankDepth)
	all := measure{}
	for _, g := range judged {
		m := measure{}
		fmt.Fprintf(&b, "\n# %s\n", g.group)
		for _, line := range g.queries {
			typed, want, ok := strings.Cut(line, " > ")
			require.True(t, ok, line)
			require.Contains(t, x.position, want, "the catalogue has lost a judged ingredient")
			rank := x.rank(t, typed, want)
			m.add(rank)
			all.add(rank)
			fmt.Fprintf(&b, "%-2s %s > %s\n", rankText(rank), typed, want)
		}
		fmt.Fprintf(&b, "%s\n", m)
	}
	fmt.Fprintf(&b, "\n# all\n%s\n", all)
	require.GreaterOrEqual(t, all.n, 60)
	golden(t, "ranking.golden", []byte(b.String()))
}

// rank returns the place of the wanted id among the hits, from 1; 0 is none.
func (x *Index) rank(t *testing.T, typed, want string) int {
	r, err := x.Search(context.Background(), lookup.Query{Text: typed, Limit: rankDepth})
	require.NoError(t, err)
	return slices.Index(ids(r.Hits), want) + 1
}

func rankText(rank int) string {
	if rank == 0 {
		return "-"
	}
	return fmt.Sprint(rank)
}

// measure sums up ranks.
type measure struct {
	n, inFive  int
	reciprocal float64
}

func (m *measure) add(rank int) {
	m.n++
	if rank > 0 {
		m.reciprocal += 1 / float64(rank)
	}
	if rank > 0 && rank <= 5 {
		m.inFive++
	}
}

func (m measure) String() string {
	return fmt.Sprintf("queries %d, recall@5 %.3f, mean reciprocal rank %.3f", m.n, float64(m.inFive)/float64(m.n), m.reciprocal/float64(m.n))
}
