package draft

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// What stands behind an amount without a sign is parted from it: what fills the glass, how
// the drink is served, what is laid on it. Common practice, no source.
func TestBehindTheLastAmount(t *testing.T) {
	for _, c := range []struct{ text, pours, garnish, glass string }{
		{"gin 50\nspiced rum 1.5 cola lime wedge", "gin, spiced rum, cola", "lime wedge", ""},
		{"gin 50\nlemon 20 coupe", "gin, lemon", "", "coupe"},
		{"gin 50\n20 vodka soda lime wedge highball", "gin, vodka, soda", "lime wedge", "highball glass"},
		{"gin 50\n20 grapefruit soda", "gin, grapefruit soda", "", ""},
		{"gin 50\nsoda top crushed", "gin, soda", "", ""},
		{"gin 50, lime 20, soda top up, highball", "gin, lime, soda", "", "highball glass"},
		{"gin 50, lime 20, tonic to top up highball", "gin, lime, tonic", "", "highball glass"},
		{"gin 50, lime 20, cola top-up", "gin, lime, cola", "", ""},
		{"gin 50\nlemon twist coupe", "gin", "lemon twist", "coupe"},
		{"gin 50\nsimple 15 egg white", "gin, simple, egg white", "", ""},
		{"gin 50\nstrain into a 5 oz coupe", "gin", "", "coupe"},
		{"gin 50\nthen top it with tonic", "gin, tonic", "", ""},
		{"B SOUR  RYE 2  LEM .75  SIMP .75  NO EGG", "RYE, LEM, SIMP", "", ""},
	} {
		d := Parse(c.text)
		assert.Empty(t, d.Faults, c.text)
		var names []string
		for _, l := range d.Lines {
			names = append(names, l.Name)
		}
		assert.Equal(t, c.pours, strings.Join(names, ", "), c.text)
		assert.Equal(t, c.garnish, d.Garnish, c.text)
		assert.Equal(t, c.glass, d.Glass, c.text)
	}
}

// "Up" behind what tops the drink is no service.
func TestTopUpIsNoService(t *testing.T) {
	for _, text := range []string{"gin 50, lime 20, soda top up", "gin 50, lime 20, soda to top up", "gin 50, lime 20, top up with soda", "gin 50, lime 20, soda top-up"} {
		assert.Empty(t, Parse(text).Service, text)
	}
	assert.NotEmpty(t, Parse("gin 50, lime 20, champagne top, up").Service)
}
