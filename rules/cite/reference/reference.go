// Package reference reads the values from outside that results are held
// against. It is for tests only: no code of the program may import it. The files
// are those of testdata/reference; every row says where its values are from.
package reference

import (
	"encoding/csv"
	"io/fs"
	"strconv"
	"strings"
	"testing"
)

// Table is one file of values: its rows, each by the names of the columns.
type Table []map[string]string

// Read reads the file called name.
func Read(t testing.TB, files fs.FS, name string) Table {
	t.Helper()
	f, err := files.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var list Table
	for _, row := range rows[1:] {
		fields := map[string]string{}
		for i, head := range rows[0] {
			fields[head] = row[i]
		}
		list = append(list, fields)
	}
	return list
}

// Where returns the rows whose column starts with text, and at least one.
func (b Table) Where(t testing.TB, column, text string) Table {
	t.Helper()
	var found Table
	for _, row := range b {
		if strings.HasPrefix(row[column], text) {
			found = append(found, row)
		}
	}
	if len(found) == 0 {
		t.Fatalf("no row has %s %q", column, text)
	}
	return found
}

// Number reads a figure.
func Number(t testing.TB, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}
