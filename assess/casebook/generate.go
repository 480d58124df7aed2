package casebook

import (
	"fmt"
	"math/rand/v2"
	"strings"

	"cutbrief/rules"
	"cutbrief/rules/system"
)

// tries is how many situations are drawn before a range is said to have none.
const tries = 80

// Make makes a customer from a number: the same number, level and range give
// the same customer. level is 1 to 5. ok is false if the range has no system
// that suits any of the situations drawn. The situation is written as a case and
// read as one, so that it keeps to the same rules.
func Make(seed uint64, level int, offered system.Range) (c Customer, ok bool) {
	m := maker{rng: rand.New(rand.NewPCG(seed, uint64(level))), level: level}
	for range tries {
		text := m.write()
		list, _ := Read(strings.NewReader(text))
		if len(list) != 1 {
			continue
		}
		c := list[0]
		c.Name, c.Line, c.Seed = "", 0, seed
		c.Minutes = minutesMost
		if !decided(&c, offered) || !bites(&c, offered) {
			continue
		}
		c.Minutes = patienceFor(NewRoute(&c, offered).Minutes, c.Manner, level)
		return c, len(Check(&c, offered)) == 0
	}
	return Customer{}, false
}

// bites reports that whoever believes all that is first heard comes to another
// answer; a customer who says nothing wrong has nothing to bite with.
func bites(c *Customer, offered system.Range) bool {
	if len(c.Wrong) == 0 {
		return true
	}
	believed := clone(c.Facts)
	for _, a := range c.Wrong {
		believed.Set(a)
	}
	job, _ := believed.Job()
	heard, truth := rules.Judge(job, offered), rules.Judge(c.job(), offered)
	return !agree(&heard, &truth)
}

// decided reports a situation with one answer: a system, and one thing that
// decides.
func decided(c *Customer, offered system.Range) bool {
	r := rules.Judge(c.job(), offered)
	return r.Outcome == rules.Recommended && len(r.Critical.Tie) == 0 && len(Check(c, offered)) == 0
}

// patienceFor is how long a customer stays: more than the good way takes, less
// so at the hard levels and in a hurry. Common practice, no source.
func patienceFor(route int, m Manner, level int) int {
	factor := 2.8 - 0.2*float64(level)
	if m == Hurry {
		factor = 1.5
	}
	return min(minutesMost, int(float64(route)*factor)+1)
}

// maker draws situations.
type maker struct {
	rng    *rand.Rand
	level  int
	lines  []string
	manner Manner
}

func (m *maker) put(format string, args ...any) {
	m.lines = append(m.lines, fmt.Sprintf(format, args...))
}

func pick[T any](m *maker, list ...T) T { return list[m.rng.IntN(len(list))] }

// write draws one situation and writes it as a case.
func (m *maker) write() string {
	m.lines = nil
	var able []Manner
	for _, row := range manners {
		if row.level <= m.level && row.level >= m.level-1 {
			able = append(able, row.id)
		}
	}
	m.manner = pick(m, able...)
	m.put("case: made")
	m.put("level: %d", m.level)
	m.put("manner: %s", m.manner)
	m.put("minutes: %d", minutesMost)
	trade := pick(m, trades...)
	m.put("company: %s %s", pick(m, families...), trade.name)
	m.put("contact: %s %s", pick(m, firsts...), pick(m, families...))
	m.put("place: %s, Velmoor district", pick(m, "Orvenby", "Port Ansel", "Harrowfen", "Kettlemere", "Tessel Cross"))
	m.put("units: mm")
	m.work(&trade)
	m.how(&trade)
	m.site()
	m.wishes(&trade)
	return strings.Join(m.lines, "\n")
}

// ladder is thicknesses that are bought, in mm.
var ladder = []float64{1, 1.5, 2, 3, 4, 5, 6, 8, 10, 12, 15, 18, 20, 25, 30, 40}

// work draws metal, thicknesses and use, with what the manner makes of them.
func (m *maker) work(t *trade) {
	id := pick(m, t.metals...)
	m.put("metals: %s", id)
	everyday := t.from + m.rng.IntN(t.to-t.from+1)
	if m.manner == Contradicts {
		everyday = max(everyday, 2)
	}
	thickest := everyday + m.rng.IntN(3)
	if m.manner == WrongUnit {
		m.inWrongUnit(id)
	} else {
		m.thicknesses(id, everyday, thickest)
	}
	use := pick(m, t.uses...)
	length, days := 2+m.rng.IntN(14), 2+m.rng.IntN(4)
	switch {
	case m.manner == SaysMaking:
		use, length, days = "maintenance", 1+m.rng.IntN(3), 4
		m.put("wrong use: production")
	case use == "production":
		length, days = 30+m.rng.IntN(40), 5
	}
	m.put("use: %s", use)
	m.put("cut-length: %d m a day", length)
	m.put("days-a-week: %d", days)
	m.put("busy-cuts: %d", 3+m.rng.IntN(4))
	m.put("busy-length: %d mm", 100*(1+m.rng.IntN(3)))
	if m.manner == AsksBack {
		m.put("unclear: use, thickest-clean %s, start", id)
	}
}

// thicknesses writes them, and what is first said in their place.
func (m *maker) thicknesses(id string, everyday, thickest int) {
	rare := thickest + 1 + m.rng.IntN(2)
	for i, key := range []string{"everyday-thickness", "thickest-clean", "rare-thickest"} {
		m.put("%s %s: %g mm", key, id, ladder[[]int{everyday, thickest, rare}[i]])
	}
	switch m.manner {
	case Vague:
		m.put("unclear: everyday-thickness %s, thickest-clean %s, rare-thickest %s, cut-length", id, id, id)
	case Biggest:
		m.put("wrong thickest-clean %s: %g mm", id, 3*ladder[thickest])
		m.put("wrong rare-thickest %s: %g mm", id, 4*ladder[rare])
	case Contradicts:
		m.put("wrong thickest-clean %s: %g mm", id, ladder[everyday-1-m.rng.IntN(2)])
	}
	if m.level >= 4 && m.manner != Hurry {
		m.put("unclear: everyday-thickness %s", id)
	}
}

// inWrongUnit writes thicknesses in gauge or inches that are spoken of in
// millimetres or centimetres.
func (m *maker) inWrongUnit(id string) {
	if id != "mild-steel" && id != "galvanised-steel" && id != "stainless" || m.rng.IntN(2) == 0 {
		wrong := map[string]string{"1/4": "2.5", "3/8": "3.8", "1/2": "5", "5/8": "6.3"}
		sizes := []string{"1/4", "3/8", "1/2", "5/8"}
		i := m.rng.IntN(3)
		m.put("everyday-thickness %s: %s in", id, sizes[i])
		m.put("thickest-clean %s: %s in", id, sizes[i+1])
		m.put("wrong thickest-clean %s: %s mm", id, wrong[sizes[i+1]])
		m.put("rare-thickest %s: 1 in", id)
		return
	}
	gauge := 8 + 2*m.rng.IntN(3)
	m.put("everyday-thickness %s: %d ga", id, gauge+4)
	m.put("thickest-clean %s: %d ga", id, gauge)
	m.put("wrong thickest-clean %s: %d mm", id, gauge)
	m.put("wrong everyday-thickness %s: %d mm", id, gauge+4)
	m.put("rare-thickest %s: none", id)
}

// how draws the way it is cut.
func (m *maker) how(t *trade) {
	m.put("start: edge")
	m.put("features: %s", pick(m, t.features...))
	m.put("edge-next: %s", pick(m, t.edges...))
	m.put("guidance: %s", pick(m, "by-hand", "guided"))
	m.put("places: %s", pick(m, t.places...))
}

// site draws power and air that serve most of the systems.
func (m *maker) site() {
	m.put("power-source: mains")
	if m.rng.IntN(3) == 0 {
		m.put("supply-phase: three")
		m.put("supply-voltage: 400 V")
		m.put("breaker: %d A", pick(m, 32, 63))
	} else {
		m.put("supply-phase: single")
		m.put("supply-voltage: %d V", pick(m, 230, 240))
		m.put("breaker: %d A", pick(m, 16, 32, 63))
	}
	m.put("cord-length: none")
	m.put("air-drier: %s", pick(m, "separator", "refrigerant", "desiccant"))
	m.put("air-delivery: %d l/min", 200+50*m.rng.IntN(5))
	m.put("air-pressure: 7 bar")
	m.put("air-receiver: %d l", 50*(1+m.rng.IntN(6)))
	m.put("hose-bore: 10 mm")
	m.put("hose-length: %d m", 5+5*m.rng.IntN(3))
	m.put("altitude: %d m", 20*(1+m.rng.IntN(12)))
	m.put("hot-work: %s", pick(m, "none", "permit", "combustibles"))
}

// wishes draws what they think of today's way, and who decides.
func (m *maker) wishes(t *trade) {
	order := m.rng.Perm(len(t.annoys))
	m.put("today: %s", pick(m, t.today...))
	m.put("annoys-most: %s", t.annoys[order[0]])
	m.put("annoys-next: %s", t.annoys[order[1]])
	if m.manner == FixedIdea {
		m.put("wrong annoys-most: %s", t.annoys[order[2]])
		m.put("wrong annoys-next: nothing")
	}
	m.put("experience: %s", pick(m, "new", "some", "experienced"))
	m.put("eye-protection: %s", pick(m, "none", "wrong-shade", "operator", "everyone"))
	m.put("ventilation: %s", pick(m, "none", "general", "extraction", "outdoors"))
	m.put("decides: %s", pick(m, "the owner", "the foreman, with the owner", "the buying office, on the foreman's word"))
}

// trade is one kind of firm. from and to are places in the ladder of
// thicknesses. All of it is invented for the demo.
type trade struct {
	name     string
	metals   []string
	from, to int
	uses     []string
	features []string
	edges    []string
	places   []string
	today    []string
	annoys   []string // at least three
}

var trades = []trade{
	{"Farm Repairs", []string{"mild-steel"}, 4, 8, []string{"maintenance"}, []string{"straight", "straight, shapes"}, []string{"welded", "scrap"},
		[]string{"bench", "bench, in-place"}, []string{"oxy-fuel", "abrasive-disc"}, []string{"costs-too-much", "warps", "too-slow"}},
	{"Gates and Stairs", []string{"mild-steel", "stainless"}, 2, 6, []string{"mixed", "maintenance"}, []string{"straight, shapes", "shapes, circles"}, []string{"painted-seen", "welded"},
		[]string{"bench"}, []string{"abrasive-disc", "band-saw"}, []string{"rough-edge", "too-slow", "hard-to-use"}},
	{"Trailer Works", []string{"mild-steel", "aluminium"}, 2, 5, []string{"production", "mixed"}, []string{"straight", "straight, shapes"}, []string{"welded"},
		[]string{"bench"}, []string{"band-saw, abrasive-disc", "sent-out"}, []string{"too-slow", "costs-too-much", "rough-edge"}},
	{"Ducting", []string{"galvanised-steel", "stainless"}, 0, 3, []string{"mixed", "production"}, []string{"straight, shapes", "circles, shapes"}, []string{"scrap", "painted-seen"},
		[]string{"bench, in-place"}, []string{"nibbler", "shear, nibbler"}, []string{"warps", "too-slow", "hard-to-use"}},
	{"Harbour Maintenance", []string{"mild-steel", "galvanised-steel"}, 5, 9, []string{"maintenance"}, []string{"straight, gaps", "straight"}, []string{"welded", "scrap"},
		[]string{"in-place", "in-place, up-high"}, []string{"oxy-fuel", "abrasive-disc, oxy-fuel"}, []string{"too-heavy", "too-thick", "gaps"}},
}

var (
	firsts   = []string{"Alma", "Birger", "Dagny", "Eskil", "Frida", "Gorm", "Hedda", "Ivar", "Kaja", "Lorenz", "Maren", "Odd", "Pia", "Rolf", "Sunniva", "Tarjei"}
	families = []string{"Aldmoor", "Brennick", "Callow", "Drosten", "Ellmark", "Farrent", "Gaskin", "Holmar", "Inswell", "Jarrold", "Kesten", "Lowmark", "Marrick", "Norlund", "Osmere", "Pelling"}
)
