package page

import (
	"strings"

	"cutbrief/report"
	"cutbrief/rules/demonstration"
	"cutbrief/rules/message"
)

// Item is one caution, with the letter of its source in the key; "" where it is
// common practice.
type Item struct {
	Text   string
	Letter string
	Raised bool // by this job
}

// Group is what is said about one hazard: what this job raises comes first.
type Group struct {
	Sign  *Sign
	Items []Item
}

// Raised reports whether this job raises any of it.
func (g *Group) Raised() bool { return len(g.Items) > 0 && g.Items[0].Raised }

// Source is a row of the key.
type Source struct{ Letter, Text string }

// Cautions groups the cautions of a brief by hazard, those this job raises
// first in their group and in the order of groups, and gives each source a
// letter. None is left out but an empty one.
func Cautions(lines []report.Line) (groups []Group, key []Source) {
	letters := map[string]string{}
	at := map[demonstration.Hazard]int{}
	for _, first := range []bool{true, false} {
		for _, l := range lines {
			if l.Raised != first || strings.TrimSpace(l.Value) == "" {
				continue
			}
			i, known := at[l.Hazard]
			if !known {
				i = len(groups)
				at[l.Hazard] = i
				groups = append(groups, Group{Sign: SignOf(l.Hazard)})
			}
			item := Item{Text: l.Value, Raised: l.Raised}
			if l.Source != "" && l.Source != l.Trust {
				if letters[l.Source] == "" {
					letters[l.Source] = letter(len(key))
					key = append(key, Source{letters[l.Source], l.Source})
				}
				item.Letter = letters[l.Source]
			}
			groups[i].Items = append(groups[i].Items, item)
		}
	}
	return groups, key
}

// letter is a, b, … z, aa, ab, …
func letter(n int) string {
	if n < 26 {
		return string(rune('a' + n))
	}
	return letter(n/26-1) + letter(n%26)
}

// Key writes the key of sources as one sentence, "" without sources. Clauses of
// one regulation stand together behind its name.
func Key(words *message.Catalog, key []Source) string {
	var list []string
	at := map[string]int{}
	for _, s := range key {
		name, clause, _ := strings.Cut(s.Text, "(")
		if clause = strings.TrimSpace("[" + s.Letter + "]\u00a0(" + clause); strings.HasSuffix(name, " ") || name == s.Text || !shared(key, name) {
			list = append(list, "["+s.Letter+"]\u00a0"+s.Text)
		} else if i, known := at[name]; known {
			list[i] += ", " + clause
		} else {
			at[name] = len(list)
			list = append(list, name+" "+clause)
		}
	}
	if len(list) == 0 {
		return ""
	}
	return words.Print(message.New(Sources, message.Name(strings.Join(list, "; "))))
}

// shared reports whether more than one source is a clause of a regulation.
func shared(key []Source, name string) bool {
	n := 0
	for _, s := range key {
		if strings.HasPrefix(s.Text, name+"(") {
			n++
		}
	}
	return n > 1
}
