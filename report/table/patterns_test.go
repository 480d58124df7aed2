package table

import (
	"bytes"
	"encoding/json"
	"testing"

	"cutbrief/assess/review"
)

var two = Patterns{By: "rep", Totals: review.Totals{Files: 14, Unread: 1}, List: []review.Pattern{
	{Of: "A", Visits: 8, Firm: 3, Flagged: 1, Unanswered: []review.Count{{What: "use", Visits: 2}}},
	{Visits: 5, Firm: 5, Ordered: 2},
}}

// 3 of 8 is 37.5 %, which rounds up; of five visits there is no percentage.
func TestPatternsHaveTheirBase(t *testing.T) {
	var out bytes.Buffer
	if err := two.Text(&out); err != nil {
		t.Fatal(err)
	}
	want := `rep: A
  firm        3 of 8 (38 %)
  flagged     1 of 8 (13 %)
  ordered     0 of 8 (0 %)
  lost        0 of 8 (0 %)
  waiting     0 of 8 (0 %)
  unanswered  use: 2 of 8 (25 %)

rep: not known
  firm        5 of 5
  flagged     0 of 5
  ordered     2 of 5
  lost        0 of 5
  waiting     0 of 5

14 files; 1 of all not read as a visit, and so not counted
`
	if got := out.String(); got != want {
		t.Errorf("got\n%s", got)
	}
	out.Reset()
	var doc struct{ Groups []map[string]any }
	if err := two.JSON(&out); err != nil || json.Unmarshal(out.Bytes(), &doc) != nil || len(doc.Groups) != 2 || doc.Groups[0]["firm"] != 3.0 {
		t.Errorf("%v %s", err, out.String())
	}
}
