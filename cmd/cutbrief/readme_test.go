package main

import (
	"bytes"
	"flag"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"cutbrief/assess"
	"cutbrief/assess/screen/interview"
	"cutbrief/report/handbook"
	"cutbrief/rules"
	"cutbrief/rules/system"
)

var update = flag.Bool("update", false, "rewrite the transcripts in README.md")

// TestReadme compares every transcript in the README, where a reader meets the
// program first, with what the program prints, and every guide with the one it
// prints.
func TestReadme(t *testing.T) {
	compareWithReadme(t, map[string]string{"interview": interviewTranscript(t), "short-interview": shortTranscript(t), "page": pageTranscript(t), "check-code": codeTranscript(t)})
	text := readme(t)
	for _, name := range handbook.Readers() {
		before, has, after, ok := guideIn(text, name)
		_, markdown := handbook.Guide(name, nil)
		if !ok {
			t.Errorf("README.md has no guide for the %s", name)
			continue
		}
		if has != markdown && !*update {
			t.Errorf("README.md: the guide for the %s is not the one the program prints; rewrite it with -update", name)
		}
		text = before + markdown + after
	}
	rewrite(t, text)
}

// readmeFile is found from the folder of the test, wherever it works meanwhile.
var readmeFile = func() string {
	path, _ := filepath.Abs(filepath.Join("..", "..", "README.md")) // fails only without a working folder
	return path
}()

func readme(t *testing.T) string {
	t.Helper()
	data, err := os.ReadFile(readmeFile)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// rewrite writes the README anew, if the tests were told to.
func rewrite(t *testing.T, text string) {
	t.Helper()
	if !*update {
		return
	}
	if err := os.WriteFile(readmeFile, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

// compareWithReadme compares transcripts with those in the README. A transcript
// is the fenced block under a comment with its name.
func compareWithReadme(t *testing.T, transcripts map[string]string) {
	t.Helper()
	text := readme(t)
	for name, real := range transcripts {
		before, block, after, ok := transcript(text, name)
		if !ok {
			t.Errorf("README.md has no transcript %q", name)
			continue
		}
		if block != real && !*update {
			t.Errorf("README.md, transcript %q is not what the program prints; rewrite it with -update\nhas:\n%s\nprints:\n%s", name, block, real)
		}
		text = before + real + after
	}
	rewrite(t, text)
}

// transcript cuts text around the fenced block under a comment.
func transcript(text, name string) (before, block, after string, ok bool) {
	const fence = "```"
	before, rest, ok := strings.Cut(text, "<!-- transcript: "+name+" -->\n"+fence+"text\n")
	if !ok {
		return "", "", "", false
	}
	block, after, ok = strings.Cut(rest, fence+"\n")
	return before + "<!-- transcript: " + name + " -->\n" + fence + "text\n", block, fence + "\n" + after, ok
}

// guideIn cuts text around the guide of one kind of reader, which stands between
// two comments.
func guideIn(text, name string) (before, guide, after string, ok bool) {
	const end = "<!-- end of the guide -->"
	begin := "<!-- guide: " + name + " -->\n\n"
	before, rest, ok := strings.Cut(text, begin)
	if !ok {
		return "", "", "", false
	}
	guide, after, ok = strings.Cut(rest, end)
	return before + begin, strings.TrimSuffix(guide, "\n"), "\n" + end + after, ok
}

// withoutGuides is the README without them.
func withoutGuides(text string) string {
	for _, name := range handbook.Readers() {
		if before, _, after, ok := guideIn(text, name); ok {
			text = before + after
		}
	}
	return text
}

// told is what the transcript's interview is told, line by line; what
// was said before is not shown.
var (
	saidBefore = []string{"Alder Vale Repairs", "Mara Lind", "not known", "", "Ossi Berg", "1", "1, 3"}
	told       = []string{"3/8 in", "half a thumb", "1/2 in"}
)

// dictation hands out one line at a time and shows it as a terminal would.
type dictation struct {
	lines []string
	shown io.Writer
}

func (d *dictation) Read(p []byte) (int, error) {
	if len(d.lines) == 0 {
		return 0, io.EOF
	}
	n := copy(p, d.lines[0]+"\n")
	d.lines = d.lines[1:]
	return d.shown.Write(p[:n])
}

// interviewTranscript is an interview in plain mode that goes on, and is broken
// off.
func interviewTranscript(t *testing.T) string {
	t.Helper()
	t.Chdir(t.TempDir())
	mustRun(t, strings.NewReader(strings.Join(saidBefore, "\n")+"\n"), io.Discard, "interview", "--plain", "visit.json")
	var out bytes.Buffer
	mustRun(t, &dictation{told, &out}, &out, "interview", "--plain", "visit.json")
	return out.String()
}

// customer answers what is asked, until no likely answer can change the
// recommendation.
type customer struct {
	shown *bytes.Buffer
	visit *assess.Visit
	said  int
}

// says is what this customer says to a question that begins so.
var says = map[string]string{
	"Do you work in": "1", "Which metals": "1", "What is the thickest mild steel you cut often": "10 mm", "Is this repair": "2", "How is the torch guided": "1",
	"What annoys you most": "1", "What is the supply voltage": "230 V", "Is the power single": "2", "Do your cuts start": "2", "What kinds of cut": "1",
	"Now and then": "none", "How thick is the": "6 mm", "What is the rating of the breaker": "32 A", "How long an extension": "none", "Is there compressed air": "5",
	"How much air": "not known", "What pressure": "6 bar", "What is the bore": "10 mm", "How long is the air hose": "8 m", "How high": "100 m", "Where does the power": "1",
	"In your busiest": "4", "How long is each cut": "0.3 m", "Where is the cutting": "1", "Are there limits": "1", "What happens to": "1",
}

func (c *customer) Read(p []byte) (int, error) {
	c.said++
	job, _ := c.visit.Job()
	switch firm := rules.Evaluate(job, system.Demo()).Firm; {
	case firm && strings.Contains(c.shown.String(), "\n> result\n"), c.said > 100:
		return 0, io.EOF
	case firm:
		return c.say(p, "result")
	}
	lines := strings.Split(c.shown.String(), "\n")
	for _, line := range slices.Backward(lines) {
		for begins, said := range says {
			if strings.HasPrefix(line, begins) {
				return c.say(p, said)
			}
		}
	}
	return 0, io.EOF
}

func (c *customer) say(p []byte, line string) (int, error) {
	return c.shown.Write(p[:copy(p, line+"\n")])
}

// shortTranscript is an interview in lines with somebody who sees what is asked,
// until no answer that is missing could change the system; its questions and
// answers, and what is recommended.
func shortTranscript(t *testing.T) string {
	t.Helper()
	var out bytes.Buffer
	v := assess.New("short", time.Date(2026, 3, 12, 9, 0, 0, 0, time.UTC))
	if _, err := interview.RunLines(interview.Options{Visit: v, Range: system.Demo(), Saver: nowhere{}, Input: &customer{shown: &out, visit: v}, Output: &out}); err != nil {
		t.Fatal(err)
	}
	var kept []string
	for line := range strings.Lines(out.String()) {
		if strings.HasPrefix(line, "> ") && strings.TrimSpace(line) != ">" || strings.HasSuffix(line, "?\n") {
			kept = append(kept, line)
		}
	}
	if len(v.Answers) > 11 {
		t.Errorf("%d answers:\n%s", len(v.Answers), strings.Join(kept, ""))
	}
	_, answer, _ := strings.Cut(out.String(), "RECOMMENDED SYSTEM\n")
	answer, _, _ = strings.Cut(answer, "\n\n")
	return strings.Join(kept, "") + "\nRECOMMENDED SYSTEM\n" + answer + "\n"
}

// nowhere keeps nothing.
type nowhere struct{}

func (nowhere) Save(*assess.Visit) (string, error) { return "visit.json", nil }

// pageTranscript is what a reader of the README sees of the first invented
// visit's page: the answer, what decides, and the demonstration.
func pageTranscript(t *testing.T) string {
	t.Helper()
	t.Chdir(t.TempDir())
	if err := os.WriteFile("visit.json", invented(t), 0o600); err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	mustRun(t, nil, &out, "brief", "visit.json", "--format", "text")
	return parts(out.String(), "RECOMMENDED SYSTEM", "WHAT DECIDES", "DEMONSTRATION")
}

// codeTranscript is a page with its code, held against its visit and against
// another.
func codeTranscript(t *testing.T) string {
	t.Helper()
	t.Chdir(t.TempDir())
	var out bytes.Buffer
	shown := func(line string) {
		out.WriteString("$ " + line + "\n")
		a := fixedEnvironment()
		a.args, a.in, a.out, a.err = strings.Fields(line)[1:], nil, &out, &out
		a.getenv = func(string) string { return "" }
		run(a)
	}
	mustRun(t, nil, io.Discard, "sample", "--save", "visit.json")
	mustRun(t, nil, io.Discard, "sample", "kitchen-fitter", "--save", "another.json")
	shown("cutbrief brief visit.json --with check-code --out page.pdf")
	shown("cutbrief verify page.pdf visit.json")
	shown("cutbrief verify page.pdf another.json")
	return out.String()
}

// parts keeps the top of a page and the parts named. A part begins with its
// heading, in capitals behind an empty line.
func parts(page string, named ...string) string {
	all := strings.Split(page, "\n\n")
	var kept []string
	keep := true
	for _, p := range all {
		heading, _, _ := strings.Cut(p, "\n")
		if heading != "" && heading == strings.ToUpper(heading) && heading != strings.ToLower(heading) {
			keep = slices.Contains(named, heading)
		}
		if keep {
			kept = append(kept, strings.Trim(p, "\n"))
		}
	}
	return strings.Join(kept, "\n\n") + "\n"
}

// mustRun runs the program in process.
func mustRun(t *testing.T, in io.Reader, out io.Writer, args ...string) {
	t.Helper()
	var errs bytes.Buffer
	w := fixedEnvironment()
	w.args, w.in, w.out, w.err = args, in, out, &errs
	w.getenv = func(string) string { return "" }
	if status := run(w); status != exitDone || errs.Len() > 0 {
		t.Fatalf("cutbrief %s: status %d\n%s", strings.Join(args, " "), status, &errs)
	}
}
