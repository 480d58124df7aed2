package casebook

import (
	"strings"
	"testing"

	"cutbrief/rules/system"
)

// The template is a case that can be used as it is.
func TestTheTemplateIsSound(t *testing.T) {
	list, findings := Read(strings.NewReader(Template()))
	if len(list) != 1 || len(findings) > 0 {
		t.Fatal(findings)
	}
	for _, f := range Check(&list[0], system.Demo()) {
		t.Error(f)
	}
}

// edited is the template with one line in place of another.
func edited(t *testing.T, line, by string) string {
	t.Helper()
	text := strings.Replace(Template(), "\n"+line+"\n", "\n"+by+"\n", 1)
	if text == Template() {
		t.Fatalf("the template has no line %q", line)
	}
	return text
}

// Every slip in a file is named with its line and what would be accepted. The
// template's case begins at line 27 and its level stands in line 28.
func TestErrorsNameTheirLine(t *testing.T) {
	for _, c := range []struct{ line, by, want string }{
		{"level: 2", "level: 9", `line 28, column level: error: "9" is out of range; accepted: a whole number from 1 to 5`},
		{"level: 2", "level:", "line 28, column level: error: has no value"},
		{"level: 2", "level 2", `line 28: error: "level 2" is no line of a case`},
		{"level: 2", "", "line 27, column level: error: is missing in this case"},
		{"manner: vague", "manner: rude", `line 29, column manner: error: "rude" is no manner of speaking; accepted: one of precise, vague`},
		{"case: bench-top", "case: Bench Top", `line 27, column case: error: "Bench Top" is no name`},
		{"use: maintenance", "use: repairs", `column use: error: "repairs" is not one of the choices; accepted: choose maintenance, mixed, production`},
		{"everyday-thickness mild-steel: 6 mm", "everyday-thickness mild-steel: 6 kg", `column everyday-thickness mild-steel: error: "6 kg"`},
		{"everyday-thickness mild-steel: 6 mm", "everyday-thickness: 6 mm", `column everyday-thickness: error: is asked for each metal`},
		{"everyday-thickness mild-steel: 6 mm", "everyday-thickness stainless: 6 mm", "column everyday-thickness stainless: error: does not come up"},
		{"cord-length: none", "cord-length: none\ncord-section: 4 mm2", "column cord-section: error: does not come up"},
		{"level: 2", "level: 2\nlevel: 3", "line 29, column level: error: stands in this case already"},
		{"use: maintenance", "use: maintenance\nuse: mixed", "column use: error: stands in this case already"},
		{"use: maintenance", "colour: red", `column colour: error: "colour" is no question of the interview`},
		{"use: maintenance", "use: maintenance\nwrong use: maintenance", "column wrong use: error: is the same as the true answer"},
		{"use: maintenance", "use: maintenance\nwrong budget: 400", "column wrong budget: error: is first heard of a question without a true answer"},
		{"use: maintenance", "use: maintenance\ncase: bench-top", "column case: error: has the name of a case above"},
		{"use: maintenance", "use: maintenance \x1b[31m", "error: holds the invisible character"},
	} {
		_, findings := Read(strings.NewReader(edited(t, c.line, c.by)))
		all := ""
		for _, f := range findings {
			all += f.String() + "\n"
		}
		if !strings.Contains(all, c.want) {
			t.Errorf("%q: want %q, got:\n%s", c.by, c.want, all)
		}
	}
	if _, findings := Read(strings.NewReader("# nothing\n")); len(findings) != 1 {
		t.Error(findings)
	}
	if _, findings := Read(strings.NewReader("level: 2\n")); len(findings) != 1 || findings[0].Line != 1 {
		t.Error(findings)
	}
}

// A case that can be read may still be unfair; Check says how.
func TestCheckFindsUnfairCases(t *testing.T) {
	for _, c := range []struct{ line, by, want string }{
		{"minutes: 45", "minutes: 5", "5 minutes are too few"},
		{"use: maintenance", "", "repair or production is missing"},
		{"features: straight, holes", "", "is not firm"},
		{"cut-length: 5 m a day", "cut-length: 200 m a day", "contradict one another"},
		{"manner: vague", "manner: contradicts", "says nothing wrong"},
		{"says thickest-clean mild-steel: Thick stuff, like this bench top.", "says thickest-clean mild-steel: 10 mm.", "a figure in plain sight"},
	} {
		list, findings := Read(strings.NewReader(edited(t, c.line, c.by)))
		if len(list) != 1 {
			t.Errorf("%q cannot be read: %v", c.by, findings)
			continue
		}
		all := ""
		for _, f := range Check(&list[0], system.Demo()) {
			if f.Line != 27 {
				t.Errorf("%s is said of line %d", f.Problem, f.Line)
			}
			all += f.String() + "\n"
		}
		if !strings.Contains(all, c.want) {
			t.Errorf("%q: want %q, got:\n%s", c.by, c.want, all)
		}
	}
}

func TestACustomerWhoAsksBackMustAskSomething(t *testing.T) {
	text := strings.ReplaceAll(edited(t, "manner: vague", "manner: asks-back"), "\nunclear: everyday", "\n# everyday")
	list, findings := Read(strings.NewReader(text))
	if len(list) != 1 {
		t.Fatal(findings)
	}
	for _, f := range Check(&list[0], system.Demo()) {
		if strings.Contains(f.Problem.String(), "clear about everything") {
			return
		}
	}
	t.Error("not found")
}

// No text makes reading fail otherwise than by findings.
func FuzzRead(f *testing.F) {
	f.Add(Template())
	f.Add("case: a\nwrong use: production\nunclear: use\nsays use:")
	f.Fuzz(func(t *testing.T, text string) {
		list, findings := Read(strings.NewReader(text))
		if len(list) == 0 && len(findings) == 0 {
			t.Error("neither a case nor a finding")
		}
	})
}
