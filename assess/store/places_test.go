package store

import (
	"path/filepath"
	"testing"
)

// The places are those of the XDG Base Directory specification 0.8 (data:
// $XDG_DATA_HOME, else $HOME/.local/share; configuration: $XDG_CONFIG_HOME,
// else $HOME/.config; a relative path is passed over) and, from memory of the
// makers' guides for programs, %AppData% and ~/Library/Application Support.
func TestVisitsDir(t *testing.T) {
	home := filepath.FromSlash("/h")
	for _, test := range []struct {
		name, flag, goos string
		env              map[string]string
		want             string
	}{
		{"flag beats environment", "mine", "linux", map[string]string{"CUTBRIEF_DIR": "other"}, "mine"},
		{"environment beats default", "", "linux", map[string]string{"CUTBRIEF_DIR": "other", "HOME": home}, "other"},
		{"data folder", "", "linux", map[string]string{"XDG_DATA_HOME": "/x", "HOME": home}, "/x/cutbrief/visits"},
		{"relative data folder", "", "linux", map[string]string{"XDG_DATA_HOME": "x", "HOME": home}, "/h/.local/share/cutbrief/visits"},
		{"default", "", "linux", map[string]string{"HOME": home}, "/h/.local/share/cutbrief/visits"},
		{"macOS", "", "darwin", map[string]string{"HOME": home}, "/h/Library/Application Support/cutbrief/visits"},
		{"Windows", "", "windows", map[string]string{"AppData": home}, "/h/cutbrief/visits"},
	} {
		w := Places{System: test.goos, Getenv: func(name string) string { return test.env[name] }}
		got, err := w.Visits(test.flag)
		if err != nil || filepath.ToSlash(got) != test.want {
			t.Errorf("%s: got %q, %v; want %q", test.name, got, err, test.want)
		}
	}
}

func TestVisitsDirWithoutHome(t *testing.T) {
	w := Places{System: "linux", Getenv: func(string) string { return "" }}
	if dir, err := w.Visits(""); err == nil {
		t.Errorf("got %q, want an error: nobody said where", dir)
	}
}

func TestSystemsFile(t *testing.T) {
	env := map[string]string{"HOME": filepath.FromSlash("/h")}
	w := Places{System: "linux", Getenv: func(name string) string { return env[name] }}
	if path, named := w.Own("systems", ""); filepath.ToSlash(path) != "/h/.config/cutbrief/systems.csv" || named != "" {
		t.Errorf("default: got %q, %q", path, named)
	}
	env["CUTBRIEF_SYSTEMS"] = "env.csv"
	if path, named := w.Own("systems", ""); path != "env.csv" || named != "CUTBRIEF_SYSTEMS" {
		t.Errorf("environment: got %q, %q", path, named)
	}
	if path, named := w.Own("systems", "flag.csv"); path != "flag.csv" || named != "--systems" {
		t.Errorf("flag: got %q, %q", path, named)
	}
}
