package main

import (
	"bytes"
	"compress/gzip"
	"crypto/md5"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"time"
)

// entry is one file of a package: where it is put, from the root and without a
// slash in front, and what it holds.
type entry struct {
	path       string
	data       []byte
	executable bool
}

// completions says where each shell looks for what completes a command, from
// memory of the shells' own manuals.
var completions = []struct{ shell, path string }{
	{"bash", "usr/share/bash-completion/completions/cutbrief"},
	{"fish", "usr/share/fish/vendor_completions.d/cutbrief.fish"},
	{"zsh", "usr/share/zsh/vendor-completions/_cutbrief"},
}

// collect has the program, built for this machine, write the files beside it: its
// manual pages, compressed as Debian keeps them, and its completions.
func collect() ([]entry, error) {
	dir, err := os.MkdirTemp("", "pack-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	here := target{runtime.GOOS, runtime.GOARCH}
	if err := here.build(dir); err != nil {
		return nil, err
	}
	built, pages := filepath.Join(dir, here.file()), filepath.Join(dir, "man")
	if out, err := exec.Command(built, "manual", pages, "--words", "en").CombinedOutput(); err != nil {
		return nil, fmt.Errorf("write the manual pages: %w\n%s", err, out)
	}
	list, err := read(pages)
	if err != nil {
		return nil, err
	}
	for i, f := range list {
		list[i] = entry{path: "usr/share/man/man1/" + f.path + ".gz", data: compressed(f.data)}
	}
	for _, c := range completions {
		script, err := exec.Command(built, "completion", c.shell).Output()
		if err != nil {
			return nil, fmt.Errorf("write the completion for %s: %w", c.shell, err)
		}
		list = append(list, entry{path: c.path, data: script})
	}
	return list, nil
}

// compressed is data as gzip -9n writes it: without a name and a time.
func compressed(data []byte) []byte {
	var b bytes.Buffer
	z, _ := gzip.NewWriterLevel(&b, gzip.BestCompression) // the level is one there is
	z.Write(data)                                         // into memory: cannot fail
	z.Close()
	return b.Bytes()
}

// debian writes the package of this target, of the program built in dir.
func (t target) debian(dir string, more []entry) error {
	path := filepath.Join(dir, t.file())
	data, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	version, made, err := origin(path)
	if err != nil {
		return err
	}
	licences, err := notices(t)
	if err != nil {
		return err
	}
	files := append([]entry{
		{path: "usr/bin/cutbrief", data: data, executable: true},
		{path: "usr/share/doc/cutbrief/copyright", data: licences},
	}, more...)
	out, err := deb(t.control(version, files), files, made)
	if err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(dir, "cutbrief_"+version+"_"+t.arch+".deb"), out, 0o644)
}

// control is the paragraph that describes the package, with the fields that
// Debian Policy, chapter 5.3, asks of one (from memory).
func (t target) control(version string, files []entry) []byte {
	var size int
	for _, f := range files {
		size += len(f.data)
	}
	return fmt.Appendf(nil, `Package: cutbrief
Version: %s
Architecture: %s
Maintainer: cutbrief maintainers <maintainers@cutbrief.invalid>
Installed-Size: %d
Section: misc
Priority: optional
Description: size an air plasma cutting system to a customer's work
 cutbrief interviews a customer about what they cut, sizes a hand-held air plasma
 cutting system to it by rules that name their sources, and prints an honest
 one-page recommendation with a plan for the demonstration.
`, version, t.arch, (size+1023)/1024)
}

// deb is the package as one archive: its format, its description, its files.
// Source: deb(5), from memory.
func deb(control []byte, files []entry, made time.Time) ([]byte, error) {
	var sums bytes.Buffer
	for _, f := range files {
		fmt.Fprintf(&sums, "%x  %s\n", md5.Sum(f.data), f.path)
	}
	described, err := tarball([]entry{{path: "control", data: control}, {path: "md5sums", data: sums.Bytes()}}, made)
	if err != nil {
		return nil, err
	}
	filled, err := tarball(files, made)
	if err != nil {
		return nil, err
	}
	return archive([]entry{
		{path: "debian-binary", data: []byte("2.0\n")},
		{path: "control.tar.gz", data: described},
		{path: "data.tar.gz", data: filled},
	}, made), nil
}
