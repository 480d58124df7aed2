package system

import (
	"fmt"
	"testing"
)

// The built-in range is read at every start of the program.
func BenchmarkDemo(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		Demo()
	}
}

// The largest range a file may hold.
func BenchmarkReadFull(b *testing.B) {
	var rows [][]string
	for i := range MaxSystems {
		rows = append(rows, good("id", fmt.Sprint("s-", i), "name", fmt.Sprint("S ", i)))
	}
	text := fileOf(rows...)
	b.ReportAllocs()
	for b.Loop() {
		read(text)
	}
}

func BenchmarkFingerprint(b *testing.B) {
	r := Demo()
	for b.Loop() {
		Fingerprint(r)
	}
}
