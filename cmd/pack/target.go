package main

import (
	"debug/buildinfo"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"
)

// target is a system and a processor the program is built for, as Go names
// them.
type target struct{ os, arch string }

// targets are all of them.
var targets = []target{
	{"linux", "amd64"}, {"linux", "arm64"},
	{"darwin", "amd64"}, {"darwin", "arm64"},
	{"windows", "amd64"}, {"windows", "arm64"},
}

// most is the largest a program may be, in bytes: 15 MB.
const most = 15_000_000

const program = "cutbrief/cmd/cutbrief"

func (t target) String() string { return t.os + "/" + t.arch }

// file is the name of the program for this target.
func (t target) file() string {
	name := "cutbrief-" + t.os + "-" + t.arch
	if t.os == "windows" {
		name += ".exe"
	}
	return name
}

// env is the environment that builds for this target whatever the machine's own
// settings are: no C, and the oldest processors of the kind.
func (t target) env() []string {
	return append(os.Environ(), "GOOS="+t.os, "GOARCH="+t.arch, "CGO_ENABLED=0", "GOAMD64=v1", "GOARM64=v8.0", "GOEXPERIMENT=")
}

// build builds the program: stripped, with no path of this machine in it, and
// with the revision it was made from where git knows it.
func (t target) build(dir string) error {
	path := filepath.Join(dir, t.file())
	cmd := exec.Command("go", "build", "-trimpath", "-buildvcs=auto", "-ldflags=-s -w", "-o", path, program)
	cmd.Env = t.env()
	if out, err := cmd.CombinedOutput(); err != nil {
		return fmt.Errorf("build for %s: %w\n%s", t, err, out)
	}
	info, err := os.Stat(path)
	if err != nil {
		return err
	}
	if info.Size() >= most {
		return fmt.Errorf("%s has %d bytes, %d or more", t.file(), info.Size(), most)
	}
	return nil
}

// origin is what a built program says of itself: its version, without the v
// and as a package may be called, and when its revision was made.
func origin(path string) (version string, made time.Time, err error) {
	info, err := buildinfo.ReadFile(path)
	if err != nil {
		return "", time.Time{}, err
	}
	version, made = "0~devel", time.Unix(0, 0)
	if v, ok := strings.CutPrefix(info.Main.Version, "v"); ok {
		version = strings.ReplaceAll(v, "-", "~") // a hyphen would begin a revision of the packaging
	}
	for _, s := range info.Settings {
		if t, err := time.Parse(time.RFC3339, s.Value); err == nil && s.Key == "vcs.time" {
			made = t
		}
	}
	return version, made.UTC(), nil
}
