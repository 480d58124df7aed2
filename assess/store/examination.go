package store

import (
	"cmp"
	"fmt"
	"strings"

	"cutbrief/rules/message"
)

// Examination is what was found where somebody looked for faults in several
// places, in words and safe to show.
type Examination struct {
	Sound    bool   `json:"sound"`
	Problems int    `json:"problems"`
	Parts    []part `json:"parts"`
}

// part is one heading of an examination.
type part struct {
	Title    string       `json:"part"`
	Findings []inspection `json:"findings"`
}

// inspection is one thing looked at, and what is to be said of it.
type inspection struct {
	What string   `json:"what"`
	Says []remark `json:"says"`
}

// remark is one thing said, and, where it is wrong, what to do.
type remark struct {
	Text  string `json:"text"`
	Wrong bool   `json:"wrong,omitempty"`
	Do    string `json:"do,omitempty"`
}

// Finding is one thing looked at before it is put into words.
type Finding struct {
	What message.ID
	Says Remarks
}

// Say is a finding of one remark, which is no fault.
func Say(what, id message.ID, args ...any) Finding {
	f := Finding{What: what}
	f.Says.Say(id, args...)
	return f
}

// Place is where something is kept, or why no such place is known.
type Place struct {
	What message.ID
	Path string
	Err  error
	Do   message.ID // what to do about that, "" where it is no fault
	None message.ID // what is said of it then, in place of "nowhere: {1}"
}

// Inspect says where it is and has a look at it.
func (p Place) Inspect(look func(*Remarks)) Finding {
	f := Finding{What: p.What}
	none := cmp.Or(p.None, "nowhere: {1}")
	switch {
	case p.Err == nil:
		f.Says.Say("{1}", message.Name(p.Path))
		look(&f.Says)
	case p.Do != "":
		f.Says.Wrong(p.Do.Message(), none, p.Err)
	default:
		f.Says.Say(none, p.Err)
	}
	return f
}

// Add puts the findings of one heading into words.
func (e *Examination) Add(words *message.Catalog, title message.ID, list ...Finding) {
	say := func(m message.Message) string { return string(shown(words.Print(m))) }
	p := part{Title: say(title.Message())}
	for _, f := range list {
		i := inspection{What: say(f.What.Message())}
		for _, r := range f.Says {
			i.Says = append(i.Says, remark{say(r.Text), r.Wrong, say(r.Do)})
			if r.Wrong {
				e.Problems++
			}
		}
		p.Findings = append(p.Findings, i)
	}
	e.Parts = append(e.Parts, p)
	e.Sound = e.Problems == 0
}

// Text is a part for each heading, one thing said a line.
func (e Examination) Text(words *message.Catalog) string {
	var b strings.Builder
	wrong := words.Print(message.ID("WRONG").Message()) + " "
	for _, p := range e.Parts {
		b.WriteString(p.Title + "\n")
		for _, f := range p.Findings {
			name := f.What
			for _, r := range f.Says {
				mark := ""
				if r.Wrong {
					mark = wrong
				}
				fmt.Fprintf(&b, "%-*s%-11s %s\n", len(wrong), mark, name, r.Text)
				if r.Wrong {
					fmt.Fprintf(&b, "%*s%-11s %s\n", len(wrong), "", "", words.Print(message.New("To do: {1}.", message.Name(r.Do))))
				}
				name = ""
			}
		}
		b.WriteString("\n")
	}
	if e.Sound {
		b.WriteString(words.Print(message.ID("All is sound.").Message()) + "\n")
	}
	return b.String()
}
