package casebook

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"time"
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
	if over := len(p.Practices) - practicesKept; over > 0 {
		p.Practices = p.Practices[over:]
	}
}

// Encode writes progress as indented JSON, the same each time.
func (p *Progress) Encode() ([]byte, error) {
	data, err := json.MarshalIndent(progressFile{progressFormat, progressVersion, p.Practices}, "", "  ")
	return append(data, '\n'), err
}

// DecodeProgress reads what Encode wrote. It refuses what it does not know, so
// that nothing is lost when it is written again.
func DecodeProgress(data []byte) (Progress, error) {
	var f progressFile
	if len(data) > ProgressMost {
		return Progress{}, fmt.Errorf("%w: it is larger than 1 MiB", ErrNotProgress)
	}
	d := json.NewDecoder(bytes.NewReader(data))
	if err := d.Decode(&f); err != nil {
		return Progress{}, fmt.Errorf("%w: it is no whole JSON", ErrNotProgress)
	}
	switch {
	case f.Format != progressFormat:
		return Progress{}, fmt.Errorf("%w: its format is not %q", ErrNotProgress, progressFormat)
	case f.Version != progressVersion:
		return Progress{}, fmt.Errorf("%w of version %d: it says version %d", ErrNotProgress, progressVersion, f.Version)
	}
	for i := range f.Practices {
		f.Practices[i].tidy()
	}
	return Progress{f.Practices}, nil
}

// tidy drops what cannot be: tallies that count more right than there were, and
// skills nobody knows.
func (p *Practice) tidy() {
	if !isName(p.Case) {
		p.Case = ""
	}
	if !p.Manner.known() {
		p.Manner = Precise
	}
	kept := map[Skill]Tally{}
	for _, s := range Skills() {
		if t, ok := p.Skills[s]; ok && t.Right >= 0 && t.Of > 0 && t.Right <= t.Of {
			kept[s] = t
		}
	}
	p.Skills = kept
}
