package main

import (
	"os"
	"path/filepath"
	"testing"
)

// TestCounts by hand: tests are left out; a function counts from its first line
// to its last.
func TestCounts(t *testing.T) {
	dir := t.TempDir()
	for name, text := range map[string]string{
		"a.go":      "package a\n\nfunc one() {}\n\nfunc three() {\n\tone()\n}\n",
		"a_test.go": "package a\n\nfunc two() {\n}\n",
	} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	var c counts
	if err := c.addPackage(dir); err != nil || c.packages != 1 || c.lines != 7 || len(c.functions) != 2 || c.functions[0] != 1 || c.functions[1] != 3 {
		t.Errorf("%+v, %v", c, err)
	}
}
