package store

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/message"
)

// mostAlike is how many names are tried before giving up.
const mostAlike = 1000

// NewPath returns a free file name in the folder for v: date, company,
// ".json", such as "2026-11-25-hillside-farm.json"; a second visit of the day
// gets "-2". It makes the folder if it is missing, and sweeps it.
func (f Folder) NewPath(v *assess.Visit) (string, error) {
	if err := os.MkdirAll(f.Dir, 0o700); err != nil {
		return "", err
	}
	Sweep(f.Dir)
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
	return "", message.Errorf("{1}: {2} files of this name are there already", message.Name(name), message.Count(mostAlike))
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
