package store

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"golang.org/x/text/unicode/norm"

	"cutbrief/assess"
	"cutbrief/assess/store/whole"
	"cutbrief/rules"
)

// Limits of a file name: short enough for every system and for a list.
const (
	longestName = 60
	mostAlike   = 1000
)

// NewPath returns a free file name in the folder for v: date, company,
// ".json", such as "2026-11-25-hillside-farm.json"; a second visit of the day
// gets "-2". It makes the folder if it is missing, and sweeps it.
func (f Folder) NewPath(v *assess.Visit) (string, error) {
	if err := os.MkdirAll(f.Dir, 0o700); err != nil {
		return "", err
	}
	whole.Sweep(f.Dir)
	name := day(v) + "-" + slug(said(v, assess.FactCompany))
	for n := 1; n <= mostAlike; n++ {
		path := filepath.Join(f.Dir, numbered(name, n)+".json")
		_, err := os.Lstat(path)
		if errors.Is(err, fs.ErrNotExist) {
			return path, nil
		}
		if err != nil {
			return "", err
		}
	}
	return "", fmt.Errorf("%s: %d files of this name are there already", name, mostAlike)
}

func numbered(name string, n int) string {
	if n == 1 {
		return name
	}
	return fmt.Sprintf("%s-%d", name, n)
}

// day is the date of the visit, or else of its file.
func day(v *assess.Visit) string {
	if at, err := time.Parse(time.DateOnly, said(v, assess.FactDate)); err == nil {
		return at.Format(time.DateOnly)
	}
	if v.Created.IsZero() {
		return "undated"
	}
	return v.Created.Format(time.DateOnly)
}

func said(v *assess.Visit, f rules.Fact) string {
	a, _ := v.Answer(rules.Asked{Fact: f})
	return a.Said
}

// letters spells out those that do not come apart into a plain letter and a mark.
var letters = strings.NewReplacer("ß", "ss", "æ", "ae", "œ", "oe", "ø", "o", "ł", "l", "đ", "d", "ð", "d", "þ", "th", "ı", "i", "'", "", "’", "")

// slug turns any text into lower-case letters, digits and single dashes. The
// date before it keeps it clear of names a system reserves for itself.
func slug(text string) string {
	var out strings.Builder
	dash := false
	for _, r := range norm.NFKD.String(letters.Replace(strings.ToLower(text))) {
		switch {
		case r >= 'a' && r <= 'z' || r >= '0' && r <= '9':
			if dash && out.Len() > 0 {
				out.WriteByte('-')
			}
			out.WriteRune(r)
			dash = false
		case r < 0x300 || r > 0x36F: // not a mark taken off its letter
			dash = true
		}
	}
	s := out.String()
	if len(s) > longestName {
		s = strings.TrimSuffix(s[:longestName], "-")
	}
	if s == "" {
		return "visit"
	}
	return s
}
