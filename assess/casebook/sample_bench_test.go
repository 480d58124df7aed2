package casebook

import (
	"testing"

	"cutbrief/assess"
)

func BenchmarkDecode(b *testing.B) {
	data, _ := files.ReadFile("visit/shipyard-crew.json")
	b.SetBytes(int64(len(data)))
	b.ReportAllocs()
	for b.Loop() {
		if _, _, err := assess.Decode(data); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkEncode(b *testing.B) {
	v, _ := DemoVisit("shipyard-crew")
	b.ReportAllocs()
	for b.Loop() {
		if _, err := v.Encode(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkJob(b *testing.B) {
	v, _ := DemoVisit("shipyard-crew")
	b.ReportAllocs()
	for b.Loop() {
		v.Job()
	}
}

func BenchmarkNextOpen(b *testing.B) {
	v, _ := DemoVisit("shipyard-crew")
	b.ReportAllocs()
	for b.Loop() {
		v.NextOpen()
	}
}
