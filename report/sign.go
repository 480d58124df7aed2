package report

import (
	"strconv"
	"strings"
	"sync"

	"cutbrief/rules/demonstration"
	"cutbrief/rules/message"
)

// Sign is a safety sign drawn after ISO 7010: a yellow triangle with a black
// border for a warning, a blue disc for what is to be worn. The shapes are our
// own, drawn from memory of the standard's descriptions; they are no copies.
type Sign struct {
	Number string     // of the standard: "W021"
	Name   message.ID // what it warns of or asks for, for those who do not see it
	Shapes []SignShape
}

// SignSide is the width and height of the square that signs are drawn in; y points
// down.
const SignSide = 100.0

// SignShape is one outline of a sign: filled, or a line of a width.
type SignShape struct {
	Path  string // M, L, C and Z as in SVG, all absolute; O is a circle: x, y, radius
	Ink   Ink
	Line  float64    // 0 fills the outline
	Steps []SignStep // the path, taken apart
}

// Ink is a colour of a sign. Printed in black and white, the yellow is near
// white and the blue near black, as what is drawn on them asks for.
type Ink struct{ R, G, B int }

// The colours, near those of ISO 3864-4.
var (
	yellow = Ink{249, 205, 35}
	black  = Ink{0, 0, 0}
	blue   = Ink{0, 83, 135}
	white  = Ink{255, 255, 255}
)

const (
	triangle = "M50 8 L95 88 L5 88 Z"
	disc     = "O50 50 48"
	face     = "M31 50 C31 30 38 22 50 22 C62 22 69 30 69 50 C69 70 61 84 50 84 C39 84 31 70 31 50 Z"
)

// signs are the signs of the hazards, upon their backgrounds: a number that
// begins with M is that of a disc.
var signs = sync.OnceValue(func() map[demonstration.Hazard]*Sign {
	list := map[demonstration.Hazard]*Sign{}
	for hazard, s := range drawn {
		ground := []SignShape{{Path: triangle, Ink: yellow},
			{Path: triangle, Ink: black, Line: 7}}
		if s.Number[0] == 'M' {
			ground = []SignShape{{Path: disc, Ink: blue}}
		}
		s.Shapes = append(ground, s.Shapes...)
		for i := range s.Shapes {
			s.Shapes[i].Steps = pathSteps(s.Shapes[i].Path)
		}
		list[hazard] = &s
	}
	return list
})

// SignOf is the sign of a hazard; the general warning for any other.
func SignOf(h demonstration.Hazard) *Sign {
	if s := signs()[h]; s != nil {
		return s
	}
	return signs()[demonstration.AnyHazard]
}

// drawn are the signs without their backgrounds.
var drawn = map[demonstration.Hazard]Sign{
	demonstration.Arc: {"M007", "Eye protection must be worn", []SignShape{
		{Path: face, Ink: white},
		{Path: "M27 42 L73 42 L73 47 L27 47 Z", Ink: blue},
		{Path: "O41 48 8", Ink: blue},
		{Path: "O59 48 8", Ink: blue}}},
	demonstration.Noise: {"M003", "Ear protection must be worn", []SignShape{
		{Path: face, Ink: white},
		{Path: "M25 48 C25 8 75 8 75 48", Ink: white, Line: 4},
		{Path: "M19 42 L29 42 L29 64 L19 64 Z", Ink: white},
		{Path: "M71 42 L81 42 L81 64 L71 64 Z", Ink: white}}},
	demonstration.Fire: {"W021", "Warning: fire", []SignShape{
		{Path: "M51 34 C56 45 66 50 66 62 C66 72 59 77 50 77 C41 77 34 72 34 62 C34 55 38 52 40 46 C42 50 43 53 46 54 C49 48 49 41 51 34 Z", Ink: black},
		{Path: "M50 59 C54 63 57 66 57 70 C57 74 54 76 50 76 C46 76 43 74 43 70 C43 66 47 64 50 59 Z", Ink: yellow},
		{Path: "M31 78 L69 78 L69 82 L31 82 Z", Ink: black}}},
	demonstration.Explosion: {"W002", "Warning: explosion", []SignShape{
		{Path: "M50 37 L54 52 L65 45 L60 57 L72 61 L60 66 L67 79 L55 72 L50 82 L45 72 L33 79 L40 66 L28 61 L40 57 L35 45 L46 52 Z", Ink: black},
		{Path: "O50 62 5", Ink: yellow}}},
	demonstration.Fume: {"W016", "Warning: toxic fume", []SignShape{
		{Path: "M36 51 C36 41 42 36 50 36 C58 36 64 41 64 51 C64 57 61 60 58 61 L58 67 L42 67 L42 61 C39 60 36 57 36 51 Z", Ink: black},
		{Path: "O44 52 3.8", Ink: yellow},
		{Path: "O56 52 3.8", Ink: yellow},
		{Path: "M50 56 L48 60 L52 60 Z", Ink: yellow},
		{Path: "M29 70 L71 82", Ink: black, Line: 4.5},
		{Path: "M71 70 L29 82", Ink: black, Line: 4.5}}},
	demonstration.ClosedSpace: {"W041", "Warning: closed space, bad air", []SignShape{
		{Path: "O34 73 6", Ink: black},
		{Path: "M43 76 L60 76 L72 80", Ink: black, Line: 7},
		{Path: "M33 60 C38 53 42 66 47 60 C52 53 56 66 61 60", Ink: black, Line: 4},
		{Path: "M41 48 C44 42 47 54 50 48 C53 42 56 54 59 48", Ink: black, Line: 4}}},
	demonstration.Height: {"W008", "Warning: drop", []SignShape{
		{Path: "M22 76 L46 76 L46 83 L18 83 Z", Ink: black},
		{Path: "O63 46 5.5", Ink: black},
		{Path: "M60 53 L52 64 L42 66", Ink: black, Line: 6},
		{Path: "M58 55 L68 62", Ink: black, Line: 5},
		{Path: "M52 64 L58 74", Ink: black, Line: 5}}},
	demonstration.HotMetal: {"W017", "Warning: hot metal", []SignShape{
		{Path: "M27 76 L73 76 L73 82 L27 82 Z", Ink: black},
		{Path: "M38 72 C33 65 43 60 38 52", Ink: black, Line: 4.5},
		{Path: "M50 72 C44 62 56 54 50 42", Ink: black, Line: 4.5},
		{Path: "M62 72 C57 65 67 60 62 52", Ink: black, Line: 4.5}}},
	demonstration.Shock: {"W012", "Warning: electricity", []SignShape{
		{Path: "M57 32 L38 61 L49 61 L44 75 L40 73 L43 84 L53 78 L49 77 L62 55 L51 55 L62 34 Z", Ink: black}}},
	demonstration.MagneticField: {"W006", "Warning: magnetic field", []SignShape{
		{Path: "M40 46 L40 62 C40 77 60 77 60 62 L60 46", Ink: black, Line: 9},
		{Path: "M34 51 L46 51 L46 54 L34 54 Z", Ink: yellow},
		{Path: "M54 51 L66 51 L66 54 L54 54 Z", Ink: yellow},
		{Path: "M43 40 C46 36 54 36 57 40", Ink: black, Line: 3}}},
	demonstration.AnyHazard: {"W001", "General warning", []SignShape{
		{Path: "M44 36 L56 36 L53 64 L47 64 Z", Ink: black},
		{Path: "O50 74 5", Ink: black}}},
}

// SignStep is one step along an outline: M and L have one point, C has two controls
// and a point, O a centre and a radius, Z none.
type SignStep struct {
	Op byte
	At []float64
}

// pathSteps takes a path apart. What cannot be read is left out.
func pathSteps(path string) []SignStep {
	var list []SignStep
	for i := 0; i < len(path); {
		end := i + 1
		for end < len(path) && !strings.ContainsRune("MLCZO", rune(path[end])) {
			end++
		}
		step := SignStep{Op: path[i]}
		for f := range strings.FieldsSeq(path[i+1 : end]) {
			if v, err := strconv.ParseFloat(f, 64); err == nil {
				step.At = append(step.At, v)
			}
		}
		list, i = append(list, step), end
	}
	return list
}
