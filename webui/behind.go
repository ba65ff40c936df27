package webui

import (
	"counterpour/webui/behind"
	"counterpour/webui/draw"
)

// What the pages ask of who runs them, as [behind] declares it.
type (
	Visit        = behind.Visit
	Bar          = behind.Bar
	House        = behind.House
	HouseSpec    = behind.HouseSpec
	SpecQuery    = behind.SpecQuery
	CoverRequest = behind.CoverRequest
	Caution      = behind.Caution
	Trainer      = behind.Trainer
	RoundWish    = behind.RoundWish
	Range        = draw.Range
)
