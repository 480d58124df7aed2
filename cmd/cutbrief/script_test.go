package main

import (
	"os"
	"path/filepath"
	"runtime"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

// TestScripts runs the whole program as a user would, one archive a story. The
// first word of an archive's name is the command it is about.
func TestScripts(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("the scripts are written for a POSIX shell")
	}
	visit, demonstrated := invented(t), shown(t)
	testscript.Run(t, testscript.Params{
		Dir: filepath.Join("..", "..", "testdata", "script"),
		Setup: func(env *testscript.Env) error {
			env.Setenv(raceOptions, noSleep)
			env.Setenv("HOME", env.WorkDir)
			env.Setenv("XDG_DATA_HOME", filepath.Join(env.WorkDir, "data"))
			env.Setenv("XDG_CONFIG_HOME", filepath.Join(env.WorkDir, "config"))
			env.Setenv("XDG_CACHE_HOME", filepath.Join(env.WorkDir, "cache"))
			env.Setenv("LocalAppData", filepath.Join(env.WorkDir, "cache"))
			env.Setenv("AppData", filepath.Join(env.WorkDir, "data"))
			if err := os.WriteFile(filepath.Join(env.WorkDir, "shown.json"), demonstrated, 0o600); err != nil {
				return err
			}
			return os.WriteFile(filepath.Join(env.WorkDir, "visit.json"), visit, 0o600)
		},
	})
}
