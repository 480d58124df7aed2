package table

import (
	"bufio"
	"encoding/json"
	"fmt"
	"io"
	"strings"

	"cutbrief/assess/review"
)

// Patterns is what is counted over the rows, by one column.
type Patterns struct {
	By     string
	List   []review.Pattern
	Totals review.Totals
}

// fewest is how many visits a share in per cent needs: of five or fewer, a
// percentage would say more than is known. Our own rule, common practice.
const fewest = 6

// share writes a count with its base, and with a percentage where there are
// enough visits for one.
func share(n, base int) string {
	if base < fewest {
		return fmt.Sprintf("%d of %d", n, base)
	}
	return fmt.Sprintf("%d of %d (%d %%)", n, base, (200*n+base)/(2*base))
}

// Text writes a part for each pattern.
func (p Patterns) Text(w io.Writer) error {
	out := bufio.NewWriter(w)
	for _, g := range p.List {
		of := g.Of
		if of == "" {
			of = "not known"
		}
		fmt.Fprintf(out, "%s: %s\n", p.By, of)
		fmt.Fprintf(out, "  firm        %s\n  flagged     %s\n", share(g.Firm, g.Visits), share(g.Flagged, g.Visits))
		fmt.Fprintf(out, "  ordered     %s\n  lost        %s\n  waiting     %s\n", share(g.Ordered, g.Visits), share(g.Lost, g.Visits), share(g.Waiting, g.Visits))
		for i, q := range g.Unanswered {
			label := "unanswered"
			if i > 0 {
				label = strings.Repeat(" ", len(label))
			}
			fmt.Fprintf(out, "  %s  %s: %s\n", label, q.What, share(q.Visits, g.Visits))
		}
		out.WriteString("\n")
	}
	fmt.Fprintf(out, "%s\n", Sheet{Totals: p.Totals}.all())
	return out.Flush()
}

// all counts every file, whatever is shown.
func (s Sheet) all() string {
	text := files(s.Totals.Files)
	if s.Totals.Unread > 0 {
		text += fmt.Sprintf("; %d of all not read as a visit, and so not counted", s.Totals.Unread)
	}
	return text
}

// JSON writes the counts; shares are left to the reader, who has the base.
func (p Patterns) JSON(w io.Writer) error {
	type count struct {
		Question string `json:"question"`
		Visits   int    `json:"visits"`
	}
	type group struct {
		Of         string  `json:"of"`
		Visits     int     `json:"visits"`
		Firm       int     `json:"firm"`
		Flagged    int     `json:"flagged"`
		Ordered    int     `json:"ordered"`
		Lost       int     `json:"lost"`
		Waiting    int     `json:"waiting"`
		Unanswered []count `json:"unanswered"`
	}
	doc := struct {
		By     string  `json:"by"`
		Files  int     `json:"files"`
		Unread int     `json:"unread"`
		Groups []group `json:"groups"`
	}{p.By, p.Totals.Files, p.Totals.Unread, []group{}}
	for _, g := range p.List {
		one := group{g.Of, g.Visits, g.Firm, g.Flagged, g.Ordered, g.Lost, g.Waiting, []count{}}
		for _, q := range g.Unanswered {
			one.Unanswered = append(one.Unanswered, count{q.What, q.Visits})
		}
		doc.Groups = append(doc.Groups, one)
	}
	data, err := json.MarshalIndent(doc, "", "  ")
	if err != nil {
		return err
	}
	_, err = w.Write(append(data, '\n'))
	return err
}
