package store

import "strings"

// letters spells out those that do not come apart into a plain letter and a mark.
var letters = strings.NewReplacer("ß", "ss", "æ", "ae", "œ", "oe", "ø", "o", "ł", "l", "đ", "d", "ð", "d", "þ", "th", "ı", "i", "'", "", "’", "")

// other are the letters of two more alphabets, without their marks, in Latin
// ones. Sources: for Cyrillic the table of ICAO Doc 9303 part 3, section 6; for
// Greek ELOT 743, which is ISO 843; both from memory. Nothing but the name of a
// file depends on them.
var other = map[rune]string{
	'а': "a", 'б': "b", 'в': "v", 'г': "g", 'ґ': "g", 'д': "d", 'е': "e", 'є': "ie", 'ж': "zh", 'з': "z", 'и': "i", 'і': "i",
	'к': "k", 'л': "l", 'м': "m", 'н': "n", 'о': "o", 'п': "p", 'р': "r", 'с': "s", 'т': "t", 'у': "u", 'ф': "f", 'х': "kh",
	'ц': "ts", 'ч': "ch", 'ш': "sh", 'щ': "shch", 'ъ': "ie", 'ы': "y", 'ь': "", 'э': "e", 'ю': "iu", 'я': "ia",
	'ђ': "d", 'ј': "j", 'љ': "lj", 'њ': "nj", 'ћ': "c", 'џ': "dz", 'ѕ': "dz",

	'α': "a", 'β': "v", 'γ': "g", 'δ': "d", 'ε': "e", 'ζ': "z", 'η': "i", 'θ': "th", 'ι': "i", 'κ': "k", 'λ': "l", 'μ': "m",
	'ν': "n", 'ξ': "x", 'ο': "o", 'π': "p", 'ρ': "r", 'σ': "s", 'ς': "s", 'τ': "t", 'υ': "y", 'φ': "f", 'χ': "ch", 'ψ': "ps", 'ω': "o",
}
