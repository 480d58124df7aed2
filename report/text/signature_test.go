package text

import (
	"strings"
	"testing"

	"cutbrief/report"
	"cutbrief/rules/message/catalog"
)

// Where the words of a firm leave no room for the line to sign on beside them, it
// stands below.
func TestLongWordsUnderTheSignature(t *testing.T) {
	for _, long := range []string{strings.Repeat("x", 30), strings.Repeat("é", 250)} {
		words, findings := catalog.Read(strings.NewReader("english,words\nDate,"+long+"\nCustomer,"+long+"\n"), "test")
		if len(findings) > 0 {
			t.Fatal(findings)
		}
		for _, width := range []int{40, 60, 80, 120} {
			if page := Render(report.Brief{Words: words}, width); !strings.Contains(page, "__________") {
				t.Errorf("no line to sign on at %d:\n%s", width, page)
			}
		}
	}
}
