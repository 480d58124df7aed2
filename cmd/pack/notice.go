package main

import (
	"bytes"
	"errors"
	"fmt"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// noticesFile holds the licences of everything that is built in: most of them
// ask that their text goes along with a copy.
const noticesFile = "LICENCES.txt"

// module is one of the modules built in, and the folder with its source.
type module struct{ path, version, dir string }

// ours is the path of the program's own module.
const ours = "cutbrief"

// fonts is the licence of the letters on the printed page, below our module.
const fonts = "report/pdf/FONT-LICENSE"

// notices are the licences of what these targets are built from, as one text.
func notices(list ...target) ([]byte, error) {
	modules, err := modulesOf(list)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	b.WriteString("cutbrief and all that is built into it, each with its licence. The standard\nlibrary of Go has the licence of golang.org/x/text.\n")
	for _, m := range modules {
		texts, err := licencesIn(m.dir)
		if err != nil {
			return nil, fmt.Errorf("%s %s: %w", m.path, m.version, err)
		}
		if m.path == ours {
			font, err := os.ReadFile(filepath.Join(m.dir, filepath.FromSlash(fonts)))
			if err != nil {
				return nil, err
			}
			texts = append(texts, bytes.TrimSpace(font))
		}
		fmt.Fprintf(&b, "\n%s\n%s\n\n%s\n", strings.Repeat("=", 72), strings.TrimSpace(m.path+" "+m.version), bytes.Join(texts, []byte("\n\n")))
	}
	return b.Bytes(), nil
}

// modulesOf are all modules with a package in a program for one of the targets,
// ours first and the others by name.
func modulesOf(list []target) ([]module, error) {
	seen := map[module]bool{}
	const form = "{{with .Module}}{{.Path}}\t{{.Version}}\t{{.Dir}}{{end}}"
	for _, t := range list {
		cmd := exec.Command("go", "list", "-deps", "-f", form, program)
		cmd.Env = t.env()
		out, err := cmd.Output()
		if err != nil {
			return nil, fmt.Errorf("list the modules for %s: %w", t, err)
		}
		for line := range strings.Lines(string(out)) {
			if f := strings.Split(strings.TrimRight(line, "\r\n"), "\t"); len(f) == 3 {
				seen[module{f[0], f[1], f[2]}] = true
			}
		}
	}
	name := func(m module) string { return strings.TrimPrefix(m.path, ours) }
	return slices.SortedFunc(maps.Keys(seen), func(a, b module) int { return strings.Compare(name(a), name(b)) }), nil
}

// speaks is found in every text of a licence.
var speaks = regexp.MustCompile(`(?i)licen[cs]e|permission|redistribution`)

// errNoLicence means that we may not hand the module out.
var errNoLicence = errors.New("no licence found")

// licencesIn are the texts of the licence files in a folder. Where there is
// none, the page that introduces the module may name its licence.
func licencesIn(dir string) ([][]byte, error) {
	files, err := read(dir)
	for _, beginnings := range [][]string{{"LICEN", "COPYING", "NOTICE"}, {"README"}} {
		var texts [][]byte
		for _, f := range files {
			begins := func(with string) bool { return strings.HasPrefix(strings.ToUpper(f.path), with) }
			if slices.ContainsFunc(beginnings, begins) && speaks.Match(f.data) {
				texts = append(texts, bytes.TrimSpace(f.data))
			}
		}
		if err != nil || len(texts) > 0 {
			return texts, err
		}
	}
	return nil, errNoLicence
}
