package interview

import (
	"os"
	"testing"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
)

// TestMain runs the interview itself when a test starts this binary in a
// terminal; otherwise the tests, with the colours switched off.
func TestMain(m *testing.M) {
	if path := os.Getenv(envVisit); path != "" {
		os.Exit(runForTest(path))
	}
	lipgloss.SetColorProfile(termenv.Ascii)
	os.Exit(m.Run())
}
