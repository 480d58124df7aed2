package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// The document beside them names each query that the test of the database engine runs, and no
// other, and the export it shows is the one that is read.
func TestTheDocumentsNameTheQueries(t *testing.T) {
	dir := filepath.Join("..", "..", "testdata", "warehouse")
	document, err := os.ReadFile(filepath.Join(dir, "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	named := map[string]bool{}
	for _, name := range regexp.MustCompile("`([a-z]+\\.sql)`").FindAllSubmatch(document, -1) {
		named[string(name[1])] = true
	}
	files, err := filepath.Glob(filepath.Join(dir, "*.sql"))
	if err != nil || len(files) == 0 {
		t.Fatal(files, err)
	}
	for _, file := range files {
		if name := filepath.Base(file); !named[name] {
			t.Errorf("README.md does not name %s", name)
		}
		delete(named, filepath.Base(file))
	}
	for name := range named {
		t.Errorf("README.md names %s, which is not there", name)
	}
	program, err := os.ReadFile(filepath.Join(dir, "warehouse_test.go"))
	if err != nil {
		t.Fatal(err)
	}
	fields := regexp.MustCompile(`"--fields", "([a-z,]+)"`).FindSubmatch(program)
	if fields == nil || !strings.Contains(string(document), "--fields "+string(fields[1])+" > export.ndjson") {
		t.Errorf("README.md does not show the export of the fields %s", fields)
	}
}
