package serving

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/token"
)

func TestParseMethodAndService(t *testing.T) {
	for w, want := range map[string]flavor.Method{"shake": flavor.Shake, "Shaken hard": flavor.Shake, "dry-shake": flavor.DryShake,
		"STIRRED": flavor.Stir, "built": flavor.Build, "swizzled": flavor.Swizzle, "throw": flavor.Throw, "blend": flavor.Blend} {
		got, ok := ParseMethod(w)
		assert.True(t, ok && got == want, w)
	}
	for w, want := range map[string]flavor.Service{"up": flavor.Up, "on the rocks": flavor.Rocks, "over ice": flavor.Rocks,
		"crushed ice": flavor.Crushed, "Highball": flavor.Long} {
		got, ok := ParseService(w)
		assert.True(t, ok && got == want, w)
	}
	for _, m := range flavor.Methods() {
		got, ok := ParseMethod(string(m))
		assert.True(t, ok && got == m, m)
	}
	for _, s := range flavor.Services() {
		got, ok := ParseService(string(s))
		assert.True(t, ok && got == s, s)
	}
	for _, w := range []string{"", "sheke", "up", "shake stir", "hard"} {
		_, ok := ParseMethod(w)
		assert.False(t, ok, w)
	}
	for _, w := range []string{"", "shake", "up rocks", "glass"} {
		_, ok := ParseService(w)
		assert.False(t, ok, w)
	}
}

// Six tongues say how a drink is made, and in what it is served; common practice, no source.
func TestMethodsInOtherTongues(t *testing.T) {
	for w, want := range map[string]flavor.Method{
		"directo en vaso": flavor.Build, "direttamente nel bicchiere": flavor.Build, "directement dans le verre": flavor.Build, "im Glas bauen": flavor.Build, "montado no copo": flavor.Build, "opbouwen in het glas": flavor.Build,
		"licuar": flavor.Blend, "frullare": flavor.Blend, "au mixeur": flavor.Blend,
		"agitado en seco": flavor.DryShake, "shaker à sec": flavor.DryShake, "trocken schütteln": flavor.DryShake,
		"mexer": flavor.Stir, "im Rührglas": flavor.Stir, "geroerd": flavor.Stir, "na coqueteleira": flavor.Shake, "secouer": flavor.Shake,
	} {
		got, ok := ParseMethod(w)
		assert.True(t, ok && got == want, w)
	}
	for w, want := range map[string]flavor.Service{"gelo moído": flavor.Crushed, "pedra grande de gelo": flavor.Rocks, "copo alto": flavor.Long, "bicchiere basso": flavor.Rocks, "taza": flavor.Hot} {
		got, ok := ParseService(w)
		assert.True(t, ok && got == want, w)
	}
	for _, w := range []string{"mixer", "canela", "taste", "seven"} { // one letter from words of other tongues
		_, ok := Slip(w)
		assert.False(t, ok, w)
	}
}

func TestNearestMethods(t *testing.T) {
	assert.Equal(t, []string{"shake"}, NearestMethods("sheke"))
	assert.Equal(t, []string{"stir"}, NearestMethods("Stirrd"))
	assert.Equal(t, []string{"rocks"}, NearestMethods("roks"))
	assert.Empty(t, NearestMethods("pamplemousse"))
}

// A drink is heated as a whole, or frozen by a machine; a rocks glass that something is neat in
// is no ice: common practice, no source.
func TestWhatHeatsAndWhatFreezes(t *testing.T) {
	for text, want := range map[string]flavor.Service{
		"heat or steam, mug": flavor.Hot, "simmer on the stove": flavor.Hot, "warm it, toddy glass": flavor.Hot, "steam wand": flavor.Hot,
		"neat in chilled rocks": flavor.Neat, "up, into a cold rocks": flavor.Up, "on the rocks": flavor.Rocks,
	} {
		s := Of(text)
		assert.Nil(t, s.Conflict, text)
		assert.Equal(t, want, s.Service, text)
	}
	for _, text := range []string{"do not heat", "don't boil", "never simmer"} {
		assert.Empty(t, Of(text).Service, text)
	}
	s := Of("warm the glass")
	assert.True(t, s.Weak && s.Service == flavor.Hot, "a warm glass suggests a hot drink, and does not say so")
	for _, text := range []string{"slushie machine", "through the slush machine", "granita machine"} {
		s := Of(text)
		assert.Equal(t, flavor.Blend, s.Method, text)
		assert.NotEmpty(t, s.Notes, text)
	}
}

// A drink is served on the one cube that it is strained over, and on what ice comes in, in so many words;
// a cube of sugar is no ice. Common practice, no source.
func TestPiecesOfIce(t *testing.T) {
	for text, want := range map[string]flavor.Service{
		"two lumps of ice": flavor.Rocks, "with a chunk of ice": flavor.Rocks, "shake with a lump of ice, strain, up": flavor.Up,
		"stir with two lumps of ice, strain into a coupe": flavor.Up, "a cube of sugar": "", "a lump": "",
	} {
		s := Of(text)
		assert.Nil(t, s.Conflict, text)
		assert.Equal(t, want, s.Service, text)
	}
	for text, want := range map[string]flavor.Service{"strain over a cube": flavor.Rocks, "pour upon one cube": flavor.Rocks, "stir on a cube": flavor.Rocks, "muddle with a cube": "", "over a cube of sugar": ""} {
		s := Read(WithIceSizes(token.Lex(nil, text, 0, len(text))))
		assert.Equal(t, want, s.Service, text)
	}
}
