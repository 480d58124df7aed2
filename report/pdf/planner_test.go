package pdf

import (
	"cmp"
	"fmt"
	"maps"
	"os"
	"slices"
	"strconv"
	"testing"

	"cutbrief/assess"
	"cutbrief/assess/casebook"
	"cutbrief/report"
	"cutbrief/rules/message"
	"cutbrief/rules/system"

	"pgregory.net/rapid"
)

// anyZones are small zones of blocks with heights and losses alone.
func anyZones(t *rapid.T) []zone {
	formOf := rapid.Custom(func(t *rapid.T) measured {
		return measured{rows: rapid.IntRange(0, 6).Draw(t, "rows"), loss: rapid.IntRange(0, 9).Draw(t, "loss")}
	})
	blockOf := rapid.Custom(func(t *rapid.T) *block {
		return &block{measured: rapid.SliceOfN(formOf, 1, 3).Draw(t, "forms")}
	})
	columnOf := rapid.Custom(func(t *rapid.T) column { return column{blocks: rapid.SliceOfN(blockOf, 1, 2).Draw(t, "blocks")} })
	layoutOf := rapid.Custom(func(t *rapid.T) layout {
		return layout{loss: rapid.IntRange(0, 3).Draw(t, "loss"), head: rapid.IntRange(0, 2).Draw(t, "head"), columns: rapid.SliceOfN(columnOf, 1, 2).Draw(t, "columns")}
	})
	zoneOf := rapid.Custom(func(t *rapid.T) zone { return zone{rapid.SliceOfN(layoutOf, 1, 2).Draw(t, "layouts")} })
	return rapid.SliceOfN(zoneOf, 1, 3).Draw(t, "zones")
}

// every is every choice there is, tried one by one: rows and loss of each.
func every(zones []zone) (list [][2]int) {
	if len(zones) == 0 {
		return [][2]int{{0, 0}}
	}
	for _, rest := range every(zones[1:]) {
		for _, l := range zones[0].layouts {
			choices := [][2]int{{0, 0}} // the highest column so far, and the loss
			for _, c := range l.columns {
				stacks := [][2]int{{0, 0}}
				for _, b := range c.blocks {
					var longer [][2]int
					for _, s := range stacks {
						for _, f := range b.measured {
							longer = append(longer, [2]int{s[0] + f.rows, s[1] + f.loss})
						}
					}
					stacks = longer
				}
				var wider [][2]int
				for _, have := range choices {
					for _, s := range stacks {
						wider = append(wider, [2]int{max(have[0], s[0]), have[1] + s[1]})
					}
				}
				choices = wider
			}
			for _, c := range choices {
				list = append(list, [2]int{rest[0] + c[0] + l.head + l.foot, rest[1] + c[1] + l.loss})
			}
		}
	}
	return list
}

// The plan loses exactly as little as the best of all choices, and what it
// chooses takes no more rows than there are.
func TestThePlanIsTheBestOfAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		zones := anyZones(t)
		most := 40
		p := planned(zones, most)
		all := every(zones)
		for rows := range most + 1 {
			best := never
			for _, c := range all {
				if c[0] <= rows {
					best = min(best, c[1])
				}
			}
			if got := p.loss(rows); min(got, never) != best {
				t.Fatalf("%d rows: loses %d, the best loses %d", rows, got, best)
			}
			if best == never {
				continue
			}
			loss, taken := 0, 0
			for _, z := range p.at(rows) {
				loss, taken = loss+z.loss, taken+z.rows
				for _, c := range z.columns {
					for _, f := range c {
						loss += f.loss
					}
				}
			}
			if loss != best || taken > rows {
				t.Fatalf("%d rows: takes %d and loses %d, the best %d", rows, taken, loss, best)
			}
		}
	})
}

// shed is what was done before a page was planned: one layout, one grid, and
// block by block, the least important first, the next shorter form until all
// fits; then each step that was not needed is taken back, the last first.
func shed(zones []zone, rows int) []choice {
	order := map[message.ID]int{"picture": 1, "notes": 2, "systems not taken": 3, "needed and given": 4, "what decides": 5, "reasons": 6, "to confirm": 7, "demonstration": 8, "cost": 9, "cautions": 11}
	type at struct{ zone, column, block int }
	var list []choice
	var steps []at
	for i := range zones {
		l := &zones[i].layouts[0]
		c := choice{layout: l}
		for k, col := range l.columns {
			c.columns = append(c.columns, nil)
			for n, b := range col.blocks {
				c.columns[k] = append(c.columns[k], b.measured[0])
				for range len(b.measured) - 1 {
					steps = append(steps, at{i, k, n})
				}
			}
		}
		list = append(list, c)
	}
	name := func(s at) message.ID { return zones[s.zone].layouts[0].columns[s.column].blocks[s.block].name }
	slices.SortStableFunc(steps, func(a, b at) int {
		return cmp.Compare(cmp.Or(order[name(a)], 10), cmp.Or(order[name(b)], 10))
	})
	form := map[at]int{}
	use := func(s at, by int) {
		form[s] += by
		list[s.zone].columns[s.column][s.block] = zones[s.zone].layouts[0].columns[s.column].blocks[s.block].measured[form[s]]
	}
	over := func() bool {
		taken := 0
		for i := range list {
			list[i].rows = list[i].head + list[i].foot
			for _, c := range list[i].columns {
				list[i].rows = max(list[i].rows, rowsOf(c)+list[i].head+list[i].foot)
			}
			taken += list[i].rows
		}
		return taken > rows
	}
	var taken []at
	for _, s := range steps {
		if !over() {
			break
		}
		use(s, 1)
		taken = append(taken, s)
	}
	for i := len(taken) - 1; i >= 0; i-- {
		if use(taken[i], -1); over() {
			use(taken[i], 1)
		}
	}
	over()
	return list
}

// lossOf adds up what a choice loses.
func lossOf(list []choice) int {
	loss := 0
	for _, z := range list {
		loss += z.loss
		for _, c := range z.columns {
			for _, f := range c {
				loss += f.loss
			}
		}
	}
	return loss
}

// visits are n invented ones: half varied from the samples, half customers made
// to be practised on.
func visits(n int, each func(int, *assess.Visit)) {
	i := 0
	for _, data := range casebook.ManyVisits(n/2, 7) {
		if v, _, err := assess.Decode(data); err == nil {
			each(i, v)
			i++
		}
	}
	for seed := uint64(0); i < n; seed++ {
		if c, ok := casebook.Make(seed, 1+int(seed%5), system.Demo()); ok {
			each(i, c.Facts)
			i++
		}
	}
}

// The plan never loses more than shedding did, by the same points, on the same
// grid. CUTBRIEF_VISITS=10000 prints the table for as many visits; German and
// English, A4 and Letter take turns.
func TestPlannedAgainstShed(t *testing.T) {
	n, _ := strconv.Atoi(os.Getenv("CUTBRIEF_VISITS"))
	n = max(n, 60)
	f, err := newFaces()
	if err != nil {
		t.Fatal(err)
	}
	missing := map[message.ID]*[2]int{}
	var worst, hurt [2]int
	rows := make([][2]int, 0, n)
	visits(n, func(i int, v *assess.Visit) {
		f.known = map[paragraph]broken{}
		b := report.Build(v, system.Demo(), report.Options{Words: languages()[i%2]})
		b = cleaned(&cleaner{faces: f}, b)
		p := papers[i/2%2]
		width, height, _ := p.size()
		c := &canvas{faces: f, words: b.Words, brief: &b, full: span{sideMargin, width - 2*sideMargin}}
		zones := c.zones(message.Message{})
		c.lay(zones, true)
		zones[len(zones)-1].layouts[0].head = 2
		room := int((height - topMargin - bottomMargin) / 1.65)
		var losses [2]int
		for k, list := range [][]choice{shed(zones, room), planned(zones, most).at(room)} {
			losses[k] = lossOf(list)
			lacks := map[message.ID]bool{}
			for _, g := range left(list) {
				lacks[g.what] = true
			}
			for what := range lacks {
				if missing[what] == nil {
					missing[what] = &[2]int{}
				}
				missing[what][k]++
			}
			worst[k] = max(worst[k], losses[k])
			if losses[k] >= lossLines {
				hurt[k]++
			}
		}
		if losses[1] > losses[0] {
			t.Errorf("visit %d: planned loses %d, shedding %d", i, losses[1], losses[0])
		}
		rows = append(rows, losses)
	})
	median := func(k int) int {
		slices.SortFunc(rows, func(a, b [2]int) int { return a[k] - b[k] })
		return rows[len(rows)/2][k]
	}
	table := fmt.Sprintf("| %d visits | shed | planned |\n|---|---|---|\n", n)
	line := func(what string, of [2]int) { table += fmt.Sprintf("| %s | %d | %d |\n", what, of[0], of[1]) }
	line("pages that lack something decisive, or a text's end", hurt)
	line("median loss", [2]int{median(0), median(1)})
	line("worst loss", worst)
	for _, what := range slices.Sorted(maps.Keys(missing)) {
		line("pages without: "+string(what), *missing[what])
	}
	t.Log("\n" + table)
}
