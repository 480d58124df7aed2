package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"cutbrief/assess/store"
)

// target is one document to write: where, and the briefs from:to it holds.
type target struct {
	path     string // "-" is standard output
	from, to int
	data     []byte
}

// targets says which documents a job makes: one file for each visit in a
// folder, else all of them in one document. A PDF holds one page.
func (job briefJob) targets() ([]target, error) {
	if job.out == "-" || !isFolder(job.out) {
		if job.format == pdfFormat && len(job.files) > 1 {
			return nil, misuse("a PDF holds the page of one visit", "name a folder in --out to get one file for each")
		}
		return []target{{path: job.out, to: len(job.files)}}, nil
	}
	var list []target
	taken := map[string]string{}
	for i, file := range job.files {
		path := filepath.Join(job.out, nameAfter(file, job.format))
		alike := store.Alike(path)
		if other, ok := taken[alike]; ok {
			return nil, misuse(fmt.Sprintf("%s and %s would both be written to %s", other, file, path), "name them one at a time with --out")
		}
		taken[alike] = file
		list = append(list, target{path: path, from: i, to: i + 1})
	}
	return list, nil
}

// nameAfter is the name of the document of a visit.
func nameAfter(file string, f format) string {
	if file == "-" {
		file = "brief"
	}
	name := filepath.Base(file)
	return strings.TrimSuffix(name, filepath.Ext(name)) + f.ending()
}

// isFolder reports whether path names a folder. One that does not exist is
// named as a folder by a separator at its end; writing there will say so.
func isFolder(path string) bool {
	if os.IsPathSeparator(path[len(path)-1]) {
		return true
	}
	info, err := os.Stat(path)
	return err == nil && info.IsDir()
}
