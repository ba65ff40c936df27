package pouring

import "counterpour/flavor"

// Verbs begin a pour that goes on or into the glass, in the unit that goes
// without saying.
var Verbs = map[string]flavor.Unit{
	"top": flavor.Top, "topped": flavor.Top, "top-up": flavor.Top, "toped": flavor.Top, "toppd": flavor.Top, "tops": flavor.Top, "topping": flavor.Top, "fill": flavor.Top, "lengthen": flavor.Top, "finish": flavor.Top, "finished": flavor.Top, "crowned": flavor.Top, "completed": flavor.Top, "lengthened": flavor.Top,
	"float": flavor.Float, "layer": flavor.Float, "drizzle": flavor.Float, "lace": flavor.Float, "auffüllen": flavor.Top, "aufgießen": flavor.Top,
	"tapar": flavor.Top, "coronar": flavor.Top, "rematar": flavor.Top, "alargar": flavor.Top, "allungare": flavor.Top, "rabboccare": flavor.Top, "rallonger": flavor.Top, "compléter": flavor.Top, "completer": flavor.Top, "allonger": flavor.Top, "completar": flavor.Top, "rellenar": flavor.Top, "colmare": flavor.Top, "riempire": flavor.Top, "fyll": flavor.Top, "fyld": flavor.Top, "toppa": flavor.Top, "aanvullen": flavor.Top, "fylls": flavor.Top, "terminar": flavor.Top, "cubrir": flavor.Top, "completare": flavor.Top, "encher": flavor.Top, "afvullen": flavor.Top, "aftoppen": flavor.Top, "finir": flavor.Top, "finire": flavor.Top, "toppes": flavor.Top,
	"dopełnić": flavor.Top, "dopełnij": flavor.Top, "dopełniamy": flavor.Top, "dopełnione": flavor.Top, "uzupełnić": flavor.Top, "uzupełnij": flavor.Top, "zalać": flavor.Top, "zalej": flavor.Top, "dolać": flavor.Top, "dolej": flavor.Top, "dolít": flavor.Top, "dolijeme": flavor.Top, "dolij": flavor.Top, "doplnit": flavor.Top, "doplň": flavor.Top, "dolejte": flavor.Top, "долить": flavor.Top, "долей": flavor.Top, "долейте": flavor.Top, "доливаем": flavor.Top, "заполнить": flavor.Top, "дополнить": flavor.Top, "дополни": flavor.Top, "топ": flavor.Top, "συμπληρώνουμε": flavor.Top, "συμπληρώνω": flavor.Top, "συμπληρώστε": flavor.Top, "γεμίζουμε": flavor.Top, "γεμίζω": flavor.Top, "γεμίστε": flavor.Top, "τοπ": flavor.Top, "topp": flavor.Top, "topper": flavor.Top, "fülle": flavor.Top, "auffüllend": flavor.Top, "complétez": flavor.Top, "complète": flavor.Top, "completa": flavor.Top, "colmar": flavor.Top, "rellena": flavor.Top, "rellenamos": flavor.Top, "completamos": flavor.Top, "toppar": flavor.Top, "fyllas": flavor.Top,
	"채우기": flavor.Top, "toppet": flavor.Top, "toppas": flavor.Top, "fylles": flavor.Top, "fylt": flavor.Top, "remplir": flavor.Top, "remplis": flavor.Top, "allonge": flavor.Top, "llenar": flavor.Top, "llena": flavor.Top, "rellene": flavor.Top, "complete": flavor.Top, "completo": flavor.Top, "colma": flavor.Top, "allunga": flavor.Top, "aufgefüllt": flavor.Top, "toppen": flavor.Top, "wypełnić": flavor.Top, "wypełnij": flavor.Top, "uzupełnione": flavor.Top,
	"rinse": flavor.Rinse, "coat": flavor.Rinse, "swirl": flavor.Rinse, "season": flavor.Rinse,
	"spritz": flavor.Spritz, "spray": flavor.Spritz, "mist": flavor.Spritz, "atomise": flavor.Spritz, "atomize": flavor.Spritz,
}

// AfterVerb reports whether a word before a pour says that it goes in once the rest is mixed.
func AfterVerb(w string) bool {
	return w == "top" || w == "float" || w == "rinse" || w == "fill" || w == "spritz" || w == "layer" || w == "topped"
}

// Over reports whether a word behind the name of what is floated tells again that it goes on top:
// "drizzle the cassis over".
func Over(w string) bool { return w == "over" || w == "through" || w == "across" }
