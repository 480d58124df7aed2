//go:build unix

package store

import (
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// A pipe with no other end would be waited for without end.
func TestLoadRefusesPipe(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.json")
	if err := syscall.Mkfifo(path, 0o600); err != nil {
		t.Skip("no pipes here:", err)
	}
	if _, _, err := Load(path); err == nil || !strings.Contains(err.Error(), "regular") {
		t.Errorf("got %v", err)
	}
}
