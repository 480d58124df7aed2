// Package dark settles the terminal's background before Bubble Tea can ask for
// it. On a terminal that never replies that question costs five seconds, in
// every command of the program. Import it for its effect alone.
//
// It works because Go starts packages that are ready in the order of their
// import paths: this one needs Lip Gloss only, and its path sorts before Bubble
// Tea's. The screens use the terminal's own sixteen colours, which are legible
// on either background, so nothing is lost by not knowing.
package background

import "github.com/charmbracelet/lipgloss"

// The one effect at start-up that the program needs; see the package comment.
var _ = settle()

func settle() bool {
	lipgloss.SetHasDarkBackground(true)
	return true
}
