// Package bilingual finds what a text names twice, in two tongues or in two scripts, and names
// it once: "Zumo de limón / Lemon juice 2 cl", "ジン Gin 50 ml", "lemon (citron)".
//
// Two names are one where both mean the same ingredient, or where one of them says less of the
// same: "honey" beside "honey syrup". A word in another script that means nothing here is passed
// over beside a name that is known. Names of two things stay as they stand, so that they are
// asked about. What is passed over is said.
package bilingual
