package export

import (
	"bytes"
	"encoding/json"
	"reflect"
	"strings"
	"testing"
	"time"

	"cutbrief/report"
)

func TestEmptyListsAreLists(t *testing.T) {
	out, err := Briefs([]report.Brief{{}})
	if err != nil {
		t.Fatal(err)
	}
	if bytes.Contains(out, []byte("null")) || !bytes.HasSuffix(out, []byte("}\n")) {
		t.Errorf("%s", out)
	}
}

func TestReadsBackTheSame(t *testing.T) {
	want := report.Brief{
		Title: "Cutting recommendation", Date: time.Date(2026, 11, 20, 0, 0, 0, 0, time.UTC),
		Headline: `a < b & "c"`, Bars: []report.Bar{{Label: "Clean cut", NeedShare: 0.5, HaveShare: 1}},
		Plan: []report.Row{{Cut: "Straight"}}, Who: []report.Line{{Label: "Customer", Value: "Łódź 株式会社"}},
	}
	fill(&want)
	out, err := Briefs([]report.Brief{want})
	if err != nil {
		t.Fatal(err)
	}
	var got report.Brief
	if err := json.Unmarshal(out, &got); err != nil || !reflect.DeepEqual(got, want) {
		t.Errorf("%v\n%+v\n%+v", err, got, want)
	}
	if again, _ := Briefs([]report.Brief{want}); !bytes.Equal(out, again) {
		t.Error("the same brief gave other bytes")
	}
	if !strings.Contains(string(out), `"headline": "a < b & \"c\""`) {
		t.Errorf("headline is not written plainly: %s", out)
	}
}
