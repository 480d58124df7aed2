package unit_test

import (
	"testing"

	"cutbrief/rules/unit"
)

func BenchmarkRead(b *testing.B) {
	for b.Loop() {
		if _, err := unit.Read("1-1/4 in", unit.Thickness, unit.Metric, unit.SteelGauge); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkShow(b *testing.B) {
	for b.Loop() {
		unit.Show(unit.Quantity{Value: 12, Kind: unit.Thickness}, unit.Inch, unit.Up)
	}
}
