// Package label knows the words that stand before a colon, or another sign, and what each says follows.
package label

// Kind is what follows a word before a colon.
type Kind uint8

const (
	None    Kind = iota
	Name         // the drink's name
	Pours        // pours follow
	Serving      // method, service, ice
	Step         // a step, kept as it is
	Glass
	Garnish
	Rim
	Remark
)

// Words are the words before a colon, or another sign that parts them from the rest.
var Words = map[string]Kind{
	"name": Name, "drink": Name, "cocktail": Name, "title": Name, "item": Name, "spec": Name, "recipe": Name,
	"sp": Pours, "sw": Pours, "ac": Pours, "ingredients": Pours, "ingredient": Pours, "pours": Pours, "base": Pours, "tin": Pours, "shaker": Pours, "in the tin": Pours,
	"in tin": Pours, "in shaker": Pours, "in glass": Pours, "in the glass": Pours, "build order": Pours, "mix": Pours, "specs": Pours, "combine": Pours,
	"modifiers": Pours, "modifier": Pours, "citrus": Pours, "sweet": Pours, "sour": Pours, "strong": Pours, "weak": Pours, "after": Pours, "add": Pours,
	"cheater": Pours, "length": Pours, "ln": Pours, "len": Pours, "lengthener": Pours, "mixer": Pours, "fizz": Pours, "herb": Pours, "herbs": Pours, "fruit": Pours, "egg": Pours, "seasoning": Pours, "bitters": Pours, "spirit": Pours, "spirits": Pours, "liqueur": Pours, "short tin": Pours, "large tin": Pours, "small tin": Pours,
	"juice": Pours, "juices": Pours, "syrup": Pours, "syrups": Pours, "topper": Pours,
	"split": Pours, "split base": Pours, "flav": Pours, "flavour": Pours, "flavor": Pours, "other": Pours, "others": Pours, "extra": Pours, "extras": Pours,
	"texture": Pours, "dairy": Pours, "froth": Pours, "savoury": Pours, "aromatics": Pours, "dilution": Pours, "sweetener": Pours, "acid": Pours, "mod": Pours, "mods": Pours, "accent": Pours, "foam": Pours, "finish": Pours,
	"method": Serving, "build": Serving, "meth": Serving, "met": Serving, "how made": Serving, "service": Serving, "serve": Serving, "served": Serving, "ice": Serving, "technique": Serving, "style": Serving,
	"mixing": Serving, "prep": Serving, "temp": Serving, "temperature": Serving, "strain": Serving,
	"directions": Serving, "instructions": Serving, "preparation": Serving, "procedure": Serving, "steps": Serving, "how": Serving, "to make": Serving,
	"step":  Step,
	"glass": Glass, "glassware": Glass, "vessel": Glass, "serve in": Glass, "served in": Glass, "glas": Glass, "gl": Glass,
	"garnish": Garnish, "garnishes": Garnish, "garn": Garnish, "gar": Garnish, "grn": Garnish, "g": Garnish, "top note": Garnish, "topnote": Garnish, "top-note": Garnish, "top notes": Garnish, "finish with": Garnish, "decoration": Garnish,
	"decoración": Garnish, "decoracion": Garnish, "guarnición": Garnish, "guarnicion": Garnish, "guarnizione": Garnish, "decorazione": Garnish, "décor": Garnish, "decor": Garnish, "décoration": Garnish, "garniture": Garnish, "garnitur": Garnish, "deko": Garnish, "dekoration": Garnish, "guarnição": Garnish, "decoração": Garnish, "garnering": Garnish, "pynt": Garnish,
	"método": Serving, "metodo": Serving, "méthode": Serving, "methode": Serving, "preparación": Serving, "preparacion": Serving, "preparazione": Serving, "préparation": Serving, "zubereitung": Serving, "preparo": Serving, "bereiding": Serving, "elaboración": Serving, "técnica": Serving, "tecnica": Serving, "technik": Serving, "hielo": Serving, "ghiaccio": Serving, "eis": Serving, "gelo": Serving, "ijs": Serving,
	"ingredientes": Pours, "ingredienti": Pours, "ingrédients": Pours, "zutaten": Pours, "ingrediënten": Pours, "ingredienser": Pours,
	"vaso": Glass, "copa": Glass, "bicchiere": Glass, "verre": Glass, "copo": Glass, "glass type": Glass, "servir en": Glass,
	"składniki": Pours, "složení": Pours, "ingredience": Pours, "ингредиенты": Pours, "состав": Pours, "υλικά": Pours, "συστατικά": Pours, "材料": Pours, "skład": Pours, "ingrediensen": Pours, "suroviny": Pours, "ingrediente": Pours,
	"przygotowanie": Serving, "sposób": Serving, "sposób przygotowania": Serving, "wykonanie": Serving, "postup": Serving, "příprava": Serving, "приготовление": Serving, "метод": Serving, "способ": Serving, "εκτέλεση": Serving, "παρασκευή": Serving, "μέθοδος": Serving, "作り方": Serving, "手順": Serving, "技法": Serving, "lód": Serving, "led": Serving, "лед": Serving, "πάγος": Serving, "氷": Serving, "tilberedning": Serving, "tillagning": Serving, "fremgangsmåde": Serving, "fremgangsmåte": Serving, "werkwijze": Serving, "modo de preparo": Serving, "esecuzione": Serving, "procedimento": Serving, "zubereitungsart": Serving,
	"szkło": Glass, "kieliszek": Glass, "sklo": Glass, "sklenka": Glass, "бокал": Glass, "посуда": Glass, "подача": Glass, "ποτήρι": Glass, "グラス": Glass, "glaswerk": Glass, "cristalería": Glass, "servizio": Glass,
	"dekoracja": Garnish, "ozdoba": Garnish, "przybranie": Garnish, "zdobení": Garnish, "украшение": Garnish, "гарнир": Garnish, "декор": Garnish, "γαρνιτούρα": Garnish, "γαρνίρισμα": Garnish, "ガーニッシュ": Garnish, "飾り": Garnish, "デコレーション": Garnish, "garnityr": Garnish, "versiering": Garnish,
	"nazwa": Name, "název": Name, "название": Name, "όνομα": Name, "名前": Name, "カクテル名": Name,
	"nombre": Name, "nome": Name, "nom": Name,
	"rim": Rim, "rimmed": Rim,
	"bartender": Remark, "barkeeper": Remark, "barman": Remark, "shift": Remark, "venue": Remark, "event": Remark, "created by": Remark, "written by": Remark, "made by": Remark, "datum": Remark, "fecha": Remark, "flavour profile": Remark, "profile": Remark, "inspiration": Remark, "story": Remark,
	"kit": Remark, "equipment": Remark, "tools": Remark, "gear": Remark, "hardware": Remark, "owner": Remark, "prepped by": Remark, "tested by": Remark, "taught by": Remark, "course": Remark, "lesson": Remark, "grade": Remark, "score": Remark, "scores": Remark, "rating": Remark,
	"judges": Remark, "pairing": Remark, "pairs with": Remark, "food": Remark, "music": Remark, "mood": Remark, "vibe": Remark, "sold": Remark, "delivery": Remark, "booking": Remark, "occasion": Remark, "par": Remark, "supplier": Remark, "feedback": Remark, "verdict": Remark,
	"from": Remark, "subject": Remark, "re": Remark, "allergens": Remark, "allergen": Remark, "contains": Remark, "price": Remark,
	"note": Remark, "notes": Remark, "source": Remark, "by": Remark, "credit": Remark, "comment": Remark, "comments": Remark, "remark": Remark,
	"cost": Remark, "station": Remark, "family": Remark, "section": Remark, "version": Remark, "status": Remark, "abv": Remark, "shelf life": Remark, "upsell": Remark, "sells at": Remark, "tested": Remark, "approved": Remark, "tip": Remark, "tips": Remark,
	"to finish": Pours, "to top": Pours, "charge": Pours, "bitter": Pours, "presentation": Serving, "process": Serving,
	"yield": Remark, "serves": Remark, "makes": Remark, "date": Remark, "author": Remark, "tasting": Remark, "history": Remark, "category": Remark, "tags": Remark,
}
