package pdf

import (
	"strconv"
	"strings"

	"golang.org/x/text/encoding/charmap"
)

// sign is a character that Windows code page 1252 lacks and a page needs, at a
// code that page leaves free, with its name in the Adobe Glyph List.
type sign struct {
	code  byte
	shown rune
	name  string
}

// signs are in the order of their codes.
var signs = [...]sign{
	{0x81, '−', "minus"}, {0x8D, '√', "radical"}, {0x8F, '≤', "lessequal"}, {0x90, '≥', "greaterequal"}, {0x9D, '≈', "approxequal"},
}

// differences are the signs as PDF writes how a font's encoding differs from
// WinAnsiEncoding (ISO 32000-1, 9.6.6): "129 /minus 141 /radical".
func differences() string {
	var list []string
	for _, s := range signs {
		list = append(list, strconv.Itoa(int(s.code))+" /"+s.name)
	}
	return strings.Join(list, " ")
}

// runeAt is the character at a code of the cut fonts.
func runeAt(code byte) rune {
	for _, s := range signs {
		if s.code == code {
			return s.shown
		}
	}
	return charmap.Windows1252.DecodeByte(code)
}

// codes writes a text in the codes of the cut fonts; false if one of its
// characters is not in them.
func codes(text string) (string, bool) {
	plain := true
	for i := 0; i < len(text) && plain; i++ {
		plain = text[i] < 0x80
	}
	if plain {
		return text, true
	}
	out := make([]byte, 0, len(text))
	for _, r := range text {
		code, ok := codeOf(r)
		if !ok {
			return "", false
		}
		out = append(out, code)
	}
	return string(out), true
}

func codeOf(r rune) (byte, bool) {
	for _, s := range signs {
		if s.shown == r {
			return s.code, true
		}
	}
	return charmap.Windows1252.EncodeRune(r)
}
