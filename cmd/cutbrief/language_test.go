package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cutbrief/report/handbook"
	"cutbrief/rules/message/catalog"
)

// The texts are those of --words, else of CUTBRIEF_WORDS, else of the file in the
// configuration folder, else those of the locale: the first that is set of LC_ALL,
// LC_MESSAGES and LANG (POSIX, Base Definitions, 8.2, from memory).
func TestWhichWords(t *testing.T) {
	home := t.TempDir()
	own := filepath.Join(home, ".config", "cutbrief", "words.csv")
	for _, c := range []struct {
		flag string
		env  map[string]string
		file bool
		want string
	}{
		{"", nil, false, "en"},
		{"de", map[string]string{"CUTBRIEF_WORDS": "en", "LANG": "en_GB.UTF-8"}, true, "de"},
		{"", map[string]string{"CUTBRIEF_WORDS": "en", "LANG": "de_DE.UTF-8"}, true, "en"},
		{"", map[string]string{"LANG": "de_DE.UTF-8"}, true, own},
		{"", map[string]string{"LANG": "de_DE.UTF-8"}, false, "de"},
		{"", map[string]string{"LANG": "de"}, false, "de"},
		{"", map[string]string{"LC_ALL": "C", "LC_MESSAGES": "de_DE", "LANG": "de_DE"}, false, "en"},
		{"", map[string]string{"LC_MESSAGES": "de_AT.UTF-8", "LANG": "en_US"}, false, "de"},
		{"", map[string]string{"LC_CTYPE": "de_DE", "LANG": "xx_XX"}, false, "en"},
		{"", map[string]string{"LANG": "../de"}, false, "en"},
	} {
		os.RemoveAll(filepath.Dir(own))
		if c.file {
			if err := os.MkdirAll(filepath.Dir(own), 0o700); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(own, []byte("english,words\n"), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		a := &app{environment: environment{goos: "linux", getenv: func(name string) string {
			if name == "HOME" {
				return home
			}
			return c.env[name]
		}}}
		if got, _ := a.files().WordsNamed(c.flag); got != c.want {
			t.Errorf("%q, %v, own file %v: %q, want %q", c.flag, c.env, c.file, got, c.want)
		}
	}
}

// Help says the same of every command in every language: each document has all of
// them, with the same examples, in lines that fit.
func TestHelpInEveryLanguage(t *testing.T) {
	english := handbook.HelpTexts(nil)
	for _, tag := range catalog.Languages() {
		words := catalog.For(tag)
		if _, err := os.ReadFile("../../report/handbook/help/" + words.Code() + ".md"); err != nil {
			continue // help is in English there
		}
		texts := handbook.HelpTexts(words)
		for path, want := range english {
			got, is := texts[path]
			if !is || got.Short == "" || (got.Long == "") != (want.Long == "") || got.Short == want.Short && path != "" {
				t.Errorf("%s: %s is not said", tag, path)
			}
			wanted := examples(want.Example)
			for i, line := range examples(got.Example) {
				if i >= len(wanted) || line != wanted[i] {
					t.Errorf("%s: %s: example %q, want %q", tag, path, line, wanted)
				}
			}
		}
		if len(texts) != len(english) {
			t.Errorf("%s: %d commands, want %d", tag, len(texts), len(english))
		}
	}
}

// A guide has the same commands to type in every language.
func TestGuidesInEveryLanguage(t *testing.T) {
	for _, name := range handbook.Readers() {
		_, english := handbook.Guide(name, nil)
		for _, tag := range catalog.Languages() {
			title, text := handbook.Guide(name, catalog.For(tag))
			got, want := strings.Join(fenced.FindAllString(text, -1), ""), strings.Join(fenced.FindAllString(english, -1), "")
			if title == "" || got != want {
				t.Errorf("%s: %s: its commands are not those of the English guide", tag, name)
			}
		}
	}
}

// An error is said in the language asked for, in two lines.
func TestErrorsInGerman(t *testing.T) {
	for args, want := range map[string]string{
		"brief --words de":                   "cutbrief: brief braucht die Datei eines Besuchs\nHinweis: etwa cutbrief brief visit.json\n",
		"brief --words=de gone.json":         "cutbrief: gone.json lesen: Datei oder Ordner gibt es nicht\nHinweis: den Namen prüfen; cutbrief interview zeigt angefangene Besuche\n",
		"sample nobody --words de":           "cutbrief: \"nobody\" ist kein erfundener Besuch\n",
		"brief a.json --words gone.csv":      "cutbrief: read words gone.csv: no such file or directory\n",
		"brief a.json --paper a5 --words de": "Hinweis: eines von a4, letter\n",
	} {
		var errs bytes.Buffer
		w := fixedEnvironment()
		w.args, w.out, w.err = strings.Fields(args), &errs, &errs
		if (&app{environment: w}).execute(); !strings.Contains(errs.String(), want) {
			t.Errorf("%s: %s", args, &errs)
		}
	}
}
