package webui_test

import (
	"testing"

	"counterpour/webui/webuitest"
)

// A guest who is ticked is not lost over pages that know of none: each of them says so, and
// leads back to what this guest may have. Who asks for everyone has everyone.
func TestAGuestIsNotLostOnTheWay(t *testing.T) {
	address := webuitest.Serve(t, webuitest.NewHouse())
	p := webuitest.NewPhone(t)
	p.Open(address, "/tonight?avoid=tree+nuts")
	for _, page := range []string{"/stock", "/stock/house", "/map", "/training", "/tools", "/costs", "/specs/mainbrace/batch"} {
		p.Open(address, page)
		p.Until(`document.querySelector('.for-guest')?.textContent.includes('without tree nuts')`)
		p.Until(`document.querySelector('.top .places a').getAttribute('href').endsWith('/tonight?avoid=tree+nuts')`)
		p.Fits()
	}
	p.Until(`document.querySelector('.mark a').getAttribute('href') === '/?avoid=tree+nuts'`)
	p.Until(`document.querySelector('.go a').getAttribute('href') === '/specs/mainbrace?avoid=tree+nuts'`) // back to the spec, for this guest
	p.Tap(".for-guest a")
	p.Until(`location.href.endsWith('/tonight?avoid=tree+nuts')`)
	p.Until(`document.readyState === 'complete' && document.querySelector('.for-guest a')?.getAttribute('href') === '/tonight'`)

	p.Tap(".for-guest a") // for everyone
	p.Until(`location.search === '' && !document.querySelector('.for-guest')`)
	p.Open(address, "/stock")
	p.Until(`document.querySelector('.top .places a').getAttribute('href').endsWith('/tonight') && !document.querySelector('.for-guest')`)
	p.Quiet()
}

// What is ticked on the bench counts for the pages that are opened from it.
func TestTheTicksOfTheBenchGoAlong(t *testing.T) {
	address := webuitest.Serve(t, webuitest.NewHouse())
	p := webuitest.NewPhone(t)
	p.Open(address, "/bench?text=2+oz+gin%0A3/4+oz+lemon+juice")
	p.Tap(".guest > summary")
	p.Tap("input[value=sesame]")
	p.Until(`document.querySelector('#for-guest')?.textContent.includes('without sesame')`)
	p.Until(`document.querySelector(".result > .ways a[href^='/bench/share']").search.includes('avoid=sesame')`)
	p.Until(`document.querySelector('.top .places a').getAttribute('href') === '/tonight?avoid=sesame'`)
	p.Until(`document.querySelector('.strip .points').getAttribute('href') === '#verdict'`) // a place on this page stays one
	p.Open(address, "/stock")
	p.Until(`document.querySelector('.for-guest')?.textContent.includes('without sesame')`)
	p.Quiet()
}
