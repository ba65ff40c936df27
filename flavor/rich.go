package flavor

// The fat, in g/L, that tells cream from milk, and an egg with its yolk from its white.
// Milk has 33, single cream 189, a white 2, a whole egg 100 and a yolk 276 (USDA SR 26,
// Ciqual; the catalogue names the foods).
const (
	leastCreamFat = 150.0
	leastYolkFat  = 50.0
)

// Cream reports whether p is cream or butter, and not milk.
func (p *Profile) Cream() bool { return p.Class == ClassDairy && p.Fat.Value >= leastCreamFat }

// Yolky reports whether p is an egg with its yolk, or the yolk alone.
func (p *Profile) Yolky() bool { return p.Class == ClassEgg && p.Fat.Value >= leastYolkFat }

// Whitens reports whether p is the white of an egg, or foams as one does.
func (p *Profile) Whitens() bool { return p.Class.Kin() == KinFoam && !p.Yolky() }
