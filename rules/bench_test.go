package rules

import (
	"testing"

	"cutbrief/rules/metal"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// fullyTold is a visit of two metals with every answer told, as long as a job
// gets in practice.
func fullyTold() Job {
	j := answered(mildSteel(10, Mixed))
	j.Pieces = append(j.Pieces, Piece{Metal: metal.Stainless, Everyday: unit.Known(unit.Millimetre(3)), Thickest: unit.Known(unit.Millimetre(6)),
		Rarest: unit.Known(unit.Millimetre(8)), Pierced: unit.Known(unit.Millimetre(3)), Bevelled: unit.Known(unit.Millimetre(0))})
	return j
}

// BenchmarkJudgeFullyTold judges the built-in range for the longest job.
func BenchmarkJudgeFullyTold(b *testing.B) {
	job, offered := fullyTold(), system.Demo()
	b.ReportAllocs()
	for b.Loop() {
		Judge(job, offered)
	}
}

// BenchmarkEvaluateFullyTold does the same with inputs, margins and what is open.
func BenchmarkEvaluateFullyTold(b *testing.B) {
	job, offered := fullyTold(), system.Demo()
	b.ReportAllocs()
	for b.Loop() {
		Evaluate(job, offered)
	}
}

// BenchmarkListRow is what a list of visits asks of one: the verdict, the first
// choice, what decides, and whether that is firm.
func BenchmarkListRow(b *testing.B) {
	offered := system.Demo()
	for name, job := range map[string]Job{"fullyTold": fullyTold(), "half": mildSteel(10, Mixed)} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Summarise(job, offered)
			}
		})
	}
}
