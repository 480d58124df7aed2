package rules

import (
	"slices"
	"testing"

	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// Each warning at, just within and just beyond what its own words say: less than
// 20 m, more than 100 m, more than the whole week, than the thickest, than the rare
// one, than anything that is cut.
func TestFlagsAtTheirLimits(t *testing.T) {
	use := func(u Use, week unit.Metre) Job { return Job{Use: unit.Known(u), CutPerWeek: unit.Known(week)} }
	piece := func(p Piece) Job { p.Metal = metal.MildSteel; return Job{Pieces: []Piece{p}} }
	of := func(id metal.ID, today ...Process) Job {
		return Job{Pieces: []Piece{{Metal: id}}, Today: unit.Known(today)}
	}
	t8, t8plus, none := unit.Known(unit.Millimetre(8)), unit.Known(unit.Millimetre(8.01)), unit.Known(unit.Millimetre(0))
	inWeek := func(week unit.Metre) Job { j := busy(Job{}, 20, 0.5); j.CutPerWeek = unit.Known(week); return j }
	for _, c := range []struct {
		id      string
		applies bool
		jobs    []Job
	}{
		{"little-production", true, []Job{use(Production, 19.99), use(Production, 0)}},
		{"little-production", false, []Job{use(Production, 20), use(Mixed, 5), use(Maintenance, 5), {Use: unit.Known(Production)}}},
		{"much-maintenance", true, []Job{use(Maintenance, 100.01)}},
		{"much-maintenance", false, []Job{use(Maintenance, 100), use(Mixed, 200), use(Production, 200), {Use: unit.Known(Maintenance)}}},
		{"busy-over-week", true, []Job{inWeek(9.99)}},
		{"busy-over-week", false, []Job{inWeek(10), busy(Job{}, 20, 0.5), use(Mixed, 1)}},
		{"everyday-over-thickest", true, []Job{piece(Piece{Everyday: t8plus, Thickest: t8}), piece(Piece{Everyday: unit.Known(unit.Millimetre(0.6)), Thickest: unit.Known(unit.Millimetre(0.5))})}},
		{"everyday-over-thickest", false, []Job{piece(Piece{Everyday: t8, Thickest: t8}), piece(Piece{Everyday: t8}), piece(Piece{Thickest: t8, Rarest: t8})}},
		{"thickest-over-rare", true, []Job{piece(Piece{Thickest: t8plus, Rarest: t8})}},
		{"thickest-over-rare", false, []Job{piece(Piece{Thickest: t8, Rarest: t8}), piece(Piece{Thickest: t8, Rarest: none}), piece(Piece{Thickest: t8})}},
		{"pierced-over-cut", true, []Job{piece(Piece{Pierced: t8plus, Thickest: t8}), piece(Piece{Bevelled: t8plus, Everyday: t8}), piece(Piece{Pierced: t8plus, Thickest: t8, Rarest: t8})}},
		{"pierced-over-cut", false, []Job{piece(Piece{Pierced: t8, Bevelled: t8, Thickest: t8}), piece(Piece{Pierced: t8plus, Bevelled: t8plus, Thickest: t8, Rarest: t8plus}), piece(Piece{Pierced: t8})}},
		{"metal-without-figures", true, []Job{of(metal.Other)}},
		{"metal-without-figures", false, []Job{of(metal.Stainless), {}}},
		{"gas-on-other-metals", true, []Job{of(metal.Stainless, OxyFuel), of(metal.Aluminium, OxyFuel), of(metal.Copper, OxyFuel), of(metal.CastIron, OxyFuel)}},
		{"gas-on-other-metals", false, []Job{of(metal.MildSteel, OxyFuel), of(metal.Galvanised, OxyFuel), of(metal.Stainless, OxyFuel, Shear), of(metal.Stainless, Shear), {Pieces: []Piece{{Metal: metal.Stainless}}}}},
		{"eyes", true, []Job{{Eyes: unit.Known(EyesNone)}, {Eyes: unit.Known(EyesSun)}, {Eyes: unit.Known(EyesOne)}}},
		{"eyes", false, []Job{{Eyes: unit.Known(EyesAll)}, {}}},
		{"no-ventilation", true, []Job{{Ventilation: unit.Known(VentNone)}}},
		{"no-ventilation", false, []Job{{Ventilation: unit.Known(VentGeneral)}, {}}},
	} {
		for _, j := range c.jobs {
			if got := slices.ContainsFunc(flags(nil, &j), func(f Flag) bool { return f.ID == c.id }); got != c.applies {
				t.Errorf("%s of %+v: %v", c.id, j, got)
			}
		}
	}
}

// Where tools end: the shear by gauge number, 10 in mild steel, 3.4 mm, and 12 in
// stainless, 2.8 mm; the largest nibbler at 3.2 mm, two thirds of it in stainless and
// 1.5 times it in aluminium (testdata/reference/mechanical.csv). Gas cuts what burns.
func TestWhereToolsEnd(t *testing.T) {
	for way, ends := range map[Process][]unit.Millimetre{ // mild and galvanised steel, stainless, aluminium, copper
		Shear: {3.4, 3.4, 2.8, 3.4, 0}, Nibbler: {3.2, 3.2, 2.1, 4.8, 0}, BandSaw: {0, 0, 0, 0, 0},
	} {
		for i, id := range []metal.ID{metal.MildSteel, metal.Galvanised, metal.Stainless, metal.Aluminium, metal.Copper} {
			if got, held := ToolLimit(way, id); got != ends[i] || held != (ends[i] > 0) {
				t.Errorf("%s in %s: %g mm, %v; want %g", way, id, got, held, ends[i])
			}
		}
	}
}
