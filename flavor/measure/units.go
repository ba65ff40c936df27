package measure

import (
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/vocabulary"
)

// Sizes of the units, in mL. The origin of each is at [Definition].
const (
	OunceML      = 29.5735295625 // 231 in³ of 16.387064 mL, over 128
	TeaspoonML   = 4.92892159375 // a sixth of a US fluid ounce
	TablespoonML = 14.78676478125
	CentilitreML = 10.0
	BarspoonML   = 4.0
	DashML       = 0.8
	DropML       = 0.05
	SplashML     = 5.0
	TopML        = 90.0
	PartML       = 30.0 // a part is a ratio; this is the round bar ounce
	FloatML      = 15.0 // half an ounce
	RinseML      = 2.5  // half a teaspoon stays in the glass
	SpritzML     = 0.12 // one press of an atomiser
	ScoopML      = 59.0 // a number 16 disher, sixteen to the US quart
)

// PinchG is the weight in grams of a pinch of something dry; common practice.
const PinchG = 0.3

// SugarBulkGPerML is the weight in g/mL of sugar as it lies in a spoon, grains
// and air: 200 g a US cup of 236.5882365 mL (USDA National Nutrient Database
// for Standard Reference, Release 26, granulated sugar). The trade rounds it
// to 0.85. It stands for every dry sugar.
const SugarBulkGPerML = 200 / 236.5882365

// SaltBulkGPerML is the same for table salt: about 6 g a teaspoon, common
// practice.
const SaltBulkGPerML = 1.2

// crystalGPerML is the density of a sugar crystal (CRC Handbook of Chemistry
// and Physics; from memory), for a profile whose own has not been worked out.
const crystalGPerML = 1.5879

// saltCrystalGPerL is the salt content, in g/L, from which an ingredient is dry.
const saltCrystalGPerL = 1400

const (
	handbook44 = "NIST Handbook 44, Appendix C: 231 cubic inches to the US gallon, 128 fluid ounces, 16.387064 mL to the cubic inch"
	liquidBook = "bar manuals; also Arnold, Liquid Intelligence, 2014 (from memory)"
	barManuals = "bar manuals and cookery books"
	practice   = "common practice, no source"
)

// kind is how a unit is converted to millilitres.
type kind int

const (
	byVolume kind = iota // has a general size
	byWeight             // through the density
	byCount              // only by a yield of the profile
)

// unitInfo holds what is known of a unit.
type unitInfo struct {
	unit      flavor.Unit
	one, many string   // as printed
	also      []string // other spellings
	kind      kind
	size      flavor.Figure // mL, for byVolume
	most      float64       // limit of one pour; more is a mistake
	grid      grid
	implied   bool // "splash of water" is one splash; "oz of gin" is no amount
}

var units = []unitInfo{
	{unit: flavor.Ounce, one: "oz", many: "oz", also: []string{"onz", "ounce", "ounces", "ozs", "fl oz", "floz", "fluid ounce", "fluid ounces", "fl ounce", "fl ounces"},
		size: flavor.Figure{Value: OunceML, Origin: flavor.OriginPublished, Source: handbook44}, most: 338, grid: grid{fine: 0.25}},
	{unit: flavor.Millilitre, one: "ml", many: "ml", also: []string{"mil", "mils", "cc", "mls", "milliliter", "milliliters", "millilitre", "millilitres"},
		size: flavor.Figure{Value: 1, Origin: flavor.OriginPublished, Source: "SI"}, most: 10000, grid: grid{2.5, 30, 5}},
	{unit: flavor.Centilitre, one: "cl", many: "cl", also: []string{"cls", "centiliter", "centiliters", "centilitre", "centilitres"},
		size: flavor.Figure{Value: CentilitreML, Origin: flavor.OriginPublished, Source: "SI"}, most: 1000, grid: grid{0.25, 3, 0.5}},
	{unit: flavor.Dash, one: "dash", many: "dashes", also: []string{"ds", "dsh", "dshs", "dashs", "dshes"}, implied: true,
		size: flavor.Figure{Value: DashML, Spread: 0.16, Origin: flavor.OriginPractice, Source: liquidBook}, most: 100, grid: grid{fine: 1}},
	{unit: flavor.Drop, one: "drop", many: "drops", also: []string{"drp", "drps", "dot", "dots"}, implied: true,
		size: flavor.Figure{Value: DropML, Spread: 0.01, Origin: flavor.OriginPractice, Source: liquidBook}, most: 400, grid: grid{fine: 1}},
	{unit: flavor.Barspoon, one: "barspoon", many: "barspoons", also: []string{"bspn", "bspns", "barspn", "barspns", "barsp", "bs", "bar spn", "bspoon", "bspoons", "bar sp", "bar spoon", "bar spoons", "barspoonful", "barspoonfuls", "bar-spoon", "bar-spoons", "bsp", "bsps", "cucharada de bar", "cucharadita de bar", "cuchara de bar", "cucchiaio da bar", "cucchiaino da bar", "cuillère de bar", "cuillère à mélange", "barschep"}, implied: true,
		size: flavor.Figure{Value: BarspoonML, Spread: 0.6, Origin: flavor.OriginPractice, Source: liquidBook}, most: 100, grid: grid{fine: 0.5}},
	{unit: flavor.Teaspoon, one: "tsp", many: "tsp", also: []string{"tsps", "teaspoon", "teaspoons", "tea spoon", "tea spoons", "teaspoonful", "teaspoonfuls", "teaspoonsful"}, implied: true,
		size: flavor.Figure{Value: TeaspoonML, Origin: flavor.OriginPublished, Source: handbook44}, most: 200, grid: grid{fine: 0.5}},
	{unit: flavor.Tablespoon, one: "tbsp", many: "tbsp", also: []string{"tbsps", "tbs", "tablespoon", "tablespoons", "table spoon", "table spoons", "tablespoonful", "tablespoonfuls", "tablespoonsful"}, implied: true,
		size: flavor.Figure{Value: TablespoonML, Origin: flavor.OriginPublished, Source: handbook44}, most: 100, grid: grid{fine: 0.5}},
	{unit: flavor.PartUnit, one: "part", many: "parts",
		size: flavor.Figure{Value: PartML, Origin: flavor.OriginPractice, Source: "a ratio; taken as the round bar ounce"}, most: 100, grid: grid{fine: 0.25}},
	{unit: flavor.Splash, one: "splash", many: "splashes", also: []string{"spl", "spls"}, implied: true,
		size: flavor.Figure{Value: SplashML, Spread: 3, Origin: flavor.OriginPractice, Source: barManuals}, most: 15, grid: grid{fine: 1}},
	{unit: flavor.Pinch, one: "pinch", many: "pinches", also: []string{"pnch"}, implied: true, kind: byWeight, most: 40, grid: grid{fine: 1}},
	{unit: flavor.Gram, one: "g", many: "g", also: []string{"gr", "grs", "gram", "grams", "gramme", "grammes", "gm", "gms"}, kind: byWeight, most: 10000, grid: grid{fine: 1}},
	{unit: flavor.Sprig, one: "sprig", many: "sprigs", also: []string{"sprg", "sprgs"}, implied: true, kind: byCount, most: 100, grid: grid{fine: 1}},
	{unit: flavor.Leaf, one: "leaf", many: "leaves", also: []string{"lvs", "leafs"}, implied: true, kind: byCount, most: 200, grid: grid{fine: 1}},
	{unit: flavor.Slice, one: "slice", many: "slices", also: []string{"slc", "slcs", "round", "rounds", "half wheel", "half wheels", "half-wheel", "half-wheels", "wheel", "wheels", "coin", "coins"}, implied: true, kind: byCount, most: 100, grid: grid{fine: 1}},
	{unit: flavor.Wedge, one: "wedge", many: "wedges", also: []string{"wdg", "wdgs"}, implied: true, kind: byCount, most: 100, grid: grid{fine: 1}},
	{unit: flavor.Piece, one: "piece", many: "pieces", also: []string{"pc", "pcs", "strip", "strips"}, implied: true, kind: byCount, most: 100, grid: grid{fine: 1}},
	{unit: flavor.Cube, one: "cube", many: "cubes", also: []string{"chunk", "chunks", "lump", "lumps"}, implied: true, kind: byCount, most: 100, grid: grid{fine: 1}},
	{unit: flavor.Top, one: "top", many: "tops", implied: true,
		size: flavor.Figure{Value: TopML, Spread: 22, Origin: flavor.OriginPractice, Source: barManuals}, most: 10, grid: grid{fine: 1}},
	{unit: flavor.Float, one: "float", many: "floats", implied: true,
		size: flavor.Figure{Value: FloatML, Spread: 4, Origin: flavor.OriginPractice, Source: practice}, most: 10, grid: grid{fine: 1}},
	{unit: flavor.Rinse, one: "rinse", many: "rinses", implied: true,
		size: flavor.Figure{Value: RinseML, Spread: 0.8, Origin: flavor.OriginPractice, Source: practice}, most: 4, grid: grid{fine: 1}},
	{unit: flavor.Spritz, one: "spritz", many: "spritzes", also: []string{"spray", "sprays", "mist", "mists", "spritzs"}, implied: true,
		size: flavor.Figure{Value: SpritzML, Spread: 0.04, Origin: flavor.OriginPractice, Source: practice}, most: 40, grid: grid{fine: 1}},
	{unit: flavor.Scoop, one: "scoop", many: "scoops", implied: true,
		size: flavor.Figure{Value: ScoopML, Spread: 10, Origin: flavor.OriginPractice, Source: practice}, most: 10, grid: grid{fine: 0.5}},
}

// tongues are the words for units in other languages: common practice.
var tongues = map[flavor.Unit][]string{
	flavor.Millilitre: {"밀리", "밀리리터", "mililitros", "millilitri", "milliliter", "mililitr", "mililitra", "mililitry", "mililitrów", "мл", "миллилитр", "миллилитра", "миллилитров", "μλ", "χιλ", "ミリリットル", "ミリ", "㎖"}, flavor.Centilitre: {"centilitros", "centilitri", "zentiliter", "centilitry", "centylitr", "centylitra", "centylitry", "centylitrów", "сл", "сантилитр", "сантилитра", "сантилитров"},
	flavor.Ounce:      {"온스", "onza", "onzas", "onsa", "onsas", "once", "onces", "oncia", "unze", "unzen", "uncja", "uncje", "uncji", "унция", "унции", "унций", "ουγγιά", "ουγγιές", "オンス"},
	flavor.PartUnit:   {"teil", "teile", "parte", "partes", "parti", "partie", "parties", "delar", "del", "dele", "deel", "delen", "pt", "pts", "część", "części", "díl", "díly", "dílu", "dílů", "часть", "части", "частей", "μέρος", "μέρη"},
	flavor.Dash:       {"대시", "대쉬", "dash bhar", "spritzer", "trait", "traits", "golpe", "golpes", "gotazo", "stänk", "stänker", "stænk", "scheutje", "scheutjes", "goccio", "spruzzo", "spruzzi", "dashs", "toque", "toques", "larme", "larmes", "stänks", "strzyk", "střik", "střiky", "střiků", "дэш", "дэша", "дэшей", "дэши", "деш", "деша", "дешей", "даш", "даша", "дашей", "ντας", "ダッシュ", "振り"},
	flavor.Drop:       {"방울", "boond", "boondein", "tropfen", "gota", "gotas", "goutte", "gouttes", "goccia", "gocce", "droppe", "droppar", "dråbe", "dråber", "druppel", "druppels", "kropla", "krople", "kropel", "kropli", "kapka", "kapky", "kapek", "капля", "капли", "капель", "σταγόνα", "σταγόνες", "ドロップ", "滴"},
	flavor.Barspoon:   {"바스푼", "barlöffel", "barskje", "barskjeer", "barske", "barskeer", "barsked", "barskedar", "barlepel", "barlepels", "cucchiaino bar", "cuchara bar", "colher de bar", "colheres de bar", "colher", "colheres", "bailarina", "bailarinas", "cuillerée", "łyżka barmańska", "łyżki barmańskie", "łyżki barmańskiej", "łyżeczka barmańska", "łyżeczki barmańskie", "łyżeczki barmańskiej", "barová lžička", "barové lžičky", "барная ложка", "барной ложки", "барные ложки", "барных ложки", "барн ложка", "б л", "бар ложка", "κουταλιά μπαρ", "バースプーン", "barlusikallinen", "barsk", "bartsk"},
	flavor.Teaspoon:   {"티스푼", "작은술", "chota chamach", "chhota chamach", "tl", "teelöffel", "cucchiaino", "cucchiaini", "cucharadita", "cucharaditas", "cdta", "cdtas", "cdita", "cditas", "tesked", "teskedar", "teske", "teskeer", "theelepel", "theelepels", "cuillère à café", "c à café", "c à c", "cuillères à café", "cac", "càc", "t", "colher de chá", "colheres de chá", "colherinha", "skefuld", "łyżeczka", "łyżeczki", "łyżeczek", "łyżeczkę", "łyżeczka do herbaty", "lžička", "lžičky", "lžiček", "lžičku", "čajová lžička", "čajové lžičky", "čl", "č l", "ч л", "чл", "чайная ложка", "чайной ложки", "чайные ложки", "чайных ложки", "чайных ложек", "κουταλάκι", "κουταλάκια", "κουταλάκι του γλυκού", "κουταλάκια του γλυκού", "κ γ", "κγ", "小さじ", "小匙", "ティースプーン", "tsk", "tskje", "teskefull", "theel", "kaffelöffel", "cc de chá", "c chá"},
	flavor.Tablespoon: {"큰술", "테이블스푼", "bada chamach", "el", "esslöffel", "cucchiaio", "cucchiai", "cucharada", "cucharadas", "cda", "cdas", "matsked", "matskedar", "spiseske", "spiseskeer", "eetlepel", "eetlepels", "c à soupe", "c à s", "cuillère à soupe", "cuillères à soupe", "cas", "càs", "colher de sopa", "colheres de sopa", "łyżka", "łyżki", "łyżek", "łyżkę", "łyżka stołowa", "łyżki stołowe", "lžíce", "lžíci", "lžic", "polévková lžíce", "polévkové lžíce", "ст л", "стл", "столовая ложка", "столовой ложки", "столовые ложки", "столовых ложки", "столовых ложек", "κουταλιά", "κουταλιές", "κουταλιά της σούπας", "κουταλιές της σούπας", "κ σ", "κσ", "大さじ", "大匙", "msk", "spsk", "matskje", "eetl", "c sopa"},
	flavor.Gram:       {"그램", "gramm", "гр", "г", "грамм", "грамма", "граммов", "gramy", "gramów", "γρ", "γραμμάρια", "グラム"},
	flavor.Pinch:      {"꼬집", "chutki", "prise", "prisen", "pincée", "pincées", "pizca", "pizcas", "pizzico", "nypa", "nypor", "knivspids", "snuf", "snufje", "pitada", "szczypta", "szczypty", "szczyptę", "špetka", "špetky", "špetku", "щепотка", "щепотки", "щепотку", "щепоть", "πρέζα", "πρέζες", "ひとつまみ", "つまみ", "少々", "klype", "klyper", "knivsudd"},
	flavor.Leaf:       {"잎", "patte", "patta", "patti", "blatt", "blätter", "feuille", "feuilles", "hoja", "hojas", "foglia", "foglie", "folha", "folhas", "blad", "blade", "blader", "blaadjes", "listek", "listki", "listków", "liść", "liście", "liści", "lístek", "lístky", "lístků", "listů", "лист", "листа", "листьев", "листик", "листика", "листиков", "листочек", "листочка", "листочков", "φύλλο", "φύλλα", "枚"},
	flavor.Sprig:      {"zweig", "zweige", "brin", "brins", "branche", "branches", "rama", "ramas", "ramita", "ramitas", "rametto", "rametti", "kvist", "kvistar", "kviste", "takje", "takjes", "raminho", "raminhos", "ciuffo", "ciuffi", "gałązka", "gałązki", "gałązek", "gałązkę", "snítka", "snítky", "větvička", "větvičky", "веточка", "веточки", "веточек", "веточку", "ветка", "ветки", "κλωναράκι", "κλωνάρι", "κλωναράκια"},
	flavor.Slice:      {"조각", "슬라이스", "scheibe", "scheiben", "tranche", "tranches", "rondelle", "rondelles", "rodaja", "rodajas", "rebanada", "rebanadas", "fetta", "fette", "fettina", "fettine", "skiva", "skivor", "skive", "skiver", "plakje", "plakjes", "schijf", "schijfjes", "rodela", "rodelas", "fatia", "fatias", "schijfje", "plakjes", "schijven", "plaster", "plastra", "plastry", "plastrów", "plasterek", "plasterka", "plasterki", "plasterków", "plátek", "plátky", "plátků", "kolečko", "kolečka", "ломтик", "ломтика", "ломтиков", "кружок", "кружка", "слайс", "слайса", "слайсов", "φέτα", "φέτες", "ροδέλα", "ροδέλες", "スライス"},
	flavor.Wedge:      {"spalte", "spalten", "quartier", "quartiers", "gajo", "gajos", "spicchio", "spicchi", "klyfta", "klyftor", "båd", "både", "partje", "partjes", "cuña", "cuñas", "cząstka", "cząstki", "cząstek", "ćwiartka", "ćwiartki", "ćwiartek", "долька", "дольки", "долек", "σφήνα", "σφήνες", "ウェッジ"},
	flavor.Piece:      {"개", "tukda", "tukde", "stück", "stk", "pezzo", "pezzi", "trozo", "trozos", "pieza", "piezas", "pedaço", "pedaços", "stuk", "stuks", "szt", "sztuka", "sztuki", "sztuk", "kus", "kusy", "kusů", "ks", "шт", "штука", "штуки", "штук", "τεμάχιο", "τεμάχια", "τεμ", "個"},
	flavor.Splash:     {"schuss", "chorrito", "chorro", "scheut", "skvätt", "skvæt", "spruzzata", "spruzzate", "chorritos", "chorros", "filet", "lágrima", "lacrima", "scheuten", "chlust", "chlusty", "odrobina", "odrobinę", "сплэш", "сплеш", "スプラッシュ"},
	flavor.Cube:       {"würfel", "kostka", "kostki", "kostek", "кубик", "кубика", "кубиков"},
	flavor.Scoop:      {"gałka", "шарик", "шарика", "kopeček", "kugel", "boule", "pallina", "bola"},
}

// unitWords maps every spelling, in lower case without dots, to its unit.
var unitWords = func() *vocabulary.Table[flavor.Unit] {
	m := make(map[string]flavor.Unit)
	for u, words := range tongues {
		for _, w := range words {
			m[w] = u
		}
	}
	for i := range units {
		for _, w := range append([]string{units[i].one, units[i].many}, units[i].also...) {
			m[w] = units[i].unit
		}
	}
	return vocabulary.TableOf(m)
}()

// longUnits are the words that begin a unit of more than one word.
var longUnits = func() *vocabulary.Set {
	var first []string
	for w := range unitWords.All() {
		if word, _, more := strings.Cut(w, " "); more {
			first = append(first, word)
		}
	}
	return vocabulary.SetOf(first...)
}()

// BeginsLongUnit reports whether a word, in lower case without a dot, begins a unit of more
// than one word, such as "fl oz".
func BeginsLongUnit(word string) bool { return longUnits.Has(word) }

func infoOf(u flavor.Unit) (*unitInfo, bool) {
	for i := range units {
		if units[i].unit == u {
			return &units[i], true
		}
	}
	return nil, false
}

// Units lists every unit, volumes first.
func Units() []flavor.Unit {
	out := make([]flavor.Unit, len(units))
	for i := range units {
		out[i] = units[i].unit
	}
	return out
}

// ParseUnit returns the unit that a word or two name, ignoring case, plural, dots and the
// space in "fl oz". ok is false for an unknown or empty word.
func ParseUnit(word string) (flavor.Unit, bool) {
	if u, ok := unitWords.Find(word); ok {
		return u, true
	}
	if plain(word) {
		return "", false
	}
	w := strings.Join(strings.Fields(strings.ReplaceAll(strings.ToLower(word), ".", " ")), " ")
	return unitWords.Find(w)
}

// plain reports whether a word is in lower-case English letters with single spaces. Such
// a word needs no folding, which makes reading most drafts faster.
func plain(word string) bool {
	for i := range len(word) {
		if c := word[i]; (c < 'a' || c > 'z') && (c != ' ' || i == 0 || i+1 == len(word) || word[i-1] == ' ') {
			return false
		}
	}
	return true
}

// Definition returns the general size of a unit in mL, with its spread and
// origin. It is false for a unit that has none: grams, a pinch (see [PinchG]),
// and whatever is counted.
func Definition(u flavor.Unit) (flavor.Figure, bool) {
	info, ok := infoOf(u)
	if !ok || info.kind != byVolume {
		return flavor.Figure{}, false
	}
	return info.size, true
}

// MLPerUnit returns how many mL of p one unit is: the profile's own yield, else
// grams over density, else the general size. Dry sugar and salt by volume count
// their grains only: size × bulk density / density. With a nil profile only the
// general sizes are known. It is false, never zero, where p does not come in u.
func MLPerUnit(u flavor.Unit, p *flavor.Profile) (float64, bool) {
	if p != nil {
		if y, ok := p.Yield(u); ok && positive(y.Amount.Value) {
			return y.Amount.Value, true
		}
	}
	info, ok := infoOf(u)
	switch {
	case !ok || info.kind == byCount:
		return 0, false
	case info.kind == byWeight && (p == nil || !positive(p.DensityGPerML)):
		return 0, false
	case u == flavor.Gram:
		return 1 / p.DensityGPerML, true
	case u == flavor.Pinch:
		return PinchG / p.DensityGPerML, true
	case p == nil:
		return info.size.Value, true
	case u == flavor.Top && (p.Class.Solid() || bulk(p) > 0):
		return 0, false
	case bulk(p) > 0:
		return info.size.Value * bulk(p) / grainDensity(p), true
	case p.Class.Kin() == flavor.KinHerb || p.Class.Kin() == flavor.KinSpice:
		return 0, false // a spoon of leaves is mostly air
	}
	return info.size.Value, true
}

// Dry reports whether p is grains, as sugar and salt are, and no liquid.
func Dry(p *flavor.Profile) bool { return bulk(p) > 0 }

// bulk returns the bulk density in g/mL of a dry ingredient, zero for others.
func bulk(p *flavor.Profile) float64 {
	switch {
	case p.Class.Measured() == flavor.ByGram:
		return SugarBulkGPerML
	case p.Salt.Value > saltCrystalGPerL:
		return SaltBulkGPerML
	}
	return 0
}

func grainDensity(p *flavor.Profile) float64 {
	if positive(p.DensityGPerML) {
		return p.DensityGPerML
	}
	return crystalGPerML
}

// UnitsFor lists the units that p can be poured in, in the order of [Units]. A
// pinch of a liquid is read but not listed.
func UnitsFor(p *flavor.Profile) []flavor.Unit {
	var out []flavor.Unit
	for _, u := range Units() {
		if u == flavor.Pinch && p != nil && !p.Class.Solid() && bulk(p) == 0 {
			continue
		}
		if _, ok := MLPerUnit(u, p); ok {
			out = append(out, u)
		}
	}
	return out
}

// ToML returns amount units of p in mL, see [MLPerUnit]. It fails with a
// *[flavor.DataFault] if the amount is not a finite number above zero, or if p does
// not come in that unit; the fault then suggests the units it does come in.
func ToML(amount float64, u flavor.Unit, p *flavor.Profile) (float64, error) {
	ml, fault := Millilitres(amount, u, p)
	if fault != nil {
		return 0, fault
	}
	return ml, nil
}

// Millilitres is like [ToML] but returns a *[flavor.DataFault].
func Millilitres(amount float64, u flavor.Unit, p *flavor.Profile) (float64, *flavor.DataFault) {
	if !positive(amount) {
		return 0, Invalid("amount", number(amount), "%v is not an amount; write a number above zero", amount)
	}
	per, ok := MLPerUnit(u, p)
	if !ok {
		return 0, wrongUnit(u, p)
	}
	ml := amount * per
	if !positive(ml) {
		return 0, Invalid("amount", number(amount), "%v %s is more or less than can be poured", amount, u)
	}
	return ml, nil
}

// wrongUnit returns the fault of an ingredient that is not poured in u, with the units in
// which it is.
func wrongUnit(u flavor.Unit, p *flavor.Profile) *flavor.DataFault {
	name := "this ingredient"
	if p != nil {
		name = p.Name
	}
	suggest := unitNames(UnitsFor(p))
	f := Invalid("unit", string(u), "%s is not poured by the %q; use %s", name, string(u), flavor.JoinOr(suggest))
	f.Suggest = suggest
	return f
}

func unitNames(us []flavor.Unit) []string {
	out := make([]string, len(us))
	for i, u := range us {
		out[i] = string(u)
	}
	return out
}

// positive reports whether v is a finite number above zero.
func positive(v float64) bool { return v > 0 && !math.IsInf(v, 1) }

// System is a system of units of a spec; its text is the unit.
type System string

// Imperial specs are poured in fluid ounces, metric ones in millilitres.
const (
	Imperial System = "oz"
	Metric   System = "ml"
)

// Unit returns the unit in which the system writes a jigger pour.
func (s System) Unit() flavor.Unit { return flavor.Unit(s) }

// SystemOf returns the system of most jigger pours of s; ml and cl are metric. A tie goes
// to the first such pour. Without any, or for nil, it is [Imperial].
func SystemOf(s *flavor.Spec) System {
	if s == nil {
		return Imperial
	}
	balance, first := 0, Imperial
	for _, p := range slices.Backward(s.Pours) {
		switch p.Unit {
		case flavor.Ounce:
			balance, first = balance-1, Imperial
		case flavor.Millilitre, flavor.Centilitre:
			balance, first = balance+1, Metric
		}
	}
	switch {
	case balance > 0:
		return Metric
	case balance < 0:
		return Imperial
	}
	return first
}

// MostOf returns the largest amount of a unit in one pour; a larger one is a mistake. An
// empty unit is a count.
func MostOf(u flavor.Unit) float64 {
	if info, ok := infoOf(u); ok {
		return info.most
	}
	return maxCount
}
