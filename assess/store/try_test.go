package store

import (
	"os"
	"path/filepath"
	"testing"
)

// TestTry: a folder is left as it was, and one that is not there cannot be
// written to.
func TestTry(t *testing.T) {
	dir := t.TempDir()
	if err := TryFolder(dir); err != nil {
		t.Error(err)
	}
	if left, _ := os.ReadDir(dir); len(left) > 0 {
		t.Errorf("leaves %v", left)
	}
	if err := TryFolder(filepath.Join(dir, "gone")); err == nil {
		t.Error("a folder that is not there can be written to")
	}
}
