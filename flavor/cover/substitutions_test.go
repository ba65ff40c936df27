package cover

import (
	"context"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "rewrite the golden summary")

// substitution is what the trade pours when a bottle is out: any of the
// accepted will do. Common practice, no source.
type substitution struct {
	missing, drink string
	accepted       []string // ids
}

const (
	daisyOf   = "2 oz blanco tequila\n1 oz %s\n3/4 oz lime juice\nshake, up"
	sidecarOf = "2 oz cognac\n1 oz %s\n3/4 oz lemon juice\nshake, up"
	sourOf    = "2 oz %s\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up"
	sweetOf   = "2 oz bourbon\n3/4 oz lemon juice\n3/4 oz %s\nshake, up"
	stirredOf = "2 oz %s\n1 oz sweet vermouth\n2 dashes aromatic bitters\nstir, up"
	wineOf    = "2 oz rye whiskey\n1 oz %s\n2 dashes aromatic bitters\nstir, up"
	bitterOf  = "1 oz gin\n1 oz %s\n1 oz sweet vermouth\nstir, rocks"
	oldOf     = "2 oz bourbon\n1 barspoon rich simple syrup\n2 dashes %s\nstir, rocks"
	longOf    = "2 oz %s\n4 oz ginger beer\n1/2 oz lime juice\nbuild, long"
	topOf     = "1 1/2 oz gin\n3/4 oz lemon juice\n1/2 oz simple syrup\n3 oz %s\nshake, long"
	tropicOf  = "2 oz aged rum\n3/4 oz lime juice\n1/2 oz orange curacao\n1/2 oz %s\nshake, rocks"
	creamOf   = "1 oz cognac\n1 oz %s\n1 oz heavy cream\nshake, up"
	spritzOf  = "3 oz prosecco\n2 oz %s\n1 oz soda water\nbuild, long"
	martiniOf = "2 oz gin\n1/2 oz %s\nstir, up"
)

var substitutions = []substitution{
	// orange liqueurs stand in for each other
	{"triple sec", daisyOf, []string{"orange-curacao", "dry-orange-curacao", "cognac-orange-liqueur", "mandarin-liqueur"}},
	{"orange curacao", sidecarOf, []string{"triple-sec", "dry-orange-curacao", "cognac-orange-liqueur", "mandarin-liqueur", "blue-curacao"}},
	{"dry orange curacao", sidecarOf, []string{"triple-sec", "orange-curacao", "cognac-orange-liqueur", "mandarin-liqueur"}},
	{"cognac orange liqueur", sidecarOf, []string{"triple-sec", "orange-curacao", "dry-orange-curacao"}},
	{"blue curacao", daisyOf, []string{"triple-sec", "orange-curacao", "dry-orange-curacao", "mandarin-liqueur"}},
	// whiskeys
	{"bourbon", stirredOf, []string{"rye-whiskey", "wheated-bourbon", "high-rye-bourbon", "bonded-bourbon", "tennessee-style-whiskey", "wheat-whiskey"}},
	{"rye whiskey", stirredOf, []string{"bourbon", "bonded-rye", "bonded-rye-whiskey", "high-rye-bourbon", "canadian-whisky"}},
	{"bourbon", sourOf, []string{"rye-whiskey", "wheated-bourbon", "high-rye-bourbon", "bonded-bourbon", "tennessee-style-whiskey", "wheat-whiskey"}},
	{"Irish whiskey", sourOf, []string{"irish-pot-still-whiskey", "blended-scotch", "canadian-whisky", "irish-single-malt", "irish-pot-still", "japanese-blended-whisky", "unpeated-single-malt", "single-malt-unpeated"}},
	{"blended Scotch whisky", stirredOf, []string{"irish-whiskey", "unpeated-single-malt", "single-malt-unpeated", "japanese-blended-whisky", "sherried-single-malt", "single-malt-sherried"}},
	{"high-rye bourbon", stirredOf, []string{"bourbon", "rye-whiskey", "bonded-bourbon", "bonded-rye-whiskey"}},
	// rums and cane
	{"white rum", sourOf, []string{"gold-rum", "cachaca", "aged-rum", "vodka", "rhum-agricole-blanc"}},
	{"gold rum", sourOf, []string{"white-rum", "aged-rum", "demerara-rum", "dark-rum"}},
	{"aged rum", sourOf, []string{"gold-rum", "demerara-rum", "dark-rum", "aged-jamaican-rum", "rhum-agricole-vieux"}},
	{"dark rum", longOf, []string{"black-blended-rum", "navy-style-blended-rum", "demerara-rum", "blackstrap-rum", "aged-rum", "navy-blend-rum", "gold-rum", "aged-jamaican-rum"}},
	{"aged Jamaican rum", tropicOf2, []string{"aged-rum", "demerara-rum", "dark-rum", "navy-style-blended-rum", "gold-rum", "navy-blend-rum"}},
	{"cachaca", sourOf, []string{"aged-cachaca", "rhum-agricole-blanc", "white-rum", "clairin"}},
	// gins, vodkas, agave, brandy
	{"London dry gin", sourOf, []string{"soft-dry-gin", "navy-strength-gin", "citrus-forward-gin", "contemporary-gin", "old-tom-gin", "floral-gin"}},
	{"old tom gin", sourOf, []string{"london-dry-gin", "soft-dry-gin", "citrus-forward-gin", "floral-gin", "barrel-aged-gin"}},
	{"vodka", sourOf, []string{"wheat-vodka", "corn-vodka", "rye-vodka", "potato-vodka", "neutral-spirit", "white-rum"}},
	{"blanco tequila", sourOf, []string{"reposado-tequila", "bacanora", "raicilla", "mezcal", "sotol", "cristalino-tequila"}},
	{"reposado tequila", sourOf, []string{"blanco-tequila", "anejo-tequila", "bacanora", "cristalino-tequila"}},
	{"mezcal", sourOf, []string{"reposado-mezcal", "mezcal-reposado", "raicilla", "bacanora", "sotol", "blanco-tequila"}},
	{"cognac", sourOf, []string{"brandy", "armagnac", "spanish-brandy", "spanish-style-brandy"}},
	{"calvados", sourOf, []string{"apple-brandy", "brandy", "pear-brandy", "cognac"}},
	{"pisco", sourOf, []string{"aromatic-pisco", "singani", "grappa", "brandy", "muscat-grappa"}},
	// vermouths and wines
	{"sweet vermouth", wineOf, []string{"vanilla-rich-sweet-vermouth", "amber-vermouth", "quinquina", "bitter-vermouth", "semi-sweet-red-vermouth", "chinato", "ruby-port"}},
	{"dry vermouth", martiniOf, []string{"extra-dry-vermouth", "fino-sherry", "manzanilla-sherry", "dry-white-wine", "bianco-vermouth", "semi-dry-vermouth"}},
	{"bianco vermouth", martiniOf, []string{"white-quinquina", "semi-sweet-white-vermouth", "dry-vermouth", "rose-vermouth", "amber-vermouth", "semi-dry-vermouth"}},
	{"fino sherry", martiniOf, []string{"manzanilla-sherry", "dry-vermouth", "extra-dry-vermouth", "dry-montilla-wine", "dry-montilla"}},
	// bitter aperitifs and amari
	{"red bitter aperitif", bitterOf, []string{"plant-red-bitter-aperitif", "dark-red-bitter-aperitif", "white-bitter-aperitif", "cask-aged-red-bitter-aperitif", "wine-red-bitter-aperitif"}},
	{"light orange bitter aperitif", spritzOf, []string{"orange-rhubarb-aperitif", "blood-orange-aperitif", "bitter-orange-aperitif", "rhubarb-aperitif", "red-bitter-aperitif", "orange-aperitif-wine", "wine-red-bitter-aperitif"}},
	{"artichoke amaro", bitterOf, []string{"artichoke-rhubarb-amaro", "artichoke-honey-amaro", "cardoon-aperitif", "strong-artichoke-amaro", "alpine-amaro", "medium-amaro"}},
	{"alpine amaro", bitterOf, []string{"herbal-alpine-amaro", "medium-amaro", "mountain-pine-amaro", "dry-alpine-amaro", "southern-herb-amaro", "chamomile-amaro", "artichoke-amaro", "light-orange-amaro", "genepy"}},
	{"gentian aperitif", bitterOf, []string{"gentian-liqueur", "white-bitter-aperitif", "gentian-amaro", "american-gentian-aperitif", "white-gentian-aperitif-wine"}},
	// liqueurs
	{"maraschino liqueur", "2 oz gin\n1/2 oz %s\n3/4 oz lemon juice\n1/4 oz simple syrup\nshake, up", []string{"kirsch-cherry-liqueur", "kirsch-based-cherry-liqueur", "cherry-liqueur", "kirsch", "creme-de-noyaux", "amaretto"}},
	{"cherry liqueur", "2 oz gin\n1/2 oz %s\n3/4 oz lemon juice\n1/4 oz simple syrup\nshake, up", []string{"morello-cherry-liqueur", "kirsch-cherry-liqueur", "raspberry-liqueur", "creme-de-mure", "maraschino-liqueur"}},
	{"creme de mure", "2 oz gin\n1 oz lemon juice\n1/2 oz simple syrup\n1/2 oz %s\nshake, crushed", []string{"creme-de-cassis", "raspberry-liqueur", "black-raspberry-liqueur", "blueberry-liqueur", "strawberry-liqueur"}},
	{"creme de cassis", "1/2 oz %s\n4 oz dry white wine\nbuild, up", []string{"creme-de-mure", "raspberry-liqueur", "black-raspberry-liqueur", "blueberry-liqueur", "blackcurrant-syrup", "cherry-liqueur", "redcurrant-liqueur"}},
	{"apricot liqueur", sidecarOf, []string{"peach-liqueur", "plum-liqueur", "pear-liqueur", "quince-liqueur", "mirabelle-liqueur"}},
	{"peach liqueur", sidecarOf, []string{"apricot-liqueur", "plum-liqueur", "pear-liqueur", "apple-liqueur", "quince-liqueur"}},
	{"elderflower liqueur", "2 oz gin\n1 oz %s\n3/4 oz lemon juice\nshake, up", []string{"elderflower-cordial", "lychee-liqueur", "jasmine-liqueur", "rose-liqueur", "elderflower-syrup", "creme-de-violette", "muscat-liqueur"}},
	{"coffee liqueur", "1 1/2 oz vodka\n3/4 oz %s\nbuild, rocks", []string{"dry-coffee-liqueur", "espresso-liqueur", "creme-de-cacao-dark", "dark-creme-de-cacao", "coffee-amaro", "creme-de-cacao", "chocolate-liqueur", "mocha-liqueur"}},
	{"creme de cacao", creamOf, []string{"dark-creme-de-cacao", "creme-de-cacao-dark", "chocolate-liqueur", "coffee-liqueur"}},
	{"amaretto", sidecarOf, []string{"creme-de-noyaux", "hazelnut-liqueur", "apricot-kernel-liqueur", "pistachio-liqueur", "walnut-liqueur", "orgeat", "macadamia-liqueur"}},
	{"green herbal liqueur", "3/4 oz gin\n3/4 oz %s\n3/4 oz maraschino liqueur\n3/4 oz lime juice\nshake, up", []string{"yellow-herbal-liqueur", "genepy", "honey-herb-liqueur", "alpine-herb-liqueur"}},
	{"yellow herbal liqueur", "3/4 oz gin\n3/4 oz %s\n3/4 oz triple sec\n3/4 oz lemon juice\nshake, up", []string{"green-herbal-liqueur", "genepy", "honey-herb-liqueur", "vanilla-anise-liqueur", "whisky-honey-liqueur"}},
	{"allspice dram", "2 oz aged rum\n3/4 oz lime juice\n1/2 oz simple syrup\n1/4 oz %s\nshake, up", []string{"allspice-syrup", "clove-syrup", "allspice-tincture", "cinnamon-liqueur", "spiced-rum", "falernum", "clove-tincture"}},
	{"ginger liqueur", "2 oz blended Scotch whisky\n3/4 oz lemon juice\n3/4 oz %s\nshake, up", []string{"ginger-syrup", "ginger-wine", "ginger-cordial", "ginger-honey-syrup", "chilli-liqueur"}},
	// syrups
	{"simple syrup", sweetOf, []string{"demerara-syrup", "cane-syrup", "gum-syrup", "rich-simple-syrup", "white-sugar", "caster-sugar", "agave-syrup", "corn-syrup", "invert-sugar-syrup", "invert-syrup", "glucose-syrup", "low-sugar-syrup", "powdered-sugar"}},
	{"honey syrup", sweetOf, []string{"honey-syrup-1-1", "honey-syrup-2-1", "honey-syrup-3-1", "honey", "raw-honey-syrup", "maple-syrup", "agave-nectar", "agave-syrup", "demerara-syrup", "chamomile-syrup", "elderflower-syrup"}},
	{"agave syrup", sweetOf, []string{"agave-nectar", "simple-syrup", "honey-syrup", "demerara-syrup", "maple-syrup", "cane-syrup", "brown-sugar-syrup", "honey-syrup-1-1"}},
	{"maple syrup", "2 oz bourbon\n3/4 oz lemon juice\n1/2 oz %s\nshake, up", []string{"thin-maple-syrup", "maple-syrup-cut", "demerara-syrup", "rich-demerara-syrup", "honey-syrup", "maple-liqueur", "brown-sugar-syrup", "caramel-syrup", "muscovado-syrup"}},
	{"grenadine", sweetOf, []string{"pomegranate-syrup", "raspberry-syrup", "cherry-syrup", "redcurrant-syrup", "strawberry-syrup", "blackberry-syrup", "blackcurrant-syrup", "hibiscus-syrup", "cranberry-syrup"}},
	{"raspberry syrup", sweetOf, []string{"strawberry-syrup", "blackberry-syrup", "grenadine", "blackcurrant-syrup", "cherry-syrup", "redcurrant-syrup", "blueberry-syrup", "raspberry-jam"}},
	{"orgeat", tropicOf, []string{"pistachio-orgeat", "hazelnut-orgeat", "apricot-kernel-orgeat", "macadamia-orgeat", "macadamia-syrup", "cashew-orgeat", "amaretto", "sesame-orgeat", "walnut-orgeat", "peanut-orgeat", "pecan-orgeat"}},
	{"falernum", tropicOf, []string{"falernum-syrup", "nut-free-falernum-syrup", "clove-syrup", "allspice-syrup", "ginger-syrup", "ginger-liqueur"}},
	{"cinnamon syrup", sweetOf, []string{"cinnamon-vanilla-syrup", "nutmeg-syrup", "simple-syrup", "tropical-spice-syrup", "cinnamon-honey-syrup", "chai-spice-syrup", "chai-syrup", "cinnamon-tincture"}},
	{"ginger syrup", sweetOf, []string{"ginger-cordial", "ginger-liqueur", "ginger-honey-syrup", "galangal-syrup", "black-pepper-syrup", "chilli-syrup"}},
	{"passion fruit syrup", sweetOf, []string{"mango-syrup", "pineapple-syrup", "guava-syrup", "passion-fruit-puree", "passion-fruit-liqueur", "pineapple-gum-syrup", "passion-fruit-juice", "papaya-syrup", "banana-syrup"}},
	{"pineapple syrup", sweetOf, []string{"pineapple-gum-syrup", "mango-syrup", "guava-syrup", "passion-fruit-syrup", "banana-syrup", "pineapple-liqueur", "papaya-syrup"}},
	{"vanilla syrup", sweetOf, []string{"vanilla-sugar", "vanilla-liqueur", "tonka-syrup", "vanilla-extract", "cinnamon-vanilla-syrup", "vanilla-demerara-syrup", "simple-syrup", "custard-syrup"}},
	// juices, sodas, bitters, texture
	{"lemon juice", "2 oz gin\n3/4 oz %s\n3/4 oz simple syrup\nshake, up", []string{"lime-juice", "bottled-lemon-juice", "extended-lemon-juice", "meyer-lemon-juice", "yuzu-juice", "calamansi-juice", "extended-lime-juice", "lemon-acid-solution", "key-lime-juice", "bottled-lime-juice", "sudachi-juice"}},
	{"lime juice", "2 oz white rum\n3/4 oz %s\n3/4 oz simple syrup\nshake, up", []string{"lemon-juice", "bottled-lime-juice", "extended-lime-juice", "key-lime-juice", "calamansi-juice", "extended-lemon-juice", "makrut-lime-juice", "yuzu-juice", "sudachi-juice"}},
	{"ginger beer", "2 oz vodka\n1/2 oz lime juice\n4 oz %s\nbuild, long", []string{"ginger-ale", "dry-ginger-ale", "diet-ginger-ale", "alcoholic-ginger-beer"}},
	{"soda water", topOf, []string{"mineral-water", "sparkling-mineral-water", "light-tonic-water", "tonic-water", "cucumber-soda", "diet-tonic-water", "alcohol-free-sparkling-wine"}},
	{"tonic water", topOf, []string{"light-tonic-water", "aromatic-tonic-water", "bitter-lemon", "soda-water", "bitter-orange-soda"}},
	{"prosecco", topOf, []string{"cava", "cremant", "brut-champagne", "extra-dry-prosecco", "sparkling-rose", "english-sparkling-wine"}},
	{"brut champagne", topOf, []string{"cremant", "cava", "prosecco", "blanc-de-blancs", "champagne-rose", "sparkling-rose", "rose-champagne"}},
	{"aromatic bitters", oldOf, []string{"old-fashioned-bitters", "whiskey-barrel-bitters", "orange-bitters", "clove-bitters", "cardamom-bitters", "cherry-bitters", "chocolate-bitters", "anise-bitters", "tropical-spice-bitters", "cinnamon-bitters", "cola-bitters", "gentian-tincture"}},
	{"orange bitters", oldOf, []string{"bitter-orange-bitters", "mandarin-bitters", "grapefruit-bitters", "blood-orange-bitters", "aromatic-bitters", "orange-peel-tincture", "lemon-bitters"}},
	{"egg white", "2 oz bourbon\n3/4 oz lemon juice\n3/4 oz simple syrup\n1 piece %s\nshake, up", []string{"pasteurised-egg-white", "chickpea-water", "dried-egg-white", "quillaja-foamer"}},
	{"heavy cream", "1 oz cognac\n1 oz creme de cacao\n1 oz %s\nshake, up", []string{"double-cream", "light-cream", "single-cream", "half-and-half", "mascarpone", "coconut-cream", "whipped-cream", "vegan-cream", "creme-fraiche", "sour-cream", "creme-fraiche"}},
}

const tropicOf2 = "2 oz %s\n3/4 oz lime juice\n1/2 oz orange curacao\n1/2 oz orgeat\nshake, rocks"

// Recall at 5: an accepted substitute is the leading part of one of the first
// five covers. Reciprocal rank: of the first such cover.
func TestSubstitutionsTheTradeAccepts(t *testing.T) {
	b := newBench(t)
	require.GreaterOrEqual(t, len(substitutions), 60)
	usual := b.usual(t)
	var recall, rank float64
	var misses []string
	for _, s := range substitutions {
		r := b.request(t, fmt.Sprintf(s.drink, s.missing), s.missing, 2, 10)
		r.Usual = usual
		got, err := b.finder.Find(context.Background(), r)
		require.NoError(t, err)
		at := slices.IndexFunc(got.Covers, func(c Cover) bool { return slices.Contains(s.accepted, c.Parts[0].Profile.ID) })
		if at >= 0 {
			rank += 1 / float64(at+1)
		}
		if at >= 0 && at < 5 {
			recall++
			continue
		}
		var first []string
		for _, c := range got.Covers[:min(3, len(got.Covers))] {
			first = append(first, c.Text)
		}
		misses = append(misses, fmt.Sprintf("%s: %s", s.missing, strings.Join(first, " | ")))
	}
	n := float64(len(substitutions))
	summary := fmt.Sprintf("substitutions %d\nrecall at 5 %.3f\nmean reciprocal rank %.3f\n", len(substitutions), recall/n, rank/n)
	for _, m := range misses {
		t.Log(m)
	}
	golden := filepath.Join("testdata", "substitutions.golden")
	if *update {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(golden, []byte(summary), 0o644))
	}
	want, err := os.ReadFile(golden)
	require.NoError(t, err)
	assert.Equal(t, string(want), summary, "a change of ranking; run with -update if it is meant")
}

// usual is what proven drinks and the demo house are made of.
func (b *bench) usual(t testing.TB) map[string]bool {
	out := map[string]bool{}
	_, stock := b.house(t)
	for _, p := range stock {
		out[p.ID] = true
	}
	for _, l := range b.book {
		for _, p := range l.Spec.Pours {
			out[p.Profile.ID] = true
		}
	}
	return out
}
