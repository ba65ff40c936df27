package serving

import (
	"strings"
	"sync"
	"unicode"

	"counterpour/flavor"
)

// The words of other tongues for how a drink is made and served: common practice. A slip
// of the pen is none of them, since too many English words are one letter away.

// foreignMethods are the words for each method; parted by commas.
var foreignMethods = map[flavor.Method]string{
	flavor.Shake: `coctelera, en coctelera, batir en coctelera, agitar y colar, frapper, frappé, frappée, frappez, secouer, secouez, coqueteleira, na coqueteleira, bater, bater com gelo, bater na coqueteleira,
		geschud, ryst, rystes, ryste, ristes, rist, skakes, skakas, kräftig schütteln, kräftig shaken, schüttelt, schütteln sie, agiter au shaker, frapper au shaker, mélanger au shaker, agita, agite, agítese,
		wstrząsnąć, wstrząśnij, wstrząsnij, wstrząsane, wstrząsamy, wstrząśnięte, shakeować, w shakerze, do shakera, protřepat, protřepeme, šejkrovat, šejkr, v šejkru, v shakeru, protřepejte, vyšejkovat,
		взбить, взбейте, взбить в шейкере, взболтать, встряхнуть, встряхните, шейк, шейкер, в шейкере, в шейкер, шейкнуть, шейкерить, χτυπάμε, χτυπάμε στο σέικερ, χτύπημα, σέικ, σέικερ, στο σέικερ, χτυπήστε, ανακινούμε,
		シェイク, シェーク, シェイカー, シェーカー, 셰이크, 쉐이크, 셰이킹, 쉐이킹, 쉐킷, 셰이커, 쉐이커, shake karo, shake karke, shake kar lo, hilao, shakeado, shakeada, shakear, shekerado, sacudir, batido, remover na coqueteleira, secouer énergiquement, skaket, rystet, ristet, rist godt, ryst godt, skaka hårt, opgeschud`,
	flavor.DryShake: `agitar en seco, agitado en seco, batir en seco, shaker à sec, shake à sec, shakerare a secco, shakerato a secco, trocken shaken, trocken schütteln, droog schudden,
		shake na sucho, wstrząsnąć na sucho, na sucho, nasucho, protřepat nasucho, na suchu, взбить без льда, сухой шейк, драй шейк, χτυπάμε χωρίς πάγο, ドライシェイク, ドライシェーク, schüttle trocken, torr shake, tørr shake, tør shake, dry shake poi shake, dry shake dann shake, dry shake puis shake, 드라이쉐이크, 드라이셰이크, batir seco, agitar seco, bater sem gelo, agitare a secco, secouer à sec, skaka utan is, ryst uden is, rist uten is, schudden zonder ijs, wstrząsnąć bez lodu, ohne eis schütteln, ohne eis shaken, agitar sin hielo, batir sin hielo`,
	flavor.Stir: `mexer, mexido, mexer com gelo, nel mixing glass, im rührglas, rührglas, kaltrühren, kalt rühren, zamieszać, zamieszaj, wymieszać, wymieszaj, mieszać, mieszane, mieszamy, w szklanicy barmańskiej, zamíchat, zamíchejte, míchat, promíchat, v míchací sklenici, перемешать, перемешайте, размешать, стир, стирить, охладить в стакане,
		в смесительном стакане, ανακατεύουμε, ανακατεύω, ανακατέψτε, ανάδευση, αναδεύουμε, ステア, ステアー, mezclar, mezclado, mezcla, remueve, mescola, rühre, umrühren, remuez, à la cuillère, mélangez, mexa, roer, geroerd, röres, røres, rør i, röras, omröres, refrescar, en vaso mezclador, mescolato, 스터, 스터링, stir karo, mila do, milao, mexe, mexendo, misturar, mistura, miscelare, miscela, mélanger à la cuillère, rør, rørt, rörd, roeren`,
	flavor.Build: `directo, directo en vaso, directo en el vaso, directo en copa, construir, construir en vaso, construido, direto, direto no copo, montado no copo, montar no copo,
		costruire, costruito, costruire nel bicchiere, direttamente nel bicchiere, direttamente nel calice, directement dans le verre, directement au verre, direct au verre, construire, construire au verre,
		budować, budować w szkle, budowane, w szkle, bezpośrednio w szkle, prosto w szklance, stavět, stavět ve sklenici, přímo ve sklenici, билд, билдинг, построить в бокале, в бокале, собрать в бокале, χτίζουμε στο ποτήρι, απευθείας στο ποτήρι, στο ποτήρι, ビルド,
		bygges i glasset, byggs i glaset, byggs direkt i glaset, im gästeglas bauen, bauen, im glas bauen, direkt im glas, im glas gebaut, bouwen, bouwen in het glas, opbouwen, opbouwen in het glas, direct in het glas, bygg, bygges, byg, byg i glas, bygg i glaset, byggs, 빌드, 빌딩, glass mein banao, montar en vaso, monter au verre, monté au verre, opbouw in glas, im glas aufbauen, mexe no copo, mexer no copo, rør i glasset, rör i glaset, im glas rühren, mélanger dans le verre, remover en el vaso, mescolare nel bicchiere`,
	flavor.Blend: `licuar, licuado, licuadora, en licuadora, batir en licuadora, frullare, frullato, nel frullatore, frullatore, au blender, au mixeur, mixé, im mixer, pürieren,
		blender, zblendować, zmiksować, w blenderze, mixovat, rozmixovat, блендер, в блендере, взбить в блендере, μπλέντερ, στο μπλέντερ, ブレンダー, ミキサー, liquidificador, bater no liquidificador, blenden, 블렌드, 블렌더, 블렌딩, mixer mein, blend karo, mixer i blender, kör i mixer, blend i blender`,
}

// foreignServices are the words for a service that names neither ice nor a glass.
var foreignServices = map[flavor.Service]string{
	flavor.Hot: `na gorąco, gorące, podawać na gorąco, gorący, horké, horký, teplé, podávat horké, горячий, горячим, подавать горячим, горячее, ζεστό, σερβίρεται ζεστό, ホット, 温かい, heiß servieren, servir chaud, servir caliente, servire caldo, servir quente, quente, warm serveren, serveres varm, serveras varm, serveres varmt, varm drikke,
		varmt glass, varmt glas, warmes glas, verre chaud, varme glas, heißes glas, bicchiere caldo, taza caliente, 핫, 따뜻하게`,
	flavor.Up:    `podawać bez lodu, серв без льда, κρύο ποτήρι χωρίς πάγο, ohne eis servieren, copa fría, coppa fredda, coppetta fredda, coppa ghiacciata`,
	flavor.Rocks: `w szklance z lodem, szklanka z lodem, szklance z lodem, glas met ijs, glas is, glas med is, glass med is, glas mit eis, verre avec glaçons, vaso con hielo, bicchiere con ghiaccio, copo com gelo, ποτήρι με πάγο, бокал со льдом, стакан со льдом, 온더락, 온더록스, 언더락, 온더록, sklenice s ledem, sklenka s ledem`,
}

// foreignSteps are worth keeping as a step, and say nothing of the method.
const foreignSteps = `machacar, majar, pestare, piler, muddeln, stößeln, macerar, kneuzen, colar, doble colado, colado doble, colar doble, filtrare, doppio filtro, double filtrage, double filtrer, filtrer,
	przecedzić, przecedź, podwójnie przecedzić, podwójne cedzenie, przecedzamy, odcedzić, scedit, přecedit, přecedíme, dvakrát přecedit, процедить, процедите, двойное процеживание, отстрейнить, стрейн, файн стрейн, σουρώνουμε, σουρώνω, διπλό σούρωμα,
	ugnieść, ugnieć, rozgnieść, rozgnieć, rozmačkat, размять, подавить, мадлить, λιώνουμε, πατάμε, sila, siles, silas, sies, dobbeltsi, dubbelsilas, silas ned, abseihen, doppelt abseihen, double strain, filtrez, passez, doble colado, zeef, マドル, ダブルストレイン, ストレイン, coar, coar duas vezes, zeven, dubbel zeven, dubbelzeven, sila, dubbelsila, 스트레인, 더블스트레인, 머들, 머들링, chhan lo, chhaan lo, kuto, kucho, coar fino, macera, macere, amassar, amassa, pestar, doppel abseihen, doppelt seihen, feinstrainen, dubbel afgieten, cedzić, odcedzić, si op, sil op`

// foreignIce are the words for ice, by the service that they say, if any.
var foreignIce = map[flavor.Service]string{
	"": `lód, lodu, z lodem, kostki lodu, kostek lodu, dużo lodu, bez lodu, led, ledu, s ledem, hodně ledu, bez ledu, kostky ledu, лед, лёд, со льдом, льдом, льда, много льда, без льда, с льдом, кубики льда, πάγος, πάγο, με πάγο, χωρίς πάγο, παγάκια, μπόλικο πάγο, 氷, 氷入り, 氷なし, 氷たっぷり, mucho hielo, con mucho hielo, sin hielo, cubo de hielo, cubos de hielo, hielo en cubos, hielos, senza ghiaccio, molto ghiaccio, ghiaccio in cubi, cubi di ghiaccio, glace, avec glace, sans glace,
		glaçons neufs, mit eis, ohne eis, viel eis, com gelo, sem gelo, muito gelo, pedras de gelo, zonder ijs, veel ijs, med is, uden is, utan is, uten is, sobre gelo, 얼음, 얼음 가득, 얼음 많이, 얼음 넣고, 얼음 없이, baraf, baraf ke saath, baraf full, full baraf, baraf bhar ke, baraf daal ke, baraf dalo, thodi baraf, bina baraf, con bastante hielo, bastante hielo, lleno de hielo, pieno di ghiaccio, plein de glaçons, cheio de gelo, voll mit eis, vol ijs, fullt med is, fyldt med is, pełna lodu`,
	flavor.Rocks: `na lodzie, na lód, na kostce, na dużej kostce, duża kostka lodu, na jednej kostce, na ledu, na led, na velké kostce, velká kostka, velká kostka ledu, на льду, на лед, на лёд, большой куб льда, большой куб, крупный лед, крупный лёд, на большом кубе льда, σε πάγο, πάνω σε πάγο, μεγάλο παγάκι, μεγάλος πάγος, ロック, オンザロック, オン・ザ・ロック, ロックスタイル, 丸氷, 大きな氷, auf einem großen eiswürfel, en stor isbit, stor isterning, isterninger, cubo grande de hielo, cubo grande di ghiaccio, sur un gros glaçon, großen eiswürfel, pedra grande de gelo, pedra de gelo, cubo de gelo grande, groot ijsblok, grote ijsblok, grote ijsblokjes`,
	flavor.Crushed: `kruszony lód, kruszonym lodzie, na kruszonym lodzie, kruszonego lodu, lód kruszony, drcený led, drceném ledu, na drceném ledu, ledová tříšť, колотый лед, колотый лёд, колотым льдом, краш, дробленый лед, дроблёный лёд, дробленым льдом, фраппе, τριμμένος πάγος, τριμμένο πάγο, クラッシュアイス, クラッシュドアイス, クラッシュ, crushed is, knust is, krossad is, glace pilée, ghiaccio tritato, hielo picado, zerstoßenes eis, hielo pilé, hielo frappé, hielo triturado, hielo roto, ghiaccio pilé, crushed eis, gestoßenes eis, crushed ijs, gemalen ijs, glace concassée, gelo picado,
		gelo moído, gelo triturado, 크러시드아이스, 크러쉬드아이스, 크러시드 아이스, 간얼음, crushed baraf, kuti baraf, kuti hui baraf, glace en neige, ghiaccio crushed, hielo crushed, eis crushed, hielo granizado`,
}

// foreignWith are the words of other tongues before ice: "avec glace pilée".
var foreignWith = strings.Fields(`z s со с με σε med avec con com mit met med sur sobre auf su op`)

// foreignGlasses are the words for a glass, by its usual name.
var foreignGlasses = map[string]string{
	"coupe":          `koktajlówka, coupetka, kielich coupe, kupe, kupé, do kupé, купе, коктейльное блюдце, шале, в купе, κουπ, クープ, クープグラス, シャンパンクープ, 쿠페, 쿠페 글라스, 쿠페잔, schaal, coupeglass, cocktailskål, coupe glas, copa cóctel, copa de coctel, copa coupe, coppa cocktail, coppa da cocktail, taça, taça coupe, taça de cocktail, cocktailschaal, cocktailcoupe`,
	"cocktail glass": `kieliszek koktajlowy, kieliszka koktajlowego, kieliszek martini, kieliszka martini, kieliszek do martini, koktejlová sklenka, koktejlová sklenice, koktejlové sklenky, sklenka na martini, martini sklenka, martinka, коктейльный бокал, коктейльную рюмку, коктейльная рюмка, мартинка, мартинку, бокал для мартини, коктейльном бокале, ποτήρι κοκτέιλ, ποτήρι μαρτίνι, κοκτεϊλοπότηρο, カクテルグラス, マティーニグラス, 칵테일 글라스, 칵테일글라스, 칵테일잔, 칵테일 잔, 마티니 글라스, 마티니잔, cocktailglass, cocktailglaset, martiniglass, verre à martini, coppa martini, coppa da martini, copa de martini, taça martini, taça de martini`,
	"flute":          `kieliszek do szampana, flet, флюте, флейта, бокал для шампанского, φλούτο, フルート, フルートグラス, シャンパングラス, champagneglass, champagneflute, flétna, flûte à champagne, champagneglas, taça flute, copa flute, coppa flute, champagnerglas`,
	"rocks glass":    `szklanka niska, niska szklanka, niskiej szklance, niskiej szklanki, szklaneczka, szklanka old fashioned, szklanka do whisky, tumbler sklenka, nízká sklenice, nízká sklenka, whisky sklenice, рокс, роксе, олд фешен, олд фэшн, олд фэшен, в рокс, низкий бокал, низкий стакан, стакан рокс, χαμηλό ποτήρι, ποτήρι ουίσκι, κοντό ποτήρι, ロックグラス, オールドファッションドグラス, 락글라스, 락 글라스, 록글라스, 온더락잔, 온더락 잔, 올드패션드 글라스, chhota glass, chota glass, オールドファッショングラス, lavt glass, lavt glas, lågt glas, whiskyglass, lågt tumblerglas, whiskytumbler, lageglas, vaso old fashioned, vaso rocks, copo baixo, copo curto, copo old fashioned, bicchiere basso, bicchiere old fashioned, bicchiere rock, verre court, laag glas, kurzes glas, niedriges glas`,
	"highball glass": `szklanka wysoka, wysoka szklanka, wysokiej szklance, wysokiej szklanki, highball szklanka, wysoki highball, vysoká sklenice, vysoká sklenka, vysoké sklenice, хайбол, хайболе, в хайбол, высокий стакан, высокий бокал, высоком бокале, ψηλό ποτήρι, σωλήνας, ποτήρι σωλήνα, タンブラー, ハイボールグラス, 하이볼잔, 하이볼 잔, 하이볼글라스, 하이볼 글라스, 롱글라스, lamba glass, lambe glass mein, lambe glass, bada glass, ロンググラス, højt glas, høyt glass, højglas, highballglass, longdrinkglass, copo alto, copo longo, hoog glas, høyt glass, högt glas, grand verre, vaso de tubo, vaso highball, bicchiere highball, bicchiere lungo, hohes glas, langes glas, verre long drink`,
	"collins glass":  `collins sklenice, коллинз, в коллинз, бокал коллинз, κόλινς, コリンズグラス, 콜린스 글라스, 콜린스글라스, 콜린스잔, collinsglass, vaso collins, bicchiere collins, copo collins, verre collins, collinsglas`,
	"copper mug":     `miedziany kubek, miedzianym kubku, kubek miedziany, měděný hrnek, měděný hrneček, медная кружка, медную кружку, в медной кружке, χάλκινη κούπα, 銅マグ, 銅のマグ, 銅製マグ, マグカップ銅, kobberkopp, kobberkrus, kopparmugg, jarra de cobre, taza de cobre, tasse en cuivre, caneca de cobre, koperen mok, mug de cobre`,
	"wine glass":     `kieliszek do wina, kieliszku do wina, sklenka na víno, sklenice na víno, винный бокал, бокал для вина, ποτήρι κρασιού, κρασοπότηρο, ワイングラス, 와인잔, 와인 글라스, 와인글라스, vinglass, calice da vino, calice vino, taça de vinho, copa vino, verre à pied, weinkelch, stielglas`,
	"balloon glass":  `copa gin, balon, baloně, balónek, балон, баллон, μπαλόν, バルーングラス, ballongglass, copa balón, copa de balón, copa balon, verre ballon, taça balão, ballonglas, coppa balloon`,
	"shot glass":     `stopka, stopce, kieliszek do wódki, panák, štamprle, шот, стопка, стопке, рюмка, σφηνάκι, σφηνοπότηρο, ショットグラス, shotglas, shotglass, snapsglas, borrelglas, vaso de chupito, chupito, shottino, bicchierino, copo de shot, verre à shot, pinnchen, stamperl`,
	"mug":            `kubek, filiżanka, kubku, hrnek, hrnečku, šálek, кружка, кружке, κούπα, マグ, マグカップ, ホットグラス, kopp, krus, kop, kopje, becher hitzebeständig, toddyglas, irish coffee glas, taza, tazza, tasse, mok`,
}

// inTongues calls put for every phrase of other tongues, but for those with a word of
// [foreignWith] before ice.
func inTongues(put func(words string, t term)) {
	each := func(words string, t term) {
		for w := range strings.SplitSeq(words, ",") {
			put(strings.TrimSpace(w), t)
		}
	}
	iceInTongues(put)
	for method, words := range foreignMethods {
		each(words, term{Method: method})
	}
	for service, words := range foreignServices {
		each(words, term{Service: service, weak: service == flavor.Rocks, Ice: service == flavor.Rocks})
	}
	each(foreignSteps, term{keep: true})
	for glass, words := range foreignGlasses {
		for _, g := range glassTerms {
			if g.glass == glass {
				each(words, term{Glass: glass, Service: g.service, weak: true})
				break
			}
		}
	}
}

// iceInTongues calls put for every phrase of ice in other tongues.
func iceInTongues(put func(words string, t term)) {
	for service, words := range foreignIce {
		for w := range strings.SplitSeq(words, ",") {
			put(strings.TrimSpace(w), term{Service: service, weak: service == "", Ice: true})
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

// inJapanese returns what a word says that holds Japanese phrases of making and serving, which
// are not written apart: "シェイクしてカクテルグラスに注ぐ"; nil if it holds none, or names what is
// none of them. What stands between them bends verbs, and says nothing.
func inJapanese(word string) []string {
	if !strings.ContainsFunc(word, japanese) {
		return nil
	}
	var out []string
	for letters := []rune(word); len(letters) > 0; {
		n := min(len(letters), longestJapanese)
		for ; n > 1; n-- {
			if w := string(letters[:n]); japaneseTerms()[w] {
				out = append(out, w)
				break
			}
		}
		if n == 1 {
			w := string(letters[:1])
			if japaneseTerms()[w] {
				out = append(out, w)
			} else if !unicode.Is(unicode.Hiragana, letters[0]) && !strings.ContainsRune(japaneseVerbs, letters[0]) {
				return nil
			}
		}
		letters = letters[max(n, 1):]
	}
	return out
}

// longestJapanese is the most letters of a Japanese phrase.
const longestJapanese = 16

// japaneseVerbs are the letters of verbs and of what is done to a glass.
const japaneseVerbs = "注入加混濾満軽良強冷杯飾添全材料順作出直接上下中側大小回数秒氷水使用仕"

// japanese reports whether a letter is one that only Japanese is written in.
func japanese(c rune) bool {
	return c > unicode.MaxLatin1 && unicode.In(c, unicode.Katakana, unicode.Hiragana, unicode.Han)
}

// japaneseTerms are the phrases of [inTongues] in Japanese.
var japaneseTerms = sync.OnceValue(func() map[string]bool {
	out := map[string]bool{}
	inTongues(func(words string, _ term) {
		if strings.ContainsFunc(words, japanese) {
			out[words] = true
		}
	})
	return out
})
