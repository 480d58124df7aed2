package rules

import (
	"cutbrief/rules/size"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// best is the leading system under a demand: its index, or −1 if none is
// offered, and its status. A system that does not come before the one that leads
// so far is only looked at for standing better.
func best(d *demand, systems []system.System) (int, rank) {
	first, status := -1, short
	for i := range systems {
		limit := status
		if first >= 0 && !before(&systems[i], &systems[first]) {
			limit--
		}
		if limit < fits {
			continue
		}
		if s := statusUpTo(d, &systems[i], limit); s <= limit {
			first, status = i, s
		}
	}
	return first, status
}

// clone copies a job so that its pieces can be changed apart.
func (j *Job) clone() Job {
	c := *j
	c.Pieces = append([]Piece(nil), j.Pieces...)
	return c
}

// marginRules ties each thickness to the capability that limits it, with the
// factor it is multiplied by.
var marginRules = []struct {
	fact  Fact
	limit func(*demand, *system.System) float64 // of mild steel
}{
	{FactThickest, func(d *demand, s *system.System) float64 { return float64(s.Rated) / d.multiple.Floor }},
	{FactRarest, func(_ *demand, s *system.System) float64 { return float64(s.Severance) }},
	{FactPierced, func(_ *demand, s *system.System) float64 { t, _ := size.Pierce(s); return float64(t) }},
}

// margins says, for each thickness told, how thick it may become before the
// leading system is no longer right, and what would be right then.
func margins(d *demand, systems []system.System) []Margin {
	first, status := best(d, systems)
	moved := d.job.clone() // one copy serves every try
	var list []Margin
	for i := range d.job.Pieces {
		p := &d.job.Pieces[i]
		factor, cuttable := equivalence(&systems[first], p.Metal)
		for _, row := range marginRules {
			now, known := thicknessOf(p, row.fact).Get()
			if !known || now == 0 || !cuttable {
				continue
			}
			m := Margin{Asked: Asked{row.fact, p.Metal}, Now: mm(now), HoldsTo: mm(unit.Millimetre(row.limit(d, &systems[first]) / factor))}
			m.shorten(&moved, systems, first, status, i)
			m.beyond(&moved, systems, i)
			if row.fact == FactThickest {
				m.lower(d, &moved, systems, first, i)
			}
			list = append(list, m)
		}
	}
	return list
}

// shorten draws HoldsTo in where another rule gives way before the capability
// that limits this thickness: the breaker as the output grows, or a complaint
// that weighs otherwise in thicker work.
func (m *Margin) shorten(moved *Job, systems []system.System, first int, status rank, piece int) {
	stands := func(t float64) bool {
		i, s := then(moved, systems, m.Asked, piece, unit.Millimetre(t))
		return i == first && s == status
	}
	low, high := m.Now.Value, m.HoldsTo.Value
	switch heavy := float64(heavySection); {
	case high <= low:
		return
	case low < heavy && heavy < high && !stands(heavy): // heavy section may decide otherwise from there on
		high = heavy
	case stands(high):
		return
	}
	for range 24 { // to within a millionth of the way
		if mid := (low + high) / 2; stands(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	m.HoldsTo.Value = low
}

// beyond says what leads just above HoldsTo, and how it stands.
func (m *Margin) beyond(moved *Job, systems []system.System, piece int) {
	i, status := then(moved, systems, m.Asked, piece, unit.Millimetre(m.HoldsTo.Value*(1+1e-6)))
	if m.ThenStatus = standing[status]; status != short {
		m.Then = &systems[i]
	}
}

// then is the leading system with one thickness of a job changed, and its
// standing; the job is left as it was.
func then(moved *Job, systems []system.System, a Asked, piece int, t unit.Millimetre) (int, rank) {
	p := &moved.Pieces[piece]
	told := *p
	defer func() { *p = told }()
	p.put(a.Fact, t)
	other := newDemand(moved)
	return best(&other, systems)
}

// lower finds the thickness at which the next smaller system would lead: the
// largest one that another system's rating allows and that then does lead.
func (m *Margin) lower(d *demand, moved *Job, systems []system.System, first, piece int) {
	p := &d.job.Pieces[piece]
	for i := len(systems) - 1; i >= 0; i-- { // most ranges list the smallest first: the nearest below spares the rest
		g := &systems[i]
		factor, cuttable := equivalence(g, p.Metal)
		if !cuttable || !before(g, &systems[first]) {
			continue
		}
		t := float64(g.Rated) / (factor * d.multiple.Floor)
		if down, known := m.DownTo.Get(); t >= m.Now.Value || (known && t <= down.Value) {
			continue
		}
		if lead, status := then(moved, systems, m.Asked, piece, unit.Millimetre(t)); lead == i && status != short {
			m.DownTo, m.Smaller = unit.Known(mm(unit.Millimetre(t))), g
		}
	}
}
