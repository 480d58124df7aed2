package pdf

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"encoding/json"
	"flag"
	"io"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

var update = flag.Bool("update", false, "cut the page's fonts anew")

// cutFonts are the two weights with what their files are called.
var cutFonts = map[string][]byte{"regular": goregular.TTF, "bold": gobold.TTF}

// The fonts beside this file are the Go fonts with the outlines of the common
// characters alone, as the tables of the TrueType format say (ISO/IEC 14496-22,
// from memory): every glyph keeps its number, unused ones are empty, and what
// is left is as it was, byte for byte. go test -update cuts them anew.
func TestFontsAreCutFromTheGoFonts(t *testing.T) {
	for name, whole := range cutFonts {
		cut, definition := cutFont(t, name, whole)
		outlines, described := filepath.Join("font", name+".z"), filepath.Join("font", name+".json")
		if *update {
			var packed bytes.Buffer
			w, _ := zlib.NewWriterLevel(&packed, zlib.BestCompression)
			w.Write(cut)
			w.Close()
			for file, data := range map[string][]byte{outlines: packed.Bytes(), described: definition} {
				if err := os.WriteFile(file, data, 0o644); err != nil {
					t.Fatal(err)
				}
			}
		}
		if got := unpacked(t, outlines); !bytes.Equal(got, cut) {
			t.Errorf("%s is not cut from the font it should be; go test -update cuts it anew", outlines)
		}
		if got, err := os.ReadFile(described); err != nil || !bytes.Equal(got, definition) {
			t.Errorf("%s does not describe the font: %v", described, err)
		}
	}
}

func unpacked(t *testing.T, file string) []byte {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	r, err := zlib.NewReader(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	out, err := io.ReadAll(r)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// Of every common character the cut font has the outline and the width of the
// whole one, and the definition says that width in thousandths of the size.
func TestCutFontsShowWhatTheWholeOnesDo(t *testing.T) {
	for name, whole := range cutFonts {
		before, _ := sfnt.Parse(whole)
		after, err := sfnt.Parse(unpacked(t, filepath.Join("font", name+".z")))
		if err != nil {
			t.Fatal(err)
		}
		var d struct{ Cw []int }
		text, _ := os.ReadFile(filepath.Join("font", name+".json"))
		if err := json.Unmarshal(text, &d); err != nil || len(d.Cw) != 256 {
			t.Fatalf("%s: %v, %d widths", name, err, len(d.Cw))
		}
		var buf sfnt.Buffer
		shown, em := 0, fixed.I(int(before.UnitsPerEm()))
		for code := range 256 {
			r := runeAt(byte(code))
			was, _ := before.GlyphIndex(&buf, r)
			is, _ := after.GlyphIndex(&buf, r)
			if was != is {
				t.Errorf("%s: %q is glyph %d, was %d", name, r, is, was)
			}
			if was == 0 {
				continue
			}
			shown++
			one, _ := before.LoadGlyph(&buf, was, em, nil)
			old := slices.Clone(one)
			two, err := after.LoadGlyph(&buf, is, em, nil)
			if err != nil || !slices.Equal(old, two) {
				t.Errorf("%s: %q has another outline (%v)", name, r, err)
			}
			wide, _ := before.GlyphAdvance(&buf, was, em, font.HintingNone)
			if now, _ := after.GlyphAdvance(&buf, is, em, font.HintingNone); now != wide || d.Cw[code] != int(math.Round(float64(wide)/64*1000/float64(before.UnitsPerEm()))) {
				t.Errorf("%s: %q is %v wide, was %v; described as %d", name, r, now, wide, d.Cw[code])
			}
		}
		if shown < 215 { // all of Windows code page 1252, and the signs beside it
			t.Errorf("%s shows %d characters", name, shown)
		}
	}
}

// cutFont returns the cut font and its definition for the library.
func cutFont(t *testing.T, name string, whole []byte) (cut, definition []byte) {
	t.Helper()
	f, err := sfnt.Parse(whole)
	if err != nil {
		t.Fatal(err)
	}
	var buf sfnt.Buffer
	em := float64(f.UnitsPerEm())
	runes, wide := map[rune]int{}, make([]int, 256)
	for code := range 256 {
		r := runeAt(byte(code))
		glyph, err := f.GlyphIndex(&buf, r)
		if err != nil || glyph == 0 {
			continue
		}
		runes[r] = int(glyph)
		advance, _ := f.GlyphAdvance(&buf, glyph, fixed.I(int(em)), font.HintingNone)
		wide[code] = int(math.Round(float64(advance) / 64 * 1000 / em))
	}
	tables := tablesOf(whole)
	cutOutlines(tables, runes)
	tables["cmap"] = characterMap(runes)
	tables["post"] = slices.Concat([]byte{0, 3, 0, 0}, tables["post"][4:32]) // version 3 names no glyphs
	delete(tables, "gasp")
	cut = fontFile(tables)
	return cut, describe(t, name, tables, em, wide, len(cut))
}

// describe writes the definition in the library's own form. Codes beyond those
// of WinAnsiEncoding are named by the Adobe Glyph List.
func describe(t *testing.T, name string, tables map[string][]byte, em float64, wide []int, size int) []byte {
	t.Helper()
	scaled := func(table string, at int) int {
		return int(math.Round(float64(int16(binary.BigEndian.Uint16(tables[table][at:]))) * 1000 / em))
	}
	type box struct{ Xmin, Ymin, Xmax, Ymax int }
	type descriptor struct {
		Ascent, Descent, CapHeight, Flags int
		FontBBox                          box
		ItalicAngle, StemV, MissingWidth  int
	}
	stem := map[string]int{"regular": 80, "bold": 140}[name] // common values for the weights; no reader of an embedded font uses them
	d := struct {
		Tp, Name        string
		Desc            descriptor
		Up, Ut          int
		Cw              []int
		Enc, Diff, File string
		Size1, Size2    int
		OriginalSize    int
	}{
		Tp: "TrueType", Name: map[string]string{"regular": "CUTBRA+Go-Regular", "bold": "CUTBRB+Go-Bold"}[name],
		Desc: descriptor{scaled("hhea", 4), scaled("hhea", 6), scaled("OS/2", 88), 32,
			box{scaled("head", 36), scaled("head", 38), scaled("head", 40), scaled("head", 42)}, 0, stem, wide['?']},
		Up: -100, Ut: 50, Cw: wide, Enc: "cp1252", Diff: differences(), File: name + ".z", OriginalSize: size,
	}
	out, err := json.Marshal(d)
	if err != nil {
		t.Fatal(err)
	}
	return append(out, '\n')
}

func tablesOf(file []byte) map[string][]byte {
	tables := map[string][]byte{}
	for i := range int(binary.BigEndian.Uint16(file[4:])) {
		e := file[12+16*i:]
		at, size := binary.BigEndian.Uint32(e[8:]), binary.BigEndian.Uint32(e[12:])
		tables[string(e[:4])] = file[at : at+size]
	}
	return tables
}

// cutOutlines keeps the outlines of glyph 0, of the runes' glyphs and of their
// parts.
func cutOutlines(tables map[string][]byte, runes map[rune]int) {
	glyf, loca := tables["glyf"], tables["loca"]
	long := binary.BigEndian.Uint16(tables["head"][50:]) == 1
	at := func(i int) int {
		if long {
			return int(binary.BigEndian.Uint32(loca[4*i:]))
		}
		return 2 * int(binary.BigEndian.Uint16(loca[2*i:]))
	}
	keep := map[int]bool{}
	var add func(g int)
	add = func(g int) {
		if keep[g] {
			return
		}
		keep[g] = true
		for _, part := range partsOf(glyf[at(g):at(g+1)]) {
			add(part)
		}
	}
	add(0)
	for _, g := range runes {
		add(g)
	}
	var out, places []byte
	n := int(binary.BigEndian.Uint16(tables["maxp"][4:]))
	for g := range n + 1 {
		if long {
			places = binary.BigEndian.AppendUint32(places, uint32(len(out)))
		} else {
			places = binary.BigEndian.AppendUint16(places, uint16(len(out)/2))
		}
		if g < n && keep[g] {
			out = append(out, glyf[at(g):at(g+1)]...)
			for len(out)%4 != 0 {
				out = append(out, 0)
			}
		}
	}
	tables["glyf"], tables["loca"] = out, places
}

// partsOf are the glyphs a glyph is put together from.
func partsOf(glyph []byte) []int {
	if len(glyph) < 10 || int16(binary.BigEndian.Uint16(glyph)) >= 0 {
		return nil
	}
	const words, scale, more, both, square = 1, 8, 0x20, 0x40, 0x80
	var list []int
	for at := 10; ; {
		flags := binary.BigEndian.Uint16(glyph[at:])
		list = append(list, int(binary.BigEndian.Uint16(glyph[at+2:])))
		at += 6
		if flags&words != 0 {
			at += 2
		}
		switch {
		case flags&scale != 0:
			at += 2
		case flags&both != 0:
			at += 4
		case flags&square != 0:
			at += 8
		}
		if flags&more == 0 {
			return list
		}
	}
}

// characterMap is a cmap of format 4 for Windows and Unicode, one segment a
// rune.
func characterMap(runes map[rune]int) []byte {
	var list []rune
	for r := range runes {
		list = append(list, r)
	}
	slices.Sort(list)
	n := len(list) + 1
	var ends, starts, deltas, offsets []byte
	put := binary.BigEndian.AppendUint16
	for _, r := range list {
		ends, starts, deltas, offsets = put(ends, uint16(r)), put(starts, uint16(r)), put(deltas, uint16(runes[r]-int(r))), put(offsets, 0)
	}
	ends, starts, deltas, offsets = put(ends, 0xFFFF), put(starts, 0xFFFF), put(deltas, 1), put(offsets, 0)
	log := int(math.Log2(float64(n)))
	sub := put(put(put(nil, 4), uint16(16+8*n)), 0)
	sub = put(put(put(put(sub, uint16(2*n)), uint16(2<<log)), uint16(log)), uint16(2*n-2<<log))
	sub = slices.Concat(sub, ends, []byte{0, 0}, starts, deltas, offsets)
	head := put(put(put(put(nil, 0), 1), 3), 1)
	return append(binary.BigEndian.AppendUint32(head, 12), sub...)
}

// fontFile puts tables into a file with their checksums.
func fontFile(tables map[string][]byte) []byte {
	var names []string
	for name := range tables {
		names = append(names, name)
	}
	slices.Sort(names)
	n, log := len(names), int(math.Log2(float64(len(names))))
	out := binary.BigEndian.AppendUint32(nil, 0x00010000)
	for _, v := range []int{n, 16 << log, log, 16*n - 16<<log} {
		out = binary.BigEndian.AppendUint16(out, uint16(v))
	}
	var body []byte
	head := 0
	for _, name := range names {
		data := slices.Clone(tables[name])
		if name == "head" {
			head = 12 + 16*n + len(body)
			binary.BigEndian.PutUint32(data[8:], 0)
		}
		out = append(out, name...)
		for _, v := range []uint32{checksum(data), uint32(12 + 16*n + len(body)), uint32(len(data))} {
			out = binary.BigEndian.AppendUint32(out, v)
		}
		body = append(body, data...)
		for len(body)%4 != 0 {
			body = append(body, 0)
		}
	}
	out = append(out, body...)
	binary.BigEndian.PutUint32(out[head+8:], 0xB1B0AFBA-checksum(out))
	return out
}

func checksum(data []byte) uint32 {
	sum := uint32(0)
	for i := 0; i < len(data); i += 4 {
		var word [4]byte
		copy(word[:], data[i:])
		sum += binary.BigEndian.Uint32(word[:])
	}
	return sum
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
