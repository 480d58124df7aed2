package screentest

import (
	"regexp"
	"strings"
	"unicode"

	"github.com/charmbracelet/x/ansi"
)

// Sizes are the windows in which nothing may be cut, in cells.
var Sizes = [][2]int{{80, 24}, {60, 20}, {120, 40}}

// Small is a window in which a screen may show less, but still holds.
var Small = [2]int{40, 15}

// huge is a window in which everything has room.
const huge = 400

// View is one state of a screen, as it is drawn in a window, without styles.
type View struct {
	Name  string
	Draw  func(width, height int) string
	Focus bool   // something has the focus: a line to type in, a row
	Also  string // words it has in a small window only
	Spare string // a line it leaves out where there is no room
}

// Whole fails unless the view is whole in every window: framed, no word cut
// unseen, nothing lost at the foot without a mark, the panel beside the text and
// not over it, the focus marked by a character, and the way out named.
func (v View) Whole(t Failing) {
	t.Helper()
	known := tokens(v.Draw(huge, huge) + " more above below " + v.Also)
	for _, size := range append(Sizes[:len(Sizes):len(Sizes)], Small) {
		width, height := size[0], size[1]
		view := v.Draw(width, height)
		Framed(t, view, width, height)
		v.leads(t, view)
		cutUnseen(t, view, known)
		straight(t, view)
		if size != Small {
			lost(t, view, v.Draw(width, huge), v.Spare)
		}
	}
}

// leads fails unless the view shows the way out, and the focus if there is one.
func (v View) leads(t Failing, view string) {
	t.Helper()
	if !strings.Contains(view, "leave") {
		t.Fatalf("%s shows no way out:\n%s", v.Name, view)
	}
	if v.Focus && !strings.Contains(view, "› ") {
		t.Fatalf("%s marks no focus:\n%s", v.Name, view)
	}
}

// edge is what stands between the text and the panel.
const edge = "│"

// parts are the lines of the text and of the panel beside it.
func parts(view string) (text, panel []string) {
	for _, line := range strings.Split(view, "\n") {
		left, right := line, ""
		if i := strings.LastIndex(line, edge); i >= 0 {
			left, right = line[:i], line[i+len(edge):]
		}
		text, panel = append(text, left), append(panel, right)
	}
	return text, panel
}

// tokens are the words of a view, and words that a line end parts put together.
func tokens(view string) map[string]bool {
	known := map[string]bool{}
	text, panel := parts(view)
	for _, lines := range [][]string{text, panel} {
		for _, word := range strings.Fields(strings.Join(lines, " ")) {
			known[word] = true
		}
	}
	return known
}

// cutUnseen fails if a word of the view is not one of those known, unless it
// shows that it was shortened, or goes on in the next line.
func cutUnseen(t Failing, view string, known map[string]bool) {
	t.Helper()
	text, panel := parts(view)
	for _, lines := range [][]string{text, panel} {
		words := strings.Fields(strings.Join(lines, " "))
		for i, word := range words {
			if !known[word] && !strings.Contains(word, "…") && strings.ContainsFunc(word, meant) && !goesOn(words, i, known) {
				t.Fatalf("%q is part of a word:\n%s", word, view)
			}
		}
	}
}

func meant(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) }

// goesOn reports whether word i is part of a known one that its neighbours
// complete.
func goesOn(words []string, i int, known map[string]bool) bool {
	for from := max(0, i-6); from <= i; from++ {
		for to := i + 1; to <= min(len(words), i+7); to++ {
			if whole := strings.Join(words[from:to], ""); known[whole] || strings.Contains(whole, "…") && to > i+1 {
				return true
			}
		}
	}
	return false
}

// straight fails unless the panel's edge, if there is one, is straight: a line
// that is too long would push it aside or run over it.
func straight(t Failing, view string) {
	t.Helper()
	at := map[int]int{}
	for _, line := range strings.Split(view, "\n") {
		if i := strings.LastIndex(line, edge); i >= 0 {
			at[ansi.StringWidth(line[:i])]++
		}
	}
	if len(at) > 1 {
		t.Fatalf("the panel's edge is not straight, %v:\n%s", at, view)
	}
}

// more are the marks of text that is not on the screen.
var more = regexp.MustCompile(`more (above ↑|below ↓)|^\s*…`)

// lost fails if a line that a taller window shows is not in the view, unless the
// view says that there is more.
func lost(t Failing, view, tall, spare string) {
	t.Helper()
	text, panel := parts(view)
	tallText, tallPanel := parts(tall)
	for _, pair := range [][2][]string{{text, tallText}, {panel, tallPanel}} {
		seen := map[string]bool{}
		marked := false
		for _, line := range pair[0] {
			seen[strings.TrimSpace(line)] = true
			marked = marked || more.MatchString(line)
		}
		for _, line := range pair[1] {
			if line = strings.TrimSpace(line); !marked && line != spare && line != "" && !seen[line] {
				t.Fatalf("%q is lost without a mark:\n%s", line, view)
			}
		}
	}
}
