package casebook

import (
	"bytes"
	"fmt"
	"iter"
	"math/rand/v2"
	"time"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/metal"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// The parts invented visits are made of. Every name is invented for the demo.
var (
	demoFirsts = []string{"Ash", "Birch", "Cole", "Dun", "Elm", "Fern", "Garr", "Hol", "Ivel", "Jarn", "Kell", "Lorn", "Marl", "Nor", "Orr", "Penn"}
	demoLasts  = []string{"beck", "croft", "dale", "field", "ford", "gate", "ham", "hurst", "ley", "mere", "stead", "thorpe", "wick", "worth"}
	demoTrades = []string{"Farm Repair", "Fabrications", "Trailers", "Yard Services", "Gates and Railings", "Scrap and Metals", "Kitchens", "Agricultural"}
	reps       = []string{"Runa Feltham", "Osric Dale", "Imke Vost", "Teodor Hale", "Wenna Marsh", "Piet Arden", "Sunniva Kole", "Ambrose Tull"}
	thicker    = []string{"3 mm", "6 mm", "3/8 in", "10 mm", "12 mm", "1/2 in", "16 mm", "?"}
)

// ManyVisits makes n invented visits, the same for the same seed, as files in a tree of
// years, months and reps, for trying what is done with very many. About one in a
// thousand is damaged, one foreign and one of a later format. The data is used
// again for the next.
func ManyVisits(n int, seed uint64) iter.Seq2[string, []byte] {
	return func(yield func(string, []byte) bool) {
		chance := rand.New(rand.NewPCG(seed, 1))
		made := variants()
		for i := range n {
			path, data := one(i, chance, made)
			if !yield(path, data) {
				return
			}
		}
	}
}

// blanks are what each variant holds in the place of what differs.
var blanks = [...]string{"COMPANY-BLANK", "2001-02-03", "REP-BLANK", "ID-BLANK", "2001-02-17"}

// one makes the visit of a number.
func one(i int, chance *rand.Rand, made [][]byte) (string, []byte) {
	day := time.Date(2024, 1, 2, 0, 0, 0, 0, time.UTC).AddDate(0, 0, chance.IntN(690))
	company := demoFirsts[chance.IntN(len(demoFirsts))] + demoLasts[chance.IntN(len(demoLasts))] + " " + demoTrades[chance.IntN(len(demoTrades))]
	if chance.IntN(20) > 0 {
		company += fmt.Sprintf(" %d", 1+chance.IntN(40000)) // one in twenty may be a customer again
	}
	who := chance.IntN(len(reps))
	data := made[chance.IntN(len(made))]
	for k, text := range [...]string{company, day.Format(time.DateOnly), reps[who], fmt.Sprintf("sample-%d", i), day.AddDate(0, 0, 14).Format(time.DateOnly)} {
		data = bytes.ReplaceAll(data, []byte(blanks[k]), []byte(text))
	}
	path := fmt.Sprintf("%s/rep-%d/visit-%06d.json", day.Format("2006/01"), who+1, i)
	switch chance.IntN(1000) {
	case 0:
		data = data[:len(data)/2]
	case 1:
		data = []byte(`{"format": "shopping-list", "version": 1}`)
	case 2:
		data = []byte(`{"format": "cutbrief-visit", "version": 99}`)
	}
	return path, data
}

// variants are the demo visits with another thickest piece each, sized with the
// built-in range.
func variants() [][]byte {
	offered := system.Demo()
	fingerprint := system.Fingerprint(offered)
	var made [][]byte
	for n, name := range demoNames {
		for i, thick := range thicker {
			v, ok := DemoVisit(name)
			if !ok {
				continue // a test reads every one
			}
			blank(v)
			for _, m := range v.Metals() {
				tell(v, rules.FactThickest, m, thick)
			}
			visited(v, n, i)
			if i%3 > 0 {
				job, _ := v.Job()
				v.Recommended = assess.Conclude(rules.Evaluate(job, offered), fingerprint)
			}
			data, err := v.Encode()
			if err == nil { // a demo visit is never too large
				made = append(made, data)
			}
		}
	}
	return made
}

func blank(v *assess.Visit) {
	tell(v, assess.FactCompany, "", blanks[0])
	v.Set(assess.Answer{Question: assess.FactDate, Said: blanks[1], State: assess.Told})
	tell(v, assess.FactRep, "", blanks[2])
	v.ID = blanks[3]
}

// tell answers a question that is typed.
func tell(v *assess.Visit, f rules.Fact, m metal.ID, said string) {
	q, _ := assess.Find(f)
	a, _, err := v.Read(assess.Step{Question: q, Metal: m}, said)
	if err == nil {
		v.Set(a)
	}
}

// visited notes in some variants how long the interview took, what was left open
// and how a demonstration ended, so that there are patterns to see.
func visited(v *assess.Visit, n, i int) {
	if i%2 == 0 {
		v.InterviewTime = &assess.InterviewTime{Sessions: 1, Seconds: unit.Known(unit.Second(300 + 137*n + 211*i))}
	}
	if i == 2 {
		v.Clear(rules.Asked{Fact: rules.FactEyes})
	}
	outcome := map[int]assess.Outcome{1: assess.Ordered, 3: assess.No, 4: assess.SecondVisit, 5: assess.No}[i]
	if outcome == "" || len(v.Demonstrations) > 0 {
		return
	}
	s := v.DemonstrationOn(blanks[1])
	s.Outcome = outcome
	s.Keep(assess.ShownCut{Cut: "everyday-straight", Name: "Straight cut, timed", Result: assess.Good,
		Took: unit.Known(unit.Second(16 + 2*(n+i)%11)), Predicted: unit.Known(unit.Second(18))})
	switch outcome {
	case assess.SecondVisit:
		s.Next = assess.Next{Step: "come again", Owner: blanks[2], Date: blanks[4]}
	case assess.No:
		all := assess.AllAgainst()
		s.Against, s.Because = all[(n+i)%len(all)], "Invented: not this year."
	}
}
