package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// FuzzFlags: no value of a flag or name of a topic makes a command panic, and
// nothing of it reaches the terminal that could steer it. Flags that name a file
// to write to are left out: a fuzzer may not choose where.
func FuzzFlags(f *testing.F) {
	file := filepath.Join(f.TempDir(), "visit.json")
	commands := [][]string{
		{"review", ".", "--where"}, {"review", ".", "--sort"}, {"review", ".", "--fields"}, {"review", ".", "--by"}, {"review", ".", "--format"},
		{"why", file}, {"next", file, "--format"}, {"cost", file, "--format"}, {"compare", file, "--only"}, {"compare", file, "--format"},
		{"brief", file, "--format", "text", "--units"}, {"brief", file, "--format", "text", "--with"}, {"brief", file, "--format", "text", "--paper"},
		{"brief", file, "--format"}, {"followup", file, "--format"}, {"record", file, "--date"}, {"practice", "--list", "--level"},
		{"practice", "--plain", "--seed"}, {"practice", "--plain", "--case"}, {"sample"}, {"completion"}, {"help"}, {"schema"}, {"prices"}, {"systems"},
	}
	data := sampled(f, "trailer-builder")
	if err := os.WriteFile(file, data, 0o600); err != nil {
		f.Fatal(err)
	}
	for i, value := range []string{"verdict = open", "-date,rep", "date,company", "rep", "csv", "clean-cut", "json", "text", "demo-50,demo-70", "markdown", "in", "working,checklist", "letter", "yaml"} {
		f.Add(uint8(i), value)
	}
	f.Add(uint8(17), "18446744073709551615")
	f.Add(uint8(17), "-1")
	f.Add(uint8(11), "\x00,"+evil)
	f.Fuzz(func(t *testing.T, which uint8, value string) {
		args := commands[int(which)%len(commands)]
		if slices.Contains([]string{"pdf", "-", ""}, value) || strings.HasPrefix(value, "-") || args[0] == "sample" && !strings.ContainsAny(value, "\x00 ") {
			return // writes a page beside the test, or is another flag
		}
		t.Chdir(filepath.Dir(file))
		status, out, said := ranWith(append(slices.Clone(args), value)...)
		if status != exitDone && status != exitFailed && status != exitUsage || strings.Contains(said, "a fault in the program") {
			t.Errorf("%q %q: status %d: %s", args, value, status, said)
		}
		if bad := dangers(out + said); len(bad) > 0 {
			t.Errorf("%q %q: %q", args, value, bad)
		}
	})
}

// FuzzWords: whatever a customer is called and said to have said, no document
// lets anything of it through that could steer a terminal or turn a line round.
func FuzzWords(f *testing.F) {
	f.Add(evil)
	f.Add("Łąka & Søn | * _ ` # <b> [x](y) =1+1 \\ \r\nBEGIN:VEVENT")
	f.Add(strings.Repeat("very ", 300) + "long")
	var visit map[string]any
	if err := json.Unmarshal(sampled(f, "trailer-builder"), &visit); err != nil {
		f.Fatal(err)
	}
	dir := f.TempDir()
	f.Fuzz(func(t *testing.T, words string) {
		t.Chdir(dir)
		data, err := json.Marshal(worded(visit, words))
		if err != nil || os.WriteFile("visit.json", data, 0o600) != nil {
			t.Skip(err)
		}
		for _, args := range [][]string{
			{"brief", "visit.json", "--format", "text"}, {"brief", "visit.json", "--format", "markdown"}, {"brief", "visit.json", "--format", "json"},
			{"brief", "visit.json", "--out", "page.pdf", "--force"}, {"followup", "visit.json"}, {"followup", "visit.json", "--format", "ics"},
			{"review", ".", "--format", "csv"}, {"review", "."}, {"redact", "visit.json"},
		} {
			status, out, said := ranWith(args...)
			if status == exitFailed && strings.Contains(said, "a fault in the program") {
				t.Errorf("%q: %s", args, said)
			}
			if bad := dangers(out + said); len(bad) > 0 {
				t.Errorf("%q: %q", args, bad)
			}
		}
	})
}

// worded is a visit with these words in place of all of a customer's.
func worded(value any, words string) any {
	switch value := value.(type) {
	case []any:
		list := make([]any, len(value))
		for i, v := range value {
			list[i] = worded(v, words)
		}
		return list
	case map[string]any:
		fields := map[string]any{}
		for name, v := range value {
			fields[name] = worded(v, words)
			if _, is := v.(string); is && (slices.Contains(poisoned, name) || name == "said" && slices.Contains(wordy, asked(value))) {
				fields[name] = words
			}
		}
		return fields
	}
	return value
}

// asked is the question of an answer, "" of anything else.
func asked(answer map[string]any) string {
	name, _ := answer["question"].(string)
	return name
}
