package main

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestFirstRunMakesNothing: what only looks or prints makes no file and no
// folder, on a machine where the program has never been.
func TestFirstRunMakesNothing(t *testing.T) {
	for _, args := range [][]string{
		{"version"}, {"--help"}, {"help", "brief"}, {"doctor"}, {"doctor", "--format", "json"}, {"guide"}, {"guide", "rep"},
		{"rules"}, {"formats", "visit"}, {"schema"}, {"systems"}, {"systems", "template"}, {"prices"}, {"words"}, {"completion", "zsh"},
		{"sample", "--list"}, {"brief", "-", "--format", "text"}, {"brief", "-", "--format", "json"}, {"why", "-"}, {"next", "-"},
		{"cost", "-"}, {"practice", "--list"}, {"practice", "--report"}, {"interview", "--plain"}, {"nonsense"},
	} {
		t.Run(strings.Join(args, " "), func(t *testing.T) {
			home := t.TempDir()
			t.Chdir(home)
			w := fixedEnvironment()
			var out bytes.Buffer
			w.args, w.out, w.err = args, &out, &out
			w.in = strings.NewReader("")
			if args[len(args)-1] == "-" || len(args) > 1 && args[1] == "-" {
				w.in = bytes.NewReader(invented(t))
			}
			w.getenv = func(name string) string {
				return map[string]string{"HOME": home, "AppData": home, "LocalAppData": home}[name]
			}
			if status := run(w); status != exitDone && args[0] != "nonsense" {
				t.Errorf("status %d: %s", status, &out)
			}
			made(t, home)
		})
	}
}

// made fails for everything in a folder.
func made(t *testing.T, dir string) {
	t.Helper()
	err := fs.WalkDir(os.DirFS(dir), ".", func(path string, _ fs.DirEntry, err error) error {
		if path != "." {
			t.Errorf("made %s", filepath.Join("HOME", path))
		}
		return err
	})
	if err != nil {
		t.Error(err)
	}
}
