package store

import (
	"fmt"
	"hash/fnv"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// longestName keeps a name short enough for every system and for a list.
const longestName = 60

// slug turns any text into lower-case letters of the Latin alphabet, digits and
// single dashes. The date before it keeps it clear of names a system reserves
// for itself.
//
// Letters are spelled out where there is a way, so that the name can still be
// told. Where one is lost, or a word mixes alphabets, as a name does that is
// made to look like another, a number made from the whole text goes behind:
// names that only look alike are not taken for one another.
func slug(text string) string {
	text = norm.NFKC.String(strings.TrimSpace(text))
	s, lost := spelt(text)
	mark := ""
	if lost || mixed(text) {
		h := fnv.New32a()
		h.Write([]byte(text)) // never fails
		mark = fmt.Sprintf("-%08x", h.Sum32())
	}
	if most := longestName - len(mark); len(s) > most {
		s = strings.TrimSuffix(s[:most], "-")
	}
	if s == "" {
		s = "visit"
	}
	return s + mark
}

// spelt is a text in plain letters, digits and single dashes. It reports whether
// a letter was lost.
func spelt(text string) (s string, lost bool) {
	var out strings.Builder
	dash := false
	for _, r := range norm.NFKD.String(letters.Replace(strings.ToLower(text))) {
		plain, known := other[r]
		switch {
		case r >= 'a' && r <= 'z' || r >= '0' && r <= '9':
			plain = string(r)
		case known && plain != "":
		case known, unicode.Is(unicode.Mn, r):
			continue // a sign without a sound, a mark taken off its letter
		default:
			lost = lost || unicode.IsLetter(r) || unicode.IsNumber(r)
			dash = true
			continue
		}
		if dash && out.Len() > 0 {
			out.WriteByte('-')
		}
		out.WriteString(plain)
		dash = false
	}
	return out.String(), lost
}

// mixed reports a word that has letters of more than one alphabet.
func mixed(text string) bool {
	var before *unicode.RangeTable
	for _, r := range text {
		if !unicode.IsLetter(r) && !unicode.Is(unicode.Mn, r) {
			before = nil
		}
		for _, script := range []*unicode.RangeTable{unicode.Latin, unicode.Greek, unicode.Cyrillic} {
			if !unicode.Is(script, r) {
				continue
			}
			if before != nil && before != script {
				return true
			}
			before = script
		}
	}
	return false
}

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

// Alike is the same for two file names that some system takes for one: those
// that differ in capitals, in how an accent is written, or in dots and spaces at
// the end.
func Alike(name string) string {
	name = norm.NFKC.String(strings.ToLower(norm.NFKC.String(name)))
	return strings.TrimRight(name, ". ")
}
