package casebook

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"slices"
	"time"

	"cutbrief/rules/system"
)

// The format of the file of progress, and its limits.
const (
	progressFormat  = "cutbrief-practice"
	progressVersion = 1

	// ProgressMost is the largest file of progress that is read, in bytes.
	ProgressMost = 1 << 20

	practicesKept = 500 // the oldest go first
)

// ErrNotProgress means a file that is not one of progress, or a damaged one.
var ErrNotProgress = errors.New("not a file of practice progress")

// Practice is one practice, as kept.
type Practice struct {
	At      time.Time       `json:"at"`
	Case    string          `json:"case,omitempty"` // "" of a customer made from a number
	Seed    uint64          `json:"seed"`
	Level   int             `json:"level"`
	Manner  Manner          `json:"manner"`
	Used    int             `json:"minutes"`
	Of      int             `json:"of_minutes"`
	System  bool            `json:"system_right"`
	Decides bool            `json:"decides_right"`
	Proven  bool            `json:"proven"`
	Skills  map[Skill]Tally `json:"skills"`
}

// Progress is all practices of one trainee, the oldest first. Nothing in it is
// about a real customer.
type Progress struct{ Practices []Practice }

type progressFile struct {
	Format    string     `json:"format"`
	Version   int        `json:"version"`
	Practices []Practice `json:"practices"`
}

// Practice is the mark as it is kept.
func (m *Mark) Practice(at time.Time) Practice {
	c := m.Customer
	return Practice{at.UTC().Truncate(time.Second), c.Name, c.Seed, c.Level, c.Manner, m.Used, c.Minutes, m.RightSystem, m.RightDecides, m.Proven, m.Skills}
}

// Add puts a practice behind the others.
func (p *Progress) Add(one Practice) {
	p.Practices = append(p.Practices, one)
	p.Practices = p.Practices[max(0, len(p.Practices)-practicesKept):]
}

// Encode writes progress as indented JSON, the same each time.
func (p *Progress) Encode() ([]byte, error) {
	return indented(progressFile{progressFormat, progressVersion, p.Practices})
}

// DecodeProgress reads what Encode wrote. It refuses what it does not know, so
// that nothing is lost when it is written again.
func DecodeProgress(data []byte) (Progress, error) {
	var f progressFile
	if len(data) > ProgressMost {
		return Progress{}, fmt.Errorf("%w: it is larger than 1 MiB", ErrNotProgress)
	}
	if err := json.NewDecoder(bytes.NewReader(data)).Decode(&f); err != nil {
		return Progress{}, fmt.Errorf("%w: it is no whole JSON", ErrNotProgress)
	}
	switch {
	case f.Format != progressFormat:
		return Progress{}, fmt.Errorf("%w: its format is not %q", ErrNotProgress, progressFormat)
	case f.Version != progressVersion:
		return Progress{}, fmt.Errorf("%w of version %d: it says version %d", ErrNotProgress, progressVersion, f.Version)
	}
	for i := range f.Practices { // what cannot be is dropped
		p := &f.Practices[i]
		if !isName(p.Case) {
			p.Case = ""
		}
		if !p.Manner.known() {
			p.Manner = Precise
		}
		if p.Skills == nil {
			p.Skills = map[Skill]Tally{}
		}
		maps.DeleteFunc(p.Skills, func(s Skill, t Tally) bool {
			return !slices.Contains(Skills(), s) || t.Right < 0 || t.Of <= 0 || t.Right > t.Of
		})
	}
	return Progress{f.Practices}, nil
}

// rests is how many practices a skill rests after each time in a row that it
// went well. Common practice, no source.
var rests = [...]int{0, 1, 2, 4, 8}

// recentMost is how many of the last tries at a skill its bar counts.
const recentMost = 5

// history is how one skill went.
type history struct {
	tries  []bool // whether each went well, the oldest first
	recent Tally  // the last tries, added up
	inARow int    // how often it went well since it last did not
	ago    int    // practices since it was last tried
}

func (p *Progress) history(s Skill) (h history) {
	var tallies []Tally
	for i, one := range p.Practices {
		t, ok := one.Skills[s]
		if !ok {
			continue
		}
		well := t.share() >= wellDone
		h.tries, h.ago = append(h.tries, well), len(p.Practices)-1-i
		if h.inARow++; !well {
			h.inARow = 0
		}
		tallies = append(tallies, t)
	}
	for _, t := range tallies[max(0, len(tallies)-recentMost):] {
		h.recent.Right, h.recent.Of = h.recent.Right+t.Right, h.recent.Of+t.Of
	}
	return h
}

// Due returns the skill to practise next: the one that is most overdue, of
// several the one that did worst lately. "" if nothing was tried yet.
func (p *Progress) Due() Skill {
	due, most, least := Skill(""), 0, 0.0
	for _, s := range Skills() {
		h := p.history(s)
		if len(h.tries) == 0 {
			continue
		}
		over := h.ago + 1 - rests[min(h.inARow, len(rests)-1)]
		if share := h.recent.share(); due == "" || over > most || over == most && share < least {
			due, most, least = s, over, share
		}
	}
	return due
}

// trains reports whether a customer of a manner trains a skill most. A skill that
// no manner trains more than others is trained by all.
func (m Manner) trains(s Skill) bool {
	return m.row().skill == s || !slices.ContainsFunc(manners, func(row manner) bool { return row.skill == s })
}

// Draw picks the next of some customers for a trainee: of a manner that trains
// the skill that is due, of the level asked for if there is one (0 takes any),
// and not met yet. false if all of them were: a made one is fresher.
func (p *Progress) Draw(from []Customer, level int) (Customer, bool) {
	due := p.Due()
	for _, c := range from {
		met := slices.ContainsFunc(p.Practices, func(one Practice) bool { return one.Case == c.Name })
		if (level == 0 || c.Level == level) && c.Manner.trains(due) && !met {
			return c, true
		}
	}
	return Customer{}, false
}

// Make makes a customer from a number. One that was not asked for by its number
// is of a manner that trains the skill that is due, if one near that number is.
func (p *Progress) Make(seed uint64, level int, offered system.Range, exact bool) (Customer, bool) {
	const near = 12
	if !exact {
		due := p.Due()
		for i := range uint64(near) {
			if c, ok := Make(seed+i, level, offered); ok && c.Manner.trains(due) {
				return c, true
			}
		}
	}
	return Make(seed, level, offered)
}

func indented(v any) ([]byte, error) {
	data, err := json.MarshalIndent(v, "", "  ")
	return append(data, '\n'), err
}
