package rehearse

import (
	"os"
	"testing"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
)

// TestMain runs the rehearsal itself when a test starts this binary in a
// terminal; otherwise the tests, with the colours switched off.
func TestMain(m *testing.M) {
	if os.Getenv(envRun) != "" {
		os.Exit(runForTest())
	}
	lipgloss.SetColorProfile(termenv.Ascii)
	os.Exit(m.Run())
}
