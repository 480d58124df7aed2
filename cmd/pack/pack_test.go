package main

import (
	"archive/tar"
	"bytes"
	"compress/gzip"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"
)

// made is an invented time of a revision.
var made = time.Date(2026, 3, 12, 14, 30, 0, 0, time.UTC)

var sampleFiles = []entry{
	{path: "usr/bin/cutbrief", data: []byte("#!/bin/sh\necho invented\n"), executable: true},
	{path: "usr/share/doc/cutbrief/copyright", data: []byte("odd")},
}

// TestArchive writes an archive by hand: after the first line, 16 columns of
// name, 12 of time in seconds, 6 and 6 of owner and group, 8 of mode in octal,
// 10 of size, and two bytes that end the header (ar(5), from memory). 7 bytes
// of content are followed by one to make them even.
func TestArchive(t *testing.T) {
	got := string(archive([]entry{{path: "a.txt", data: []byte("1234567")}}, time.Unix(1000, 0)))
	want := "!<arch>\n" +
		"a.txt           " + "1000        " + "0     " + "0     " + "100644  " + "7         " + "`\n" +
		"1234567" + "\n"
	if got != want {
		t.Errorf("got\n%q, want\n%q", got, want)
	}
}

// TestTarball: every folder stands before what is in it, the program can be
// run, all is of one time and one owner.
func TestTarball(t *testing.T) {
	data, err := tarball(sampleFiles, made)
	if err != nil {
		t.Fatal(err)
	}
	z, err := gzip.NewReader(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for r := tar.NewReader(z); ; {
		h, err := r.Next()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		names = append(names, h.Name)
		if !h.ModTime.Equal(made) || h.Uid != 0 || h.Gid != 0 {
			t.Errorf("%s: %v, owner %d, group %d", h.Name, h.ModTime, h.Uid, h.Gid)
		}
		if runs := h.Mode&0o111 != 0; h.Typeflag == tar.TypeReg && runs != (h.Name == "./usr/bin/cutbrief") {
			t.Errorf("%s: mode %o", h.Name, h.Mode)
		}
	}
	want := []string{"./", "./usr/", "./usr/bin/", "./usr/share/", "./usr/share/doc/", "./usr/share/doc/cutbrief/", "./usr/bin/cutbrief", "./usr/share/doc/cutbrief/copyright"}
	if !slices.Equal(names, want) {
		t.Errorf("got %q, want %q", names, want)
	}
}

// TestDebianReadsThePackage has Debian's own reader look at one.
func TestDebianReadsThePackage(t *testing.T) {
	if _, err := exec.LookPath("dpkg-deb"); err != nil {
		t.Skip("not installed: dpkg-deb")
	}
	data, err := deb(target{"linux", "amd64"}.control("1.2~3", sampleFiles), sampleFiles, made)
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "x.deb")
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	for what, want := range map[string]string{"--field": "Version: 1.2~3\n", "--contents": "./usr/bin/cutbrief\n"} {
		if out, err := exec.Command("dpkg-deb", what, path).CombinedOutput(); err != nil || !strings.Contains(string(out), want) {
			t.Errorf("dpkg-deb %s: %v\n%s", what, err, out)
		}
	}
}

// TestNoticesNameEveryModule: a module without its licence is not handed out,
// and the licence of Go's own library is the one it is said to be.
func TestNoticesNameEveryModule(t *testing.T) {
	modules, err := modulesOf(targets)
	if err != nil {
		t.Skip("the modules cannot be listed here:", err)
	}
	text, err := notices(targets...)
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range modules {
		if !bytes.Contains(text, []byte("\n"+strings.TrimSpace(m.path+" "+m.version)+"\n")) {
			t.Errorf("%s is not named", m.path)
		}
	}
	for _, want := range []string{"Bigelow & Holmes", "the cutbrief contributors", "golang.org/x/text v"} {
		if !bytes.Contains(text, []byte(want)) {
			t.Errorf("does not say %q", want)
		}
	}
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		t.Fatal(err)
	}
	licence, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), "LICENSE"))
	if err != nil {
		t.Skip("no licence in the folder of Go:", err)
	}
	if !bytes.Contains(text, bytes.TrimSpace(licence)) {
		t.Error("the licence of Go is not among them")
	}
}

// TestWrongUsage: nothing is built for a system we do not know, and nothing is
// written into a folder with other things in it.
func TestWrongUsage(t *testing.T) {
	full := t.TempDir()
	if err := os.WriteFile(filepath.Join(full, "mine"), nil, 0o600); err != nil {
		t.Fatal(err)
	}
	empty := filepath.Join(t.TempDir(), "out")
	for _, test := range []struct {
		args   []string
		status int
		says   string
	}{
		{nil, 2, "usage"},
		{[]string{"-only", "plan9/amd64", empty}, 1, `"plan9/amd64" is not built here; one of linux/amd64`},
		{[]string{full}, 1, "is not empty"},
	} {
		var out, errs bytes.Buffer
		if status := run(test.args, &out, &errs); status != test.status || !strings.Contains(errs.String(), test.says) {
			t.Errorf("%q: status %d, says %q", test.args, status, &errs)
		}
	}
	if _, err := os.Stat(empty); err == nil {
		t.Error("a folder was made")
	}
}
