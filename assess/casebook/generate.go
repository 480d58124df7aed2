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
	g := generator{rng: rand.New(rand.NewPCG(seed, uint64(level))), level: level}
	for range tries {
		list, _ := Read(strings.NewReader(g.write()))
		if len(list) != 1 {
			continue
		}
		c := list[0]
		c.Name, c.Line, c.Seed, c.ours = "", 0, seed, true
		c.Minutes = minutesMost
		r := rules.Judge(c.job(), offered)
		oneAnswer := r.Outcome == rules.Recommended && len(r.Critical.Tie) == 0 // a system, and one thing that decides
		if !oneAnswer || len(Check(&c, offered)) > 0 || !misleads(&c, offered) {
			continue
		}
		// They stay for more than the good way takes, less so at the hard levels and in
		// a hurry. Common practice, no source.
		patience := 2.8 - 0.2*float64(level)
		if c.Manner == Hurry {
			patience = 1.5
		}
		c.Minutes = min(minutesMost, int(float64(NewRoute(&c, offered).Minutes)*patience)+1)
		return c, len(Check(&c, offered)) == 0
	}
	return Customer{}, false
}

// misleads reports that whoever believes all that is first heard comes to
// another answer; a customer who says nothing wrong passes.
func misleads(c *Customer, offered system.Range) bool {
	believed := c.Facts.Clone()
	for _, a := range c.Wrong {
		believed.Set(a)
	}
	job, _ := believed.Job()
	heard, truth := rules.Judge(job, offered), rules.Judge(c.job(), offered)
	return len(c.Wrong) == 0 || !agree(&heard, &truth)
}

// generator draws situations.
type generator struct {
	rng    *rand.Rand
	level  int
	text   strings.Builder
	manner Manner
}

// put writes lines of a case.
func (g *generator) put(format string, args ...any) { fmt.Fprintf(&g.text, format+"\n", args...) }

// n draws a number from least on, one of so many.
func (g *generator) n(least, of int) int { return least + g.rng.IntN(of) }

func pick[T any](g *generator, list ...T) T { return list[g.rng.IntN(len(list))] }

// write draws one situation and writes it as a case.
func (g *generator) write() string {
	g.text.Reset()
	var able []Manner
	for _, row := range manners {
		if row.level <= g.level && row.level >= g.level-1 {
			able = append(able, row.id)
		}
	}
	g.manner = pick(g, able...)
	g.put("case: made\nlevel: %d\nmanner: %s\nminutes: %d", g.level, g.manner, minutesMost)
	t := pick(g, trades...)
	g.put("company: %s %s", pick(g, families...), t.name)
	g.put("contact: %s %s", pick(g, firsts...), pick(g, families...))
	g.put("place: %s, Velmoor district\nunits: mm", pick(g, towns...))
	g.work(&t)
	g.put("start: edge\nfeatures: %s\nedge-next: %s\nguidance: %s\nplaces: %s",
		pick(g, t.features...), pick(g, t.edges...), pick(g, "by-hand", "guided"), pick(g, t.places...))
	g.site()
	g.wishes(&t)
	return g.text.String()
}

// ladder is thicknesses that are bought, in mm.
var ladder = []float64{1, 1.5, 2, 3, 4, 5, 6, 8, 10, 12, 15, 18, 20, 25, 30, 40}

// work draws metal, thicknesses and use, with what the manner makes of them.
func (g *generator) work(t *trade) {
	id := pick(g, t.metals...)
	g.put("metals: %s", id)
	everyday := g.n(t.from, t.to-t.from+1)
	if g.manner == Contradicts {
		everyday = max(everyday, 2)
	}
	thickest := g.n(everyday, 3)
	if g.manner == WrongUnit {
		g.inWrongUnit(id)
	} else {
		g.thicknesses(id, everyday, thickest)
	}
	use, length, days := pick(g, t.uses...), g.n(2, 14), g.n(2, 4)
	switch {
	case g.manner == SaysMaking:
		use, length, days = "maintenance", g.n(1, 3), 4
		g.put("wrong use: production")
	case use == "production":
		length, days = g.n(30, 40), 5
	}
	g.put("use: %s\ncut-length: %d m a day\ndays-a-week: %d\nbusy-cuts: %d\nbusy-length: %d mm", use, length, days, g.n(3, 4), 100*g.n(1, 3))
	if g.manner == AsksBack {
		g.put("unclear: use, thickest-clean %s, start", id)
	}
}

// thicknesses writes them, and what is first said in their place.
func (g *generator) thicknesses(id string, everyday, thickest int) {
	rare := g.n(thickest+1, 2)
	g.put("everyday-thickness %[1]s: %[2]g mm\nthickest-clean %[1]s: %[3]g mm\nrare-thickest %[1]s: %[4]g mm", id, ladder[everyday], ladder[thickest], ladder[rare])
	switch g.manner {
	case Vague:
		g.put("unclear: everyday-thickness %[1]s, thickest-clean %[1]s, rare-thickest %[1]s, cut-length", id)
	case Biggest:
		g.put("wrong thickest-clean %[1]s: %[2]g mm\nwrong rare-thickest %[1]s: %[3]g mm", id, 3*ladder[thickest], 4*ladder[rare])
	case Contradicts:
		g.put("wrong thickest-clean %s: %g mm", id, ladder[everyday-g.n(1, 2)])
	}
	if g.level >= 4 && g.manner != Hurry {
		g.put("unclear: everyday-thickness %s", id)
	}
}

// inWrongUnit writes thicknesses in gauge or inches that are spoken of in
// millimetres or centimetres.
func (g *generator) inWrongUnit(id string) {
	if id != "mild-steel" && id != "galvanised-steel" && id != "stainless" || g.rng.IntN(2) == 0 {
		sizes, centimetres := []string{"1/4", "3/8", "1/2", "5/8"}, []string{"2.5", "3.8", "5", "6.3"}
		i := g.rng.IntN(3)
		g.put("everyday-thickness %[1]s: %[2]s in\nthickest-clean %[1]s: %[3]s in\nwrong thickest-clean %[1]s: %[4]s mm\nrare-thickest %[1]s: 1 in", id, sizes[i], sizes[i+1], centimetres[i+1])
		return
	}
	gauge := 8 + 2*g.rng.IntN(3)
	g.put("everyday-thickness %[1]s: %[2]d ga\nthickest-clean %[1]s: %[3]d ga\nwrong thickest-clean %[1]s: %[3]d mm\nwrong everyday-thickness %[1]s: %[2]d mm\nrare-thickest %[1]s: none", id, gauge+4, gauge)
}

// site draws power and air that serve most of the systems.
func (g *generator) site() {
	supply := func(phases string, volts int, breakers ...int) {
		g.put("power-source: mains\nsupply-phase: %s\nsupply-voltage: %d V\nbreaker: %d A\ncord-length: none", phases, volts, pick(g, breakers...))
	}
	if g.rng.IntN(3) == 0 {
		supply("three", 400, 32, 63)
	} else {
		supply("single", pick(g, 230, 240), 16, 32, 63)
	}
	g.put("air-drier: %s\nair-delivery: %d l/min\nair-pressure: 7 bar\nair-receiver: %d l\nhose-bore: 10 mm\nhose-length: %d m\naltitude: %d m\nhot-work: %s",
		pick(g, "separator", "refrigerant", "desiccant"), 200+50*g.rng.IntN(5), 50*g.n(1, 6), 5+5*g.rng.IntN(3), 20*g.n(1, 12), pick(g, "none", "permit", "combustibles"))
}

// wishes draws what they think of today's way, and who decides.
func (g *generator) wishes(t *trade) {
	order := g.rng.Perm(len(t.annoys))
	g.put("today: %s\nannoys-most: %s\nannoys-next: %s", pick(g, t.today...), t.annoys[order[0]], t.annoys[order[1]])
	if g.manner == FixedIdea {
		g.put("wrong annoys-most: %s\nwrong annoys-next: nothing", t.annoys[order[2]])
	}
	g.put("experience: %s\neye-protection: %s\nventilation: %s\ndecides: %s", pick(g, "new", "some", "experienced"), pick(g, "none", "wrong-shade", "operator", "everyone"),
		pick(g, "none", "general", "extraction", "outdoors"), pick(g, deciders...))
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

// What made customers are called, where they are, and who decides there.
var (
	firsts   = []string{"Alma", "Birger", "Dagny", "Eskil", "Frida", "Gorm", "Hedda", "Ivar", "Kaja", "Lorenz", "Maren", "Odd", "Pia", "Rolf", "Sunniva", "Tarjei"}
	families = []string{"Aldmoor", "Brennick", "Callow", "Drosten", "Ellmark", "Farrent", "Gaskin", "Holmar", "Inswell", "Jarrold", "Kesten", "Lowmark", "Marrick", "Norlund", "Osmere", "Pelling"}
	towns    = []string{"Orvenby", "Port Ansel", "Harrowfen", "Kettlemere", "Tessel Cross"}
	deciders = []string{"the owner", "the foreman, with the owner", "the buying office, on the foreman's word"}
)
