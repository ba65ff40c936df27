// Package tables holds rows of published tables of what foods and drinks are
// made of, and works out from them the figures of the catalogue that they can
// give. The catalogue keeps its figures as text; a test holds them to these.
//
// # The tables
//
// Each file holds the rows that figures.toml names, in columns of our own, a
// blank where the table gives nothing.
//
//   - usda.csv: USDA National Nutrient Database for Standard Reference, Release
//     26 (2013), public domain; per 100 g of the edible part. Branded rows are
//     not among them.
//   - ciqual.csv: Anses, Ciqual French food composition table, editions of 7 July
//     2020 and 3 November 2025, Licence Ouverte (Etalab); per 100 g. "Under the
//     limit" and "traces" stand as zero.
//   - acids.csv: Longvah, Ananthan, Bhaskarachary and Venkaiah, Indian Food
//     Composition Tables, National Institute of Nutrition, 2017 (copy under the
//     MIT licence), and Standard Tables of Food Composition in Japan, 2020 (copy
//     under CC BY 4.0); organic acids per 100 g.
//   - market.csv: what the state monopolies of Finland (price lists of 22 June
//     2022 and 1 November 2024), Norway (2018 to 2020) and Sweden (spring of
//     2021) publish of their range, gathered by style: number of products, median,
//     tenth and ninetieth percentile and standard deviation of strength, sugar and total acid (expressed as
//     tartaric acid, from memory). Styles are told by the seller's category, the
//     words on the label and, for dry and sweet kinds, the sugar itself. Finnish
//     sugar of 100 g/L and more is rounded to 10 g/L.
//   - juices.csv: citric acid of juices, g/L: Penniston, Nakada, Holmes and Assimos,
//     Journal of Endourology 22:567, 2008, with standard deviations, and Karadeniz,
//     Turkish Journal of Agriculture and Forestry 28:267, 2004.
//   - beer.csv: bitterness and strength by style, from the same Finnish lists and
//     from 2,410 canned craft beers of the United States (2017, MIT licence): mean
//     and standard deviation. European and international bitterness units are
//     taken as one.
//   - flavonoids.csv: USDA Database for the Flavonoid Content of Selected Foods,
//     Release 3.3 (2018), public domain; mg per 100 g.
//
// # The rules
//
// Per 100 g becomes per litre by the density of the food, which is worked out
// from its water, alcohol and solids as that of every drink here is, see
// [counterpour/flavor/mix]. Texture is the fat, protein and fibre; salt is the sodium as
// sodium chloride. The total acid of a market row becomes acid as weighed by the
// equivalent weights of the acids of the record, and the citric acid of a juice
// all its acids by their shares there. A bitterness unit of beer, 1
// mg/L of iso-alpha-acids, counts as 1 mg/L of quinine (factor from memory), and
// the naringin that the naringenin of grapefruit and its kin would make, at most,
// as 0.08 of its mass (factor from memory). The tannin of a tea is the sum of its
// catechins, theaflavins and thearubigins; that table has no polymers of wine, so wine has none from it.
//
// Rows of foods are averaged; rows of a market or of beers are averaged by the
// number of products behind them. The spread of a figure joins the spread
// within the rows, for foods the relative one that figures.toml states, and the spread
// between them.
package tables
