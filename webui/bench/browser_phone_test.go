package bench_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/webui/webuitest"
)

// On a phone a draft is read, mended and saved in two taps beside the typing, both in the strip,
// and each answer stands on the screen.
func TestDraftToSavedOnAPhone(t *testing.T) {
	h := webuitest.NewHouse()
	p := webuitest.NewPhone(t)
	p.Open(webuitest.Serve(t, h), "/bench")
	p.Typed("Rope Locker\n2 oz gin\n1/4 oz lemon juice\n1/2 oz simple syrup\nshake, up")
	p.Until(`document.querySelector('.strip p')?.textContent.includes('our ¾\u00a0oz lemon juice instead of ¼')`) // what the button beside it does
	p.Until(`(p => p.scrollHeight <= p.clientHeight + 1 && p.scrollWidth <= p.clientWidth + 1)(document.querySelector('.strip p'))`)
	p.Within(0, ".strip")
	// In text of twice the size the button stands below, and no word of either is broken.
	p.Until(`(root => (root.style.fontSize = '200%', document.querySelector('.strip p').clientWidth >= 180 && document.querySelector('.strip button').clientHeight < 100))(document.documentElement)`)
	p.Until(`(root => (root.style.fontSize = '', true))(document.documentElement)`)
	p.Tap(".strip button")
	p.Until(`document.querySelector('.strip p').textContent.includes('Balanced')`)
	p.Within(1, ".strip .points")
	p.Within(1, ".strip button[name=save]")
	p.Tap(".strip button[name=save]")
	p.Until(`document.getElementById('asked')?.textContent.includes('Saved')`)
	p.Within(2, "#asked")
	assert.Contains(t, webuitest.KeptSpec(t, h, "rope-locker").Item.Name, "Rope Locker")
	p.Quiet()
}

// What ran out is covered in one tap, and the first cover with what a guest
// notices of it stands on the screen.
func TestCoversOnAPhone(t *testing.T) {
	p := webuitest.NewPhone(t)
	p.Open(webuitest.Serve(t, webuitest.NewHouse()), "/bench?"+webuitest.Fields("text", webuitest.NutDraft).Encode())
	p.Until(webuitest.Shown + `'Balanced'`)
	p.Tap("#out-orgeat")
	p.Until(`!!document.getElementById('covers')`)
	p.Within(1, "#covers-title")
	p.Within(1, "#covers .notice")
	p.Within(1, "#covers .build")
	p.Fits()
	p.Quiet()

	// What a guest must not have is covered from the strip.
	guest := webuitest.NewPhone(t)
	guest.Open(webuitest.Serve(t, webuitest.NewHouse()), "/bench?"+webuitest.Fields("text", webuitest.NutDraft, "avoid", "tree nuts").Encode())
	guest.Within(0, ".strip button[name=missing]")
	guest.Tap(".strip button[name=missing]")
	guest.Until(`!!document.getElementById('covers')`)
	guest.Within(1, "#covers .notice")
	guest.Until(`!document.querySelector('.strip button[name=missing]')`)
}

// The menu to start from comes after the answer.
func TestTheMenuIsBelowTheAnswer(t *testing.T) {
	p := webuitest.NewPhone(t)
	p.Open(webuitest.Serve(t, webuitest.NewHouse()), "/bench")
	p.Until(`document.querySelector('.bench .menu').getBoundingClientRect().top >= document.getElementById('result').getBoundingClientRect().bottom`)
	p.Tap("#text-hint a")
	p.Within(1, ".menu button")
	p.Tap(".menu button")
	p.Until(webuitest.Shown + `'Balanced'`)
	p.Within(2, ".strip .points")
	p.Fits()
	p.Quiet()
}

// The family's strips are drawn on a wide screen as on a narrow one, and on paper.
func TestTheStripsAreDrawn(t *testing.T) {
	for _, width := range []int64{360, 1280} {
		b := webuitest.NewBrowser(t, width)
		b.Open(webuitest.Serve(t, webuitest.NewHouse()), "/bench?"+webuitest.Fields("text", webuitest.GoodDraft).Encode())
		const drawn = `(() => {
			const rows = [...document.querySelectorAll('#result .strips > g')], on = rows[0]?.ownerSVGElement.getBoundingClientRect();
			return rows.length > 0 && rows.every((g) => { const r = g.getBoundingClientRect(); return r.width > 0 && r.top >= on.top - 1 && r.bottom <= on.bottom + 1; });
		})()`
		b.Until(drawn)
		b.Media("print", "light")
		b.Until(drawn)
		b.Quiet()
	}
}

// A line that is refused, and one that is read as something else, are mended at one tap
// each, and the answer stands on the screen.
func TestWrongLinesAreMendedOnAPhone(t *testing.T) {
	p := webuitest.NewPhone(t)
	p.Open(webuitest.Serve(t, webuitest.NewHouse()), "/bench")
	p.Typed("2 oz gin\n3/4 oz lemmon jooce\n1/2 oz simple syrup\nshake, up")
	p.Until(`document.querySelector('.strip p')?.textContent.includes('Not scored yet')`)
	p.Until(`document.querySelector('.strip button')?.value.endsWith('shake, up')`) // the whole draft has been answered
	p.Within(0, ".strip button")
	p.Tap(".strip button")
	p.Until(`document.querySelector('.strip p').textContent.includes('Balanced')`)
	p.Within(1, ".strip .points")
	p.Until(`document.querySelector('#read q').textContent === '2 oz gin'`)
	p.Tap(".strip button[name=save]")
	p.Until(`document.activeElement.id === 'called'`) // it has no name yet
	p.Fits()
	p.Quiet()
}
