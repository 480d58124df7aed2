package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/charmbracelet/x/vt"
)

// evil holds what could steer a terminal, turn a line round or hide in it:
// sequences for colour, window title, links and the clipboard, their one-byte
// forms, a bell, a backspace, NUL, DEL, line ends of all kinds, marks for
// direction, and characters without a shape. Source: ECMA-48 and the Unicode
// character categories Cc and Cf.
const evil = "\x1b[31m\x1b[2J\x1b[?1049h\x1b]0;owned\x07\x1b]8;;http://x\x1b\\\x1b]52;c;b3duZWQ=\x07\u009b31m\u009d0;owned\u009c" +
	"\x07\b\x00\x7f\v\f\u0085\u2028\u2029\u202eturned\u202d\u2066\u2069\u200e\u200f\u061c\u200b\u200d\u00ad\ufeff\U000e0041\ufff9"

// poisoned are the fields of a saved visit that hold somebody's words.
var poisoned = []string{"note", "reason", "words", "because", "step", "owner", "why", "name", "answer"}

// poison puts the evil text into every field for words of a saved visit, and
// into unknown fields beside them.
func poison(value any) {
	switch value := value.(type) {
	case []any:
		for _, v := range value {
			poison(v)
		}
	case map[string]any:
		for name, v := range value {
			if text, is := v.(string); is && slices.Contains(poisoned, name) {
				value[name] = evil + text
			}
			poison(v)
		}
		if asks, said := value["question"], value["said"]; said != nil && slices.Contains(wordy, fmt.Sprint(asks)) || asks == nil && said != nil {
			value["said"] = evil + fmt.Sprint(said)
		}
		value["mood"+evil] = evil
	}
}

// wordy are the questions answered in words.
var wordy = []string{"company", "contact", "place", "rep", "decides", "when", "operator", "words", "notes"}

// hostile is the saved file of a visit that holds the evil text everywhere.
func hostile(t *testing.T) []byte {
	t.Helper()
	var visit map[string]any
	if err := json.Unmarshal(shown(t), &visit); err != nil {
		t.Fatal(err)
	}
	visit["overrule"] = map[string]any{"requirement": "cutting-speed", "reason": "x"}
	poison(visit)
	visit["id"] = evil + "id"
	data, err := json.Marshal(visit)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// lost is such a visit that ended in a no.
func lost(t *testing.T) []byte {
	t.Helper()
	var visit map[string]any
	if err := json.Unmarshal(hostile(t), &visit); err != nil {
		t.Fatal(err)
	}
	for _, s := range visit["showings"].([]any) {
		s.(map[string]any)["outcome"] = "no"
	}
	data, err := json.Marshal(visit)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// escaped is a control character or a mark for direction as JSON may write it:
// harmless here, and no longer in the next program.
var escaped = regexp.MustCompile(`\\u(00[018-9][0-9a-f]|007f|20[26][0-9a-f])`)

// dangers lists what in an output could do harm. Line ends are no danger.
func dangers(output string) (found []string) {
	if !utf8.ValidString(output) {
		found = append(found, "bytes that are no UTF-8")
	}
	for _, r := range strings.ReplaceAll(output, "\r\n", "\n") {
		if r != '\n' && (unicode.IsControl(r) || unicode.In(r, unicode.Cf, unicode.Zl, unicode.Zp, unicode.Bidi_Control)) {
			found = append(found, fmt.Sprintf("U+%04X", r))
		}
	}
	slices.Sort(found)
	return slices.Compact(found)
}

// stirred is what a terminal does on an output beside drawing it.
func stirred(output string) (done []string) {
	screen := vt.NewEmulator(80, 24)
	defer screen.Close()
	did := func(what string) { done = append(done, what) }
	screen.SetCallbacks(vt.Callbacks{
		Bell: func() { did("bell") }, Title: func(s string) { did("title " + s) }, IconName: func(s string) { did("icon " + s) },
		AltScreen: func(bool) { did("screen") }, WorkingDirectory: func(s string) { did("folder " + s) },
	})
	screen.Write([]byte(output))
	return done
}

// ranWith runs the program in this process.
func ranWith(args ...string) (status int, out, err string) {
	w := fixedEnvironment()
	var o, e bytes.Buffer
	w.args, w.in, w.out, w.err = args, strings.NewReader(""), &o, &e
	w.getenv = func(string) string { return "" }
	status = run(w)
	return status, o.String(), e.String()
}

// TestHostileRecord: nothing of a record full of control characters reaches any
// output as it is, under a name that is as bad. Where the words are shown, what
// was taken out is shown as well.
func TestHostileRecord(t *testing.T) {
	dir := t.TempDir()
	t.Chdir(dir)
	name := strings.ReplaceAll(strings.ReplaceAll(evil, "\x00", ""), "/", "") + ".json"
	for file, data := range map[string][]byte{"visit.json": hostile(t), name: hostile(t), "lost.json": lost(t)} {
		if err := os.WriteFile(file, data, 0o600); err != nil {
			t.Skip("no such name here:", err)
		}
	}
	const visible = "<U+202E>turned"
	for _, test := range []struct {
		args  []string
		shows string
	}{
		{[]string{"brief", name, "--format", "text", "--with", "checklist,pictures,working"}, visible},
		{[]string{"brief", name, "--format", "text", "--words", "de"}, visible},
		{[]string{"brief", name, "--format", "markdown", "--with", "checklist,pictures,working"}, "U+202E"},
		{[]string{"brief", name, "--format", "markdown", "--words", "de"}, "U+202E"},
		{[]string{"brief", name, "--format", "json", "--with", "checklist,working"}, visible},
		{[]string{"brief", name}, ".pdf"},
		{[]string{"why", name}, ""}, {[]string{"why", name, "--format", "markdown"}, ""}, {[]string{"why", name, "--format", "json"}, ""},
		{[]string{"next", name}, ""}, {[]string{"next", name, "--format", "json"}, ""},
		{[]string{"cost", name}, ""}, {[]string{"cost", name, "--format", "markdown"}, ""}, {[]string{"cost", name, "--words", "de"}, ""},
		{[]string{"cost", name, "--format", "csv"}, ""}, {[]string{"cost", name, "--format", "json"}, ""},
		{[]string{"compare", name}, ""}, {[]string{"compare", name, "--format", "markdown"}, ""}, {[]string{"compare", name, "--format", "json"}, ""},
		{[]string{"followup", name}, visible}, {[]string{"followup", name, "--format", "ics"}, "BEGIN:VCALENDAR"},
		{[]string{"review", "."}, visible}, {[]string{"review", ".", "--format", "csv"}, visible}, {[]string{"review", ".", "--format", "json"}, "U+202E"},
		{[]string{"review", ".", "--format", "ndjson"}, "U+202E"}, {[]string{"review", ".", "--where", `company ~ "turned"`}, visible},
		{[]string{"review", ".", "--by", "rep"}, visible},
		{[]string{"review", ".", "--by", "rep", "--format", "json"}, "U+202E"},
		{[]string{"review", ".", "--format", "markdown"}, "U+202E"}, {[]string{"review", ".", "--tally"}, ""}, {[]string{"review", ".", "--tally", "--quote"}, "<U+202E>"},
		{[]string{"review", ".", "--tally", "--format", "json"}, ""},
		{[]string{"review", ".", "--measured"}, ""}, {[]string{"review", ".", "--measured", "--format", "csv"}, ""}, {[]string{"review", ".", "--measured", "--format", "json"}, ""},
		{[]string{"interview", "--plain", name}, ""}, {[]string{"interview", "--plain", name, "--words", "de"}, ""},
		{[]string{"record", name}, ""}, {[]string{"redact", name}, "cutbrief-visit"},
		{[]string{"rules", "--format", "markdown"}, "#"}, {[]string{"formats", "visit"}, ""},
	} {
		status, out, err := ranWith(test.args...)
		what := fmt.Sprintf("%.60q", test.args)
		if status != exitDone {
			t.Errorf("%s: status %d, %s", what, status, err)
		}
		if !strings.Contains(out, test.shows) {
			t.Errorf("%s does not show %q", what, test.shows)
		}
		if bad := slices.Concat(dangers(out+err), stirred(out+err), escaped.FindAllString(out, -1)); len(bad) > 0 {
			t.Errorf("%s: %q", what, bad)
		}
	}
}

// TestHostileFolder: what is said about a folder whose name is as bad can be
// read aloud as well, sound or not.
func TestHostileFolder(t *testing.T) {
	name := strings.ReplaceAll(strings.ReplaceAll(evil, "\x00", ""), "/", "")
	t.Chdir(t.TempDir())
	if err := os.Mkdir(name, 0o700); err != nil {
		t.Skip("no such name here:", err)
	}
	if err := os.WriteFile(filepath.Join(name, name+".json"), []byte("{"), 0o600); err != nil {
		t.Skip("no such name here:", err)
	}
	for _, args := range [][]string{{"doctor", "--dir", name}, {"doctor", "--dir", name, "--format", "json"}, {"review", name}, {"interview", "--plain", "--dir", name}} {
		_, out, said := ranWith(args...)
		if bad := slices.Concat(dangers(out+said), stirred(out+said), escaped.FindAllString(out, -1)); len(bad) > 0 {
			t.Errorf("%q: %q", args, bad)
		}
	}
}

// TestHostilePage: neither the text of a page nor what it says of itself holds
// any of it, nor who made it on which machine.
func TestHostilePage(t *testing.T) {
	for _, tool := range []string{"pdftotext", "pdfinfo"} {
		if _, err := exec.LookPath(tool); err != nil {
			t.Skip("not installed:", tool)
		}
	}
	t.Chdir(t.TempDir())
	if err := os.WriteFile("visit.json", hostile(t), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile("lost.json", lost(t), 0o600); err != nil {
		t.Fatal(err)
	}
	for page, args := range map[string][]string{
		"visit.pdf":  {"brief", "visit.json", "--with", "checklist,pictures,working"},
		"german.pdf": {"brief", "visit.json", "--words", "de", "--out", "german.pdf"},
		"team.pdf":   {"review", ".", "--format", "pdf", "--by", "rep"},
	} {
		if status, _, err := ranWith(args...); status != exitDone {
			t.Errorf("%q: %s", args, err)
			continue
		}
		looksHarmless(t, page)
	}
}

// looksHarmless looks at the text of a printed page and at what it says of
// itself.
func looksHarmless(t *testing.T, page string) {
	t.Helper()
	text, err := exec.Command("pdftotext", "-layout", page, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(text), "<U+009B>31m") {
		t.Errorf("%s does not show the words:\n%s", page, text)
	}
	info, err := exec.Command("pdfinfo", page).Output()
	if err != nil {
		t.Fatal(err)
	}
	if bad := dangers(strings.ReplaceAll(string(text), "\f", "\n") + string(info)); len(bad) > 0 {
		t.Errorf("%s holds %q", page, bad)
	}
	host, _ := os.Hostname()
	for _, line := range strings.Split(string(info), "\n") {
		key, value, _ := strings.Cut(line, ":")
		if key == "Author" || len(host) > 3 && strings.Contains(value, host) {
			t.Errorf("%s says %s", page, line)
		}
	}
}

// TestHostileWords: errors quote what was typed, and show it harmlessly.
func TestHostileWords(t *testing.T) {
	t.Chdir(t.TempDir())
	if err := os.WriteFile("visit.json", invented(t), 0o600); err != nil {
		t.Fatal(err)
	}
	csv := strings.Replace(template(), "\n", "\n"+evil+",", 1)
	if err := os.WriteFile("systems.csv", []byte(csv), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{
		{evil}, {"--" + evil}, {"help", evil}, {"-" + evil}, {"brief", evil}, {"brief", "visit.json", "--format", evil},
		{"brief", "visit.json", "--out", evil + "/page.pdf"}, {"brief", "visit.json", "--paper", evil}, {"brief", "visit.json", "--units", evil},
		{"brief", "visit.json", "--with", evil}, {"why", "visit.json", evil}, {"next", "visit.json", "--format", evil},
		{"cost", evil}, {"compare", "visit.json", "--only", evil}, {"followup", evil}, {"record", "visit.json", "--date", evil}, {"practice", "--case", evil}, {"practice", "--report", "--format", evil},
		{"practice", "--list", "--cases", evil}, {"practice", "--list", "--cases", "systems.csv"}, {"review", ".", "--fields", evil}, {"review", ".", "--format", evil},
		{"review", evil}, {"review", ".", "--where", evil}, {"review", ".", "--sort", evil}, {"interview", evil + "/a.json"},
		{"systems", "--systems", evil}, {"systems", "check", "systems.csv"}, {"cost", "visit.json", "--prices", evil},
		{"cost", "visit.json", "--prices", "systems.csv"}, {"completion", evil}, {"sample", evil},
		{"brief", "visit.json", "--words", evil}, {"brief", "visit.json", "--format", "text", "--words", "systems.csv"}, {"words", "check", "systems.csv"}, {"words", "check", evil},
		{"words", "template", evil}, {"rehearse", evil}, {"redact", evil}, {"review", ".", "--by", evil}, {"rules", evil}, {"formats", evil}, {"doctor", evil},
	} {
		status, out, err := ranWith(args...)
		if status == exitDone {
			t.Errorf("%q is taken", args)
		}
		if bad := append(dangers(out+err), stirred(out+err)...); len(bad) > 0 {
			t.Errorf("%q: %q in %q", args, bad, out+err)
		}
	}
}
