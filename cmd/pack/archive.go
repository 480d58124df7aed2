package main

import (
	"archive/tar"
	"bytes"
	"fmt"
	"path"
	"slices"
	"strings"
	"time"
)

// tarball packs files with the folders they are in, all of the superuser and of
// one time, and compresses them.
func tarball(files []entry, made time.Time) ([]byte, error) {
	var b bytes.Buffer
	w := tar.NewWriter(&b)
	var all []entry
	for _, dir := range folders(files) {
		all = append(all, entry{path: dir, executable: true}) // the slash at its end makes it a folder
	}
	for _, f := range append(all, files...) {
		mode := int64(0o644)
		if f.executable {
			mode = 0o755
		}
		if err := w.WriteHeader(&tar.Header{Name: "./" + f.path, Size: int64(len(f.data)), Mode: mode, ModTime: made, Uname: "root", Gname: "root", Format: tar.FormatGNU}); err != nil {
			return nil, err
		}
		if _, err := w.Write(f.data); err != nil {
			return nil, err
		}
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return compressed(b.Bytes()), nil
}

// folders are all folders above the files, each behind the one it lies in.
func folders(files []entry) []string {
	list := []string{""}
	for _, f := range files {
		for dir := path.Dir(f.path); dir != "."; dir = path.Dir(dir) {
			list = append(list, dir+"/")
		}
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// archive is an archive as ar(1) writes them: a line that names the kind, and
// before each file its name, time, owner, mode and size in columns; a file of
// an odd size is followed by a newline.
func archive(files []entry, made time.Time) []byte {
	var b strings.Builder
	b.WriteString("!<arch>\n")
	for _, f := range files {
		fmt.Fprintf(&b, "%-16s%-12d%-6d%-6d%-8o%-10d`\n", f.path, made.Unix(), 0, 0, 0o100644, len(f.data))
		b.Write(f.data)
		if len(f.data)%2 == 1 {
			b.WriteByte('\n')
		}
	}
	return []byte(b.String())
}
