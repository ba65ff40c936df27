package reading_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor/measure/draft/reading"
)

// What leads up to a list names what the list pours, or what it does not, and is noted: common practice, no
// source.
func TestWhatLeadsUpToAList(t *testing.T) {
	const want = "50 london-dry-gin, 25 lemon-juice, 15 simple-syrup"
	for _, head := range []string{
		"changed my mind on the Lockkeeper - swap the lime for lemon: ", "lol no the mint goes on top not in it. so: ", "which spec for the gin one, boss? ", "Q: what did you have in the gin one last night?? A: ",
		"the lemon one as we pour it: ", "can u make me 2 gin lemon things: per drink ", "For each glass you'll want ", "no orgeat in it today guys, so: ", "remember what we said about the lemon: ",
	} {
		text := head + "50 ml gin, 25 ml lemon, 15 ml simple. shake, coupe"
		assert.Equal(t, want, listed(t, text), text)
		s, err := reading.Read(text, wholeCatalogue(t))
		require.NoError(t, err, text)
		kept := strings.ToLower(strings.Join(append(append(s.Notes, s.Steps...), s.Name), "; "))
		for w := range strings.FieldsSeq(strings.ToLower(head)) {
			if w = strings.Trim(w, ".,:?-"); len(w) > 3 {
				assert.Contains(t, kept, w, text)
			}
		}
	}
	for _, head := range []string{
		"remember the umeboshi goes in too: ", "remember the bitters go in as well: ", "so we add the usual and a bit of egg white: ", "you want orgeat in it: ", "the orgeat goes in last: ", "the umeboshi goes in last: ",
		"this is what the guest had before the rum one: ", "swap the simple for umeboshi: ", "we put the rest of the orgeat in: ", "please double the syrup for me: ", "half the sugar today: ",
	} {
		_, err := reading.Read(head+"50 ml gin, 25 ml lemon, 15 ml simple. shake, coupe", wholeCatalogue(t))
		assert.Error(t, err, head)
	}
}

// Talk around a proven list hides no pour whose amount is lost: it is asked about, or told in a note or in
// the name of the drink.
func TestALostAmountIsNeverSilent(t *testing.T) {
	names := []string{"gin", "lemon", "simple", "dry vermouth", "maraschino", "pineapple juice", "orgeat", "monastery-style bitter", "umeboshi brine"}
	heads := []string{"", "so the boss wants it like this: ", "FRONT: Lock and Key // BACK: ", "For each glass you'll want ", "what we poured last night: ", "sheet 3, drink 6: 'Night Watch' - ", "[photo of the board] NIGHT WATCH / "}
	tails := []string{"shake, up", "shook it, served up", "shake, up. guests love it", "shake, up. label, date"}
	rapid.Check(t, func(r *rapid.T) {
		lost := rapid.SampledFrom(names).Draw(r, "lost")
		at := rapid.IntRange(0, 3).Draw(r, "at")
		sign := rapid.SampledFrom([]string{", ", " / ", "; ", "\n"}).Draw(r, "sign")
		list := []string{"50 ml gin", "25 ml lemon", "15 ml honey syrup"}
		list = append(list[:at:at], append([]string{lost}, list[at:]...)...)
		text := rapid.SampledFrom(heads).Draw(r, "head") + strings.Join(list, sign) + sign + rapid.SampledFrom(tails).Draw(r, "tail")
		s, err := reading.Read(text, wholeCatalogue(t))
		if err != nil {
			return
		}
		told := strings.Join(append(append(append([]string{}, s.Notes...), s.Steps...), s.Name, s.Garnish), "; ")
		for i := range s.Pours {
			told += "; " + s.Pours[i].Match.Asked
		}
		assert.Contains(t, strings.ToLower(told), lost, "%q is read as %v", text, s.Pours)
	})
}

// The number of an order is no amount, and neither is the hour of a message: common practice, no source.
func TestOrdersAndChats(t *testing.T) {
	const want = "50 london-dry-gin, 25 lemon-juice, 15 simple-syrup"
	for _, text := range []string{
		"#217 TOM COLLINS | GIN 50 LEMON 25 SIMPLE 15 | SHAKE | UP", "#31 Lockkeeper: 50 gin, 25 lemon, 15 simple. shake, up", "#4 50 gin, 25 lemon, 15 simple. shake, up",
		"[4:02 PM] K: what's in the gin one\n[4:03 PM] Jo: 50 gin 25 lemon 15 simple\n[4:03 PM] Jo: shake, up\n[4:05 PM] K: thanks!",
		"12/11, 16:02 - Ana Li: spec for the sour?\n12/11, 16:03 - Jo: 50 gin, 25 lemon, 15 simple\n12/11, 16:04 - Jo: shake, up",
		"[22:41] Mo: house sour?\n[22:42] Bea: 50 gin 25 lemon 20 simple. no wait simple 15\n[22:42] Mo: ta",
	} {
		assert.Equal(t, want, listed(t, text), text)
	}
	for _, text := range []string{"50 gin 25 lemon 15 simple\nBea: and orgeat", "[22:42] Bea: 50 gin 25 lemon 15 simple\n[22:43] Bea: and orgeat", "Jo: 50 gin, 25 lemon\nBea: plus some orgeat"} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.ErrorContains(t, err, "orgeat", text)
	}
}
