package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"cutbrief/rules"
)

// doctorFormats are the forms a check-up can take.
var doctorFormats = []format{textFormat, jsonFormat}

// checkup is what doctor found.
type checkup struct {
	Sound    bool   `json:"sound"`
	Problems int    `json:"problems"`
	Parts    []part `json:"parts"`
}

// part is one heading of a check-up.
type part struct {
	Title    string   `json:"part"`
	Findings []notice `json:"findings"`
}

// notice is one thing looked at, and what is to be said of it.
type notice struct {
	What string    `json:"what"`
	Says []verdict `json:"says"`
}

// verdict is one thing said, and, where it is wrong, what to do.
type verdict struct {
	Text  string `json:"text"`
	Wrong bool   `json:"wrong,omitempty"`
	Do    string `json:"do,omitempty"`
}

func (n *notice) say(text string, args ...any) {
	n.Says = append(n.Says, verdict{Text: tidy(fmt.Sprintf(text, args...))})
}

// wrong says what is wrong, and what to do about it.
func (n *notice) wrong(do, text string, args ...any) {
	n.say(text, args...)
	last := &n.Says[len(n.Says)-1]
	last.Wrong, last.Do = true, tidy(do)
}

// saying is a notice of one remark.
func saying(what, text string, args ...any) notice {
	n := notice{What: what}
	n.say(text, args...)
	return n
}

func (a *app) doctorCommand() *cobra.Command {
	var name, dir string
	c := &cobra.Command{
		Use:   "doctor",
		Short: "Say where things are kept, what is in use, and whether all is sound",
		Long: `doctor looks at what the program rests on, and says it so that it can be read aloud on
the telephone: where visits, lists and worked-out files are kept and whether they can be
written, which systems and prices are in use and who chose them, what the terminal can
show, and whether every visit can be read. Whether a folder can be written to is tried
with an empty file that is taken away again; all is left as it was.

The exit status is 0 if all is sound, and 1 if something is to be done. Paths are named
as they are: they may hold your name.`,
		Example: `  cutbrief doctor
  cutbrief doctor --systems my-systems.csv
  cutbrief doctor --format json`,
		Args: noArgs,
		RunE: func(*cobra.Command, []string) error { return a.doctor(dir, name) },
	}
	c.Flags().StringVar(&name, "format", string(textFormat), "text or json")
	c.Flags().StringVar(&dir, "dir", "", "`folder` of visits to look at (default: CUTBRIEF_DIR, else in your data folder)")
	complete(c, "format", namesOf(doctorFormats))
	return c
}

// doctor looks at everything and prints what it found.
func (a *app) doctor(dir, name string) error {
	form, err := among(doctorFormats, name)
	if err != nil {
		return err
	}
	found := summedUp(a.programPart(), a.placesPart(dir), a.listsPart(), a.terminalPart())
	if err := put(a.out, found.written(form)); err != nil || found.Sound {
		return err
	}
	return fail(errors.New(counted(found.Problems, "thing")+" to put right"), "the lines above marked WRONG say what to do")
}

func summedUp(parts ...part) checkup {
	c := checkup{Parts: parts}
	for _, p := range parts {
		for _, n := range p.Findings {
			for _, r := range n.Says {
				if r.Wrong {
					c.Problems++
				}
			}
		}
	}
	c.Sound = c.Problems == 0
	return c
}

func (a *app) programPart() part {
	return part{"The program", []notice{saying("version", "%s", version()), saying("rules", "edition %d", rules.Edition)}}
}

func (c checkup) written(form format) []byte {
	if form == jsonFormat {
		data, _ := json.MarshalIndent(c, "", "  ") // texts and numbers: cannot fail
		return append(data, '\n')
	}
	var b bytes.Buffer
	for _, p := range c.Parts {
		fmt.Fprintf(&b, "%s\n", p.Title)
		for _, n := range p.Findings {
			n.text(&b)
		}
		b.WriteString("\n")
	}
	if c.Sound {
		b.WriteString("All is sound.\n")
	}
	return b.Bytes()
}

// text writes a finding, one thing said a line.
func (n notice) text(b *bytes.Buffer) {
	name := n.What
	for _, r := range n.Says {
		mark := ""
		if r.Wrong {
			mark = "WRONG "
		}
		fmt.Fprintf(b, "%6s%-11s %s\n", mark, name, r.Text)
		if r.Wrong {
			fmt.Fprintf(b, "%6s%-11s To do: %s.\n", "", "", r.Do)
		}
		name = ""
	}
}
