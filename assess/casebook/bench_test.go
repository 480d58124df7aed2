package casebook

import (
	"testing"

	"cutbrief/rules/system"
)

func BenchmarkCases(b *testing.B) {
	for b.Loop() {
		Cases()
	}
}

func BenchmarkMake(b *testing.B) {
	seed := uint64(0)
	for b.Loop() {
		Make(seed, 1+int(seed%5), system.Demo())
		seed++
	}
}

// BenchmarkMark marks a practice in which nothing was asked, which makes the
// rules judge once for each fact.
func BenchmarkMark(b *testing.B) {
	c := Cases()[1]
	s := Start(&c, system.Demo())
	for b.Loop() {
		s.Mark(Decision{System: "demo-45", Cuts: []string{"everyday-straight"}})
	}
}
