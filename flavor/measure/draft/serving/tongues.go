package serving

import (
	"strings"

	"counterpour/flavor"
)

// The words of other tongues for how a drink is made and served: common practice. A slip
// of the pen is none of them, since too many English words are one letter away.

// foreignMethods are the words for each method; parted by commas.
var foreignMethods = map[flavor.Method]string{
	flavor.Shake: `coctelera, en coctelera, batir en coctelera, agitar y colar, frapper, frappé, frappée, frappez, secouer, secouez, coqueteleira, na coqueteleira, bater, bater com gelo, bater na coqueteleira,
		geschud, ryst, rystes, ryste, skakes, kräftig schütteln, kräftig shaken`,
	flavor.DryShake: `agitar en seco, agitado en seco, batir en seco, shaker à sec, shake à sec, shakerare a secco, shakerato a secco, trocken shaken, trocken schütteln, droog schudden,
		dry shake poi shake, dry shake dann shake, dry shake puis shake`,
	flavor.Stir: `mexer, mexido, mexer com gelo, nel mixing glass, im rührglas, rührglas, kaltrühren, kalt rühren, geroerd, röres, røres, omröres, refrescar, en vaso mezclador, mescolato`,
	flavor.Build: `directo, directo en vaso, directo en el vaso, directo en copa, construir, construir en vaso, construido, direto, direto no copo, montado no copo, montar no copo,
		costruire, costruito, costruire nel bicchiere, direttamente nel bicchiere, direttamente nel calice, directement dans le verre, directement au verre, direct au verre, construire, construire au verre,
		bauen, im glas bauen, direkt im glas, im glas gebaut, bouwen, bouwen in het glas, opbouwen, opbouwen in het glas, direct in het glas, bygg, bygges, byg, byg i glas, bygg i glaset, byggs`,
	flavor.Blend: `licuar, licuado, licuadora, en licuadora, batir en licuadora, frullare, frullato, nel frullatore, frullatore, au blender, au mixeur, mixé, im mixer, pürieren,
		liquidificador, bater no liquidificador, blenden`,
}

// foreignSteps are worth keeping as a step, and say nothing of the method.
const foreignSteps = `machacar, majar, pestare, piler, muddeln, stößeln, macerar, kneuzen, colar, doble colado, colado doble, colar doble, filtrare, doppio filtro, double filtrage, double filtrer, filtrer,
	abseihen, doppelt abseihen, coar, coar duas vezes, zeven, dubbel zeven, dubbelzeven, sila, dubbelsila`

// foreignIce are the words for ice, by the service that they say, if any.
var foreignIce = map[flavor.Service]string{
	"": `mucho hielo, con mucho hielo, sin hielo, cubo de hielo, cubos de hielo, hielo en cubos, hielos, senza ghiaccio, molto ghiaccio, ghiaccio in cubi, cubi di ghiaccio, glace, avec glace, sans glace,
		glaçons neufs, mit eis, ohne eis, viel eis, com gelo, sem gelo, muito gelo, pedras de gelo, zonder ijs, veel ijs, med is, uden is, utan is, uten is, sobre gelo`,
	flavor.Rocks: `cubo grande de hielo, cubo grande di ghiaccio, sur un gros glaçon, großen eiswürfel, pedra grande de gelo, pedra de gelo, cubo de gelo grande, groot ijsblok, grote ijsblok, grote ijsblokjes`,
	flavor.Crushed: `glace pilée, ghiaccio tritato, hielo picado, zerstoßenes eis, hielo pilé, hielo frappé, hielo triturado, hielo roto, ghiaccio pilé, crushed eis, gestoßenes eis, crushed ijs, gemalen ijs, glace concassée, gelo picado,
		gelo moído, gelo triturado, glace en neige, ghiaccio crushed, hielo crushed, eis crushed, hielo granizado`,
}

// foreignWith are the words of other tongues before ice: "avec glace pilée".
var foreignWith = strings.Fields(`avec con com mit met med sur sobre auf su op`)

// foreignGlasses are the words for a glass, by its usual name.
var foreignGlasses = map[string]string{
	"coupe":          `copa cóctel, copa de coctel, copa coupe, coppa cocktail, coppa da cocktail, taça, taça coupe, taça de cocktail, cocktailschaal, cocktailcoupe`,
	"cocktail glass": `verre à martini, coppa martini, coppa da martini, copa de martini, taça martini, taça de martini`,
	"flute":          `flûte à champagne, champagneglas, taça flute, copa flute, coppa flute, champagnerglas`,
	"rocks glass":    `vaso old fashioned, vaso rocks, copo baixo, copo curto, copo old fashioned, bicchiere basso, bicchiere old fashioned, bicchiere rock, verre court, laag glas, kurzes glas, niedriges glas`,
	"highball glass": `copo alto, copo longo, hoog glas, høyt glass, högt glas, grand verre, vaso de tubo, vaso highball, bicchiere highball, bicchiere lungo, hohes glas, langes glas, verre long drink`,
	"collins glass":  `vaso collins, bicchiere collins, copo collins, verre collins, collinsglas`,
	"copper mug":     `jarra de cobre, taza de cobre, tasse en cuivre, caneca de cobre, koperen mok, mug de cobre`,
	"wine glass":     `calice da vino, calice vino, taça de vinho, copa vino, verre à pied, weinkelch, stielglas`,
	"balloon glass":  `copa balón, copa de balón, copa balon, verre ballon, taça balão, ballonglas, coppa balloon`,
	"mug":            `taza, tazza, tasse, mok`,
}

// inTongues calls put for every phrase of other tongues.
func inTongues(put func(words string, t term)) {
	each := func(words string, t term) {
		for w := range strings.SplitSeq(words, ",") {
			put(strings.TrimSpace(w), t)
		}
	}
	for method, words := range foreignMethods {
		each(words, term{Method: method})
	}
	each(foreignSteps, term{keep: true})
	for service, words := range foreignIce {
		t := term{Service: service, weak: service == "", Ice: true}
		each(words, t)
		for w := range strings.SplitSeq(words, ",") {
			for _, with := range foreignWith {
				put(with+" "+strings.TrimSpace(w), t)
			}
		}
	}
	for glass, words := range foreignGlasses {
		for _, g := range glassTerms {
			if g.glass == glass {
				each(words, term{Glass: glass, Service: g.service, weak: true})
				break
			}
		}
	}
}

// foreignWords are the single words among them.
var foreignWords = func() map[string]bool {
	out := map[string]bool{}
	inTongues(func(words string, _ term) {
		if !strings.Contains(words, " ") {
			out[words] = true
		}
	})
	return out
}()
