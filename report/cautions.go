package report

import (
	"strings"

	"cutbrief/rules/demonstration"
	"cutbrief/rules/message"
)

// CautionItem is one caution, with the letter of its source in the key; "" where it is
// common practice.
type CautionItem struct {
	Text   string
	Letter string
	Raised bool // by this job
}

// CautionGroup is what is said about one hazard: what this job raises comes first.
type CautionGroup struct {
	Sign  *Sign
	Items []CautionItem
}

// Raised reports whether this job raises any of it.
func (g *CautionGroup) Raised() bool { return len(g.Items) > 0 && g.Items[0].Raised }

// CautionSource is a row of the key.
type CautionSource struct{ Letter, Text string }

// GroupCautions groups the cautions of a brief by hazard, those this job raises
// first in their group and in the order of groups, and gives each source a
// letter. None is left out but an empty one.
func GroupCautions(lines []Line) (groups []CautionGroup, key []CautionSource) {
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
				groups = append(groups, CautionGroup{Sign: SignOf(l.Hazard)})
			}
			item := CautionItem{Text: l.Value, Raised: l.Raised}
			if l.Source != "" && l.Source != l.Trust {
				if letters[l.Source] == "" {
					letters[l.Source] = sourceLetter(len(key))
					key = append(key, CautionSource{letters[l.Source], l.Source})
				}
				item.Letter = letters[l.Source]
			}
			groups[i].Items = append(groups[i].Items, item)
		}
	}
	return groups, key
}

// sourceLetter is a, b, … z, aa, ab, …
func sourceLetter(n int) string {
	if n < 26 {
		return string(rune('a' + n))
	}
	return sourceLetter(n/26-1) + sourceLetter(n%26)
}

// SourceKey writes the key of sources as one sentence, "" without sources. Clauses of
// one regulation stand together behind its name.
func SourceKey(words *message.Catalog, key []CautionSource) string {
	var list []string
	at := map[string]int{}
	for _, s := range key {
		name, clause, _ := strings.Cut(s.Text, "(")
		if clause = strings.TrimSpace("[" + s.Letter + "]\u00a0(" + clause); strings.HasSuffix(name, " ") || name == s.Text || !sharedSource(key, name) {
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
	return words.Print(message.New(PageSources, message.Name(strings.Join(list, "; "))))
}

// sharedSource reports whether more than one source is a clause of a regulation.
func sharedSource(key []CautionSource, name string) bool {
	n := 0
	for _, s := range key {
		if strings.HasPrefix(s.Text, name+"(") {
			n++
		}
	}
	return n > 1
}
