package rules

import (
	"math"
	"slices"

	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// Doubt is an answer that may be otherwise than it stands in a job: a figure
// from Low to High, in the unit of its kind, or one of several options. Each
// case counts as likely as any other.
type Doubt struct {
	Asked     Asked
	Low, High float64
	Options   []string // as saved; nil for a figure
}

// CanBeDoubted reports whether an answer is one that a doubt can be about: one
// option of a list that a system is judged by, or a figure that only gets harder
// with its size, or only easier, or is a voltage.
func CanBeDoubted(f Fact) bool {
	a := answerOf(f)
	return a != nil && (a.option != nil || f == FactVolts || a.ends[easiest] != a.ends[hardest])
}

// Holding says in how much of what the doubts allow the recommendation stands.
type Holding struct {
	Share float64 // 0 to 1
	Tried int     // the cases drawn; 0 where Share is exact
	Error float64 // of Share, either way, at 95 %; 0 where it is exact
	First Asked   // the answer to measure first; the zero Asked where none matters
}

// All reports that the recommendation stands in every case.
func (h Holding) All() bool { return h.Share == 1 }

// cases is how many cases are drawn where a share cannot be worked out exactly.
const cases = 256

// errorOver is the error of a share that is counted over so many cases: at most
// 1.96·√(0.25/n) at 95 %, the normal approximation of the binomial distribution,
// for cases drawn at random. These are spread more evenly than that. Source:
// statistics. Check: 256 cases, 0.061.
func errorOver(n int) float64 { return 1.96 * math.Sqrt(0.25/float64(n)) }

// Hold works out in how much of what the doubts of a job allow the same system
// is recommended: exactly for one doubt, else over cases spread evenly. It is not
// known without a doubt, or without a recommendation.
func Hold(job Job, offered system.Range) unit.Maybe[Holding] {
	inCurrency(&job, offered.Currency)
	now := conclude(&job, offered.Systems)
	if len(job.Doubts) == 0 || len(missing(&job)) > 0 || now.first < 0 {
		return unit.Maybe[Holding]{}
	}
	var room copied
	stands := func(moved *Job) bool { return conclude(moved, offered.Systems).first == now.first }
	h := Holding{Tried: cases, Error: errorOver(cases)}
	if d := &job.Doubts[0]; len(job.Doubts) == 1 {
		h = Holding{Share: d.share(func(share float64) bool {
			moved := room.of(&job)
			d.put(moved, share)
			return stands(moved)
		})}
		if !h.All() {
			h.First = d.Asked
		}
		return unit.Known(h)
	}
	type half struct{ right, tried float64 }
	halves := make([][2]half, len(job.Doubts)) // the lower and the upper of each
	steps := evenSteps(len(job.Doubts))
	for n := range cases {
		var in []*half
		moved := room.of(&job)
		for i := range job.Doubts {
			_, share := math.Modf(0.5 + float64(n+1)*steps[i])
			job.Doubts[i].put(moved, share)
			in = append(in, &halves[i][int(2*share)])
		}
		right := 0.0
		if stands(moved) {
			right = 1
		}
		h.Share += right / cases
		for _, half := range in {
			half.right += right
			half.tried++
		}
	}
	most := 0.0
	for i, of := range halves {
		if moves := math.Abs(of[0].right/of[0].tried - of[1].right/of[1].tried); moves > most {
			most, h.First = moves, job.Doubts[i].Asked
		}
	}
	return unit.Known(h)
}

// evenSteps are the steps by which a sequence of points fills a cube of so many
// sides evenly: the powers of 1/x, where x to the power n+1 is x+1. Source: the
// additive recurrence of Kronecker, with the steps of a generalised golden ratio,
// from memory. Check: one side, 0.618, the golden ratio's.
func evenSteps(n int) []float64 {
	x := 2.0
	for range 60 {
		x = math.Pow(1+x, 1/float64(n+1))
	}
	steps, step := make([]float64, n), 1.0
	for i := range steps {
		step /= x
		steps[i] = step
	}
	return steps
}

// put puts the case at a share of the way into a job, below 1 for options.
func (d *Doubt) put(j *Job, share float64) {
	a := answerOf(d.Asked.Fact)
	if d.Options != nil {
		a.option(j, d.Options[int(share*float64(len(d.Options)))])
		return
	}
	if p := j.pieceOf(d.Asked); p != nil || !a.perMetal {
		a.value(j, p, blend(d.Low, d.High, share))
	}
}

// pieceOf is the piece that an answer is about, nil if it is about none.
func (j *Job) pieceOf(a Asked) *Piece {
	i := slices.IndexFunc(j.Pieces, func(p Piece) bool { return p.Metal == a.Metal })
	return j.at(i)
}

// middle is the share of the way at which an option is.
func (d *Doubt) middle(i int) float64 { return (float64(i) + 0.5) / float64(len(d.Options)) }

// share is how much of one doubt something is true in.
func (d *Doubt) share(at func(float64) bool) float64 {
	if d.Options != nil {
		right := 0
		for i := range d.Options {
			if at(d.middle(i)) {
				right++
			}
		}
		return float64(right) / float64(len(d.Options))
	}
	total := 0.0
	for _, s := range stretches(0, 1, at) {
		if s.is {
			total += s.to - s.from
		}
	}
	return total
}

// stretch is part of a scale where something is the same.
type stretch[T comparable] struct {
	from, to float64
	is       T
}

// stretches divides a scale by what is the case along it. It looks at so many
// points, and halves its way to where two neighbours differ; a stretch shorter
// than the distance of two points may be missed.
func stretches[T comparable](low, high float64, at func(float64) T) []stretch[T] {
	const points, halvings = 128, 40
	list := []stretch[T]{{low, high, at(low)}}
	before := low
	for i := 1; i <= points; i++ {
		x := blend(low, high, float64(i)/points)
		last := &list[len(list)-1]
		if is := at(x); is != last.is {
			a, b := before, x
			for range halvings {
				if mid := (a + b) / 2; at(mid) == last.is {
					a = mid
				} else {
					b = mid
				}
			}
			last.to = a
			list = append(list, stretch[T]{a, high, is})
		}
		before = x
	}
	return list
}

// The two ends of a doubt.
const (
	easiest = iota
	hardest
)

// atEnd is a job with every figure in doubt at its easiest or its hardest. One that
// is neither easier nor harder with its size stays as it is.
func (s *study) atEnd(j *Job, end int) *Job {
	moved := s.ends[end].of(j)
	for i := range j.Doubts {
		d := &j.Doubts[i]
		row := answerOf(d.Asked.Fact)
		if d.Options != nil || row.ends[easiest] == row.ends[hardest] {
			continue
		}
		share := 0.0
		if harder := row.ends[hardest] > row.ends[easiest]; harder == (end == hardest) {
			share = 1
		}
		d.put(moved, share)
	}
	return moved
}

// withDoubts are the ways in which the options in doubt, and the values of a
// figure that is neither easier nor harder with its size, may come together; false
// if they are too many to try.
func withDoubts(j *Job, systems []system.System) (list []Job, all bool) {
	const most = 256
	list = []Job{*j}
	for i := range j.Doubts {
		d := &j.Doubts[i]
		var put []func(*Job)
		for n := range d.Options {
			put = append(put, func(j *Job) { d.put(j, d.middle(n)) })
		}
		if d.Asked.Fact == FactVolts {
			for _, v := range d.voltages(systems) {
				put = append(put, func(j *Job) { j.Power.Volts = unit.Known(v) })
			}
		}
		if len(put) == 0 {
			continue
		}
		if len(put)*len(list) > most {
			return nil, false
		}
		var next []Job
		for _, told := range list {
			for _, put := range put {
				changed := told.clone()
				put(&changed)
				next = append(next, changed)
			}
		}
		list = next
	}
	return list, true
}

// voltages are those of a doubt at which systems begin or cease to run, and one
// between each two: no other makes a difference that these do not.
func (d *Doubt) voltages(systems []system.System) []unit.Volt {
	list := []unit.Volt{unit.Volt(d.Low), unit.Volt(d.High)}
	for i := range systems {
		for _, s := range systems[i].Supplies {
			for _, v := range []unit.Volt{s.VoltMin, s.VoltMax} {
				list = append(list, max(list[0], min(v, list[1])))
			}
		}
	}
	slices.Sort(list)
	list = slices.Compact(list)
	for i := range list[1:] {
		list = append(list, (list[i]+list[i+1])/2)
	}
	return list
}
